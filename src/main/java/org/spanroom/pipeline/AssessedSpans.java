package org.spanroom.pipeline;

import java.util.List;
import java.util.OptionalInt;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.Assessment;
import org.spanroom.model.RankedSpan;
import org.spanroom.model.RankedSpans;
import org.spanroom.model.Span;
import org.spanroom.rank.Ranking;
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
    private final Ranking ranking;
    private final int[] order;
    private final int ranked;

    private AssessedSpans(List<Span> spans, SpanAssessor assessor, Ranking ranking, Standings standings) {
        this.spans = spans;
        this.assessor = assessor;
        this.ranking = ranking;
        this.order = standings.bestFirst(span -> spans.get(span).id());
        this.ranked = standings.countRanked();
    }

    /** Assesses all spans for their order, and reports what is doubtful about their data. */
    static AssessedSpans of(List<Span> spans, RunConfig config, FindingLog findings, Progress progress) {
        var assessor = new SpanAssessor(config, spans.size());
        var ranking = new Ranking(config.scoring());
        var doubts = new DataDoubts(config, findings);
        var standings = new Standings(spans.size());
        Parallel.Work work = (from, to) -> {
            for (int number = from; number < to; number++) {
                Assessment assessment = assessor.assess(number, spans.get(number));
                doubts.report(assessment);
                ranking.stand(number, assessment, standings);
            }
        };
        new Parallel(SpanRun.threads(config)).run(spans.size(), work, progress);
        return new AssessedSpans(spans, assessor, ranking, standings);
    }

    @Override
    public int size() {
        return order.length;
    }

    @Override
    public RankedSpan at(int place) {
        int number = order[place];
        Assessment assessment = assessor.assess(number, spans.get(number));
        var rank = place < ranked ? OptionalInt.of(place + 1) : OptionalInt.empty();
        return new RankedSpan(rank, assessment, ranking.score(assessment));
    }

    /** Returns how many spans have a rank. */
    int countRanked() {
        return ranked;
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
