package org.spanroom.pipeline;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.IntStream;
import org.spanroom.model.Assessment;
import org.spanroom.model.FieldCheck;
import org.spanroom.model.RankedSpan;
import org.spanroom.model.RankedSpans;
import org.spanroom.model.SpanList;
import org.spanroom.rank.FieldCheckFinder;
import org.spanroom.rank.Ranking;
import org.spanroom.rank.RunRanking;
import org.spanroom.rank.Standings;
import org.spanroom.rank.TopScores;

/**
 * All spans of a run in the order of the ranking.
 *
 * <p>Each span is assessed twice: once for its place in the order, of which a score and its bends are kept, and once more when it
 * is written. Assessing is pure and takes microseconds; keeping what it finds would take kilobytes for each of millions.
 */
final class AssessedSpans implements RankedSpans {
    /** More than a year's work; whoever has done these asks anew. */
    private static final int MOST_FIELD_CHECKS = 2000;

    private final SpanList spans;
    private final SpanAssessor assessor;
    private final RunRanking ranking;
    private final Standings standings;
    private final Optional<SurenessRun> sureness;
    private final int[] order;

    private AssessedSpans(SpanList spans, SpanAssessor assessor, RunRanking ranking, Standing standing) {
        this.spans = spans;
        this.assessor = assessor;
        this.ranking = ranking;
        this.standings = standing.standings();
        this.sureness = standing.sureness();
        this.order = standings.bestFirst(spans::compareIds);
    }

    /** Assesses all spans for their order, and reports what is doubtful about their data. */
    static AssessedSpans of(SpanList spans, SpanAssessor assessor, Ranking ranking, FirstLook look) {
        RunRanking run = ranking.among(spans);
        var standings = new Standings(spans.size());
        Parallel.Work work = (from, to) -> {
            Optional<TopScores> scores = look.sureness().map(SurenessRun::take);
            for (int number = from; number < to; number++) {
                Assessment assessment = assessor.assess(number, spans.get(number));
                look.doubts().report(assessment);
                run.stand(number, assessment, standings);
                if (scores.isPresent() && !standings.isExcluded(number)) {
                    look.sureness().orElseThrow().add(number, assessment, scores.get());
                }
            }
            scores.ifPresent(collected -> look.sureness().orElseThrow().giveBack(collected));
        };
        new Parallel(look.threads()).run(spans.size(), work, look.progress());
        look.sureness().ifPresent(SurenessRun::end);
        return new AssessedSpans(spans, assessor, run, new Standing(standings, look.sureness()));
    }

    /** Who is told what of all spans' first assessment, and on how many threads it is made. */
    record FirstLook(DataDoubts doubts, Optional<SurenessRun> sureness, Progress progress, int threads) {}

    /** Where each span stands, and how sure that is. */
    private record Standing(Standings standings, Optional<SurenessRun> sureness) {}

    @Override
    public int size() {
        return order.length;
    }

    @Override
    public RankedSpan at(int place) {
        int number = order[place];
        Assessment assessment = assessor.assess(number, spans.get(number));
        RankedSpan span = ranking.ranked(place, standings, assessment);
        return span.rank().isEmpty() ? span : span.withSureness(sureness.map(run -> run.of(number, assessment)));
    }

    /** Returns what to go and measure first: on spans of which it is open whether they belong to the top. */
    List<FieldCheck> fieldChecks(int threads) {
        if (sureness.isEmpty()) {
            return List.of();
        }
        int[] open = IntStream.range(0, standings.countRanked())
                .filter(place -> sureness.get().mayBeTop(order[place]))
                .toArray();
        var found = new ConcurrentLinkedQueue<FieldCheck>();
        Parallel.Work work = (from, to) -> {
            for (int i = from; i < to; i++) {
                found.addAll(sureness.get().fieldChecks(at(open[i])));
            }
        };
        new Parallel(threads).run(open.length, work, Progress.SILENT);
        return found.stream()
                .sorted(FieldCheckFinder.MOST_CHANGE_FIRST)
                .limit(MOST_FIELD_CHECKS)
                .toList();
    }

    /** Returns how many spans have a rank. */
    int countRanked() {
        return standings.countRanked();
    }
}
