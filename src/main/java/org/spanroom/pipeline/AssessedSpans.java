package org.spanroom.pipeline;

import java.util.List;
import org.spanroom.model.Assessment;
import org.spanroom.model.RankedSpan;
import org.spanroom.model.RankedSpans;
import org.spanroom.model.Span;
import org.spanroom.rank.Ranking;
import org.spanroom.rank.RunRanking;
import org.spanroom.rank.Standings;

/**
 * All spans of a run in the order of the ranking.
 *
 * <p>Each span is assessed twice: once for its place in the order, of which a score and its bends are kept, and once more when it
 * is written. Assessing is pure and takes microseconds; keeping what it finds would take kilobytes for each of millions.
 */
final class AssessedSpans implements RankedSpans {
    private final List<Span> spans;
    private final SpanAssessor assessor;
    private final RunRanking ranking;
    private final Standings standings;
    private final int[] order;

    private AssessedSpans(List<Span> spans, SpanAssessor assessor, RunRanking ranking, Standings standings) {
        this.spans = spans;
        this.assessor = assessor;
        this.ranking = ranking;
        this.standings = standings;
        this.order = standings.bestFirst(span -> spans.get(span).id());
    }

    /** Assesses all spans for their order, and reports what is doubtful about their data. */
    static AssessedSpans of(List<Span> spans, SpanAssessor assessor, Ranking ranking, FirstLook look) {
        RunRanking run = ranking.among(spans);
        var standings = new Standings(spans.size());
        Parallel.Work work = (from, to) -> {
            for (int number = from; number < to; number++) {
                Assessment assessment = assessor.assess(number, spans.get(number));
                look.doubts().report(assessment);
                run.stand(number, assessment, standings);
            }
        };
        new Parallel(look.threads()).run(spans.size(), work, look.progress());
        return new AssessedSpans(spans, assessor, run, standings);
    }

    /** Who is told what of all spans' first assessment, and on how many threads it is made. */
    record FirstLook(DataDoubts doubts, Progress progress, int threads) {}

    @Override
    public int size() {
        return order.length;
    }

    @Override
    public RankedSpan at(int place) {
        int number = order[place];
        return ranking.ranked(place, standings, assessor.assess(number, spans.get(number)));
    }

    /** Returns how many spans have a rank. */
    int countRanked() {
        return standings.countRanked();
    }

    /** Returns the span of an id, which must be there. */
    RankedSpan withId(String id) {
        for (int place = 0; place < order.length; place++) {
            if (spans.get(order[place]).id().equals(id)) {
                return at(place);
            }
        }
        throw new IllegalArgumentException("no span has the id " + id);
    }
}
