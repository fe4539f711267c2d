package org.spanroom.pipeline;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.IntStream;
import org.spanroom.model.effort.MoneyRanges;
import org.spanroom.model.effort.MoneyTotals;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.FieldCheck;
import org.spanroom.model.rank.RankConfidence;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.RankedSpans;
import org.spanroom.model.rank.SpanFigures;
import org.spanroom.model.rank.SpanOffer;
import org.spanroom.model.rank.Verdict;
import org.spanroom.output.PackedSpans;
import org.spanroom.output.PlacedSpan;
import org.spanroom.parallel.ParallelRanges;
import org.spanroom.rank.FieldCheckFinder;
import org.spanroom.rank.Ranking;
import org.spanroom.rank.RunRanking;
import org.spanroom.rank.Standings;

/**
 * All spans of a run in the order of the ranking.
 *
 * <p>Each span is assessed for its place in the order, of which a score, its bends, a few figures and, packed, the cells of its row are kept. Where
 * there is no room for rows in memory or in a file, or more is written than they have, it is assessed again when it is written. Assessing is pure and takes
 * microseconds; keeping all that it finds would take kilobytes for each of millions.
 */
final class AssessedSpans implements RankedSpans {
    /** More than a year's work; after these, run again. */
    private static final int MOST_FIELD_CHECKS = 2000;

    /** So few that no thread waits long for the last one, also where there are only some thousand spans. */
    private static final int ASSESSED_AT_A_TIME = 64;

    /** Each is simulated, so that a few take as long as hundreds of assessments. */
    private static final int CHECKED_AT_A_TIME = 2;

    private final SpanList spans;
    private final SpanAssessor assessor;
    private final RunRanking ranking;
    private final Standings standings;
    private final SpanFigures figures;
    private final Optional<RankConfidenceRun> sureness;
    private final MoneyRun money;
    private final ScenarioRun scenarios;
    private final SharedBuild build;
    private final Deciders deciders;
    private final int[] order;

    private AssessedSpans(SpanList spans, SpanAssessor assessor, RunRanking ranking, Standing standing) {
        this.spans = spans;
        this.assessor = assessor;
        this.ranking = ranking;
        this.standings = standing.standings();
        this.figures = standing.figures().figures();
        this.sureness = standing.sureness();
        this.money = standing.money();
        this.scenarios = standing.scenarios();
        this.build = standing.build();
        this.deciders = standing.deciders();
        this.order = standings.bestFirst(spans);
    }

    /** Assesses all spans for their order, and reports what is doubtful about their data. */
    static AssessedSpans of(SpanList spans, SpanAssessor assessor, Ranking ranking, FirstLook look) {
        RunRanking run = ranking.among(spans);
        var standing = Standing.of(spans.size(), look);
        new ParallelRanges(look.threads(), ASSESSED_AT_A_TIME).run(spans.size(), () -> {
            var into = new Collectors(
                    look.sureness().map(RankConfidenceRun::begin),
                    look.money().begin(),
                    look.scenarios().begin(),
                    standing.deciders().begin(),
                    look.packed().map(PackedSpans::newFiller));
            return (from, to) -> {
                for (int number = from; number < to; number++) {
                    Assessment assessment = assessor.assess(number, spans.get(number));
                    look.doubts().report(assessment);
                    SpanOffer.NewDuctCost newDuct = assessor.newDuct(assessment);
                    RankedSpan stands = standing.add(number, assessment, newDuct, run, into);
                    if (into.rows().isPresent()) {
                        into.rows().get().add(number, standing.row(number, stands, newDuct));
                    }
                }
                look.progress().advance(to - from);
            };
        });
        look.packed().ifPresent(PackedSpans::end);
        look.sureness().ifPresent(RankConfidenceRun::end);
        return new AssessedSpans(spans, assessor, run, standing);
    }

    /** Who receives what of all spans' first assessment, and on how many threads it is made. */
    record FirstLook(
            DataDoubts doubts,
            Optional<RankConfidenceRun> sureness,
            MoneyRun money,
            ScenarioRun scenarios,
            Optional<PackedSpans> packed,
            Progress progress,
            int threads) {}

    /** What one thread collects in. */
    private record Collectors(
            Optional<RankConfidenceRun.Collector> scores,
            MoneyRun.Sums money,
            ScenarioRun.Sums scenarios,
            Deciders.Counts deciders,
            Optional<PackedSpans.Filler> rows) {}

    /** The rank of each span, the confidence in it, and what else is kept of it. */
    private record Standing(
            Standings standings,
            SpanFigures.Collector figures,
            Optional<RankConfidenceRun> sureness,
            MoneyRun money,
            ScenarioRun scenarios,
            SharedBuild build,
            Deciders deciders) {
        static Standing of(int spans, FirstLook look) {
            var figures = new SpanFigures.Collector(spans, look.sureness().isPresent());
            return new Standing(
                    new Standings(spans),
                    figures,
                    look.sureness(),
                    look.money(),
                    look.scenarios(),
                    new SharedBuild(spans),
                    new Deciders());
        }

        RankedSpan add(
                int number, Assessment assessment, SpanOffer.NewDuctCost newDuct, RunRanking ranking, Collectors into) {
            RankedSpan stands = ranking.stand(number, assessment, standings);
            Verdict verdict = stands.verdict();
            figures.add(number, assessment, verdict);
            scenarios.add(number, assessment, !verdict.isExcluded(), ranking, into.scenarios());
            if (!verdict.isExcluded()) {
                into.deciders().add(assessment);
                assessment.effort().ifPresent(effort -> build.add(number, effort, newDuct));
                MoneyDraws drawn = money.add(number, assessment, into.money());
                into.scores()
                        .ifPresent(scores -> figures.addDraws(
                                number, sureness.orElseThrow().add(number, assessment, drawn, scores)));
            } else if (verdict.mayOpen()) {
                sureness.ifPresent(run -> figures.addDraws(number, run.feasibleDraws(assessment)));
            }
            return stands;
        }

        /** Returns a span with all that its row has, apart from what follows from all spans. */
        RankedSpan row(int number, RankedSpan stands, SpanOffer.NewDuctCost newDuct) {
            return AssessedSpans.row(
                    stands,
                    new SpanOffer(newDuct, figures.figures().feasibleDraws(number)),
                    scenarios,
                    sureness.map(run -> run.soFar(number)),
                    money.of(number));
        }
    }

    private static RankedSpan row(
            RankedSpan stands,
            SpanOffer offer,
            ScenarioRun scenarios,
            Optional<RankConfidence> sureness,
            Optional<MoneyRanges> ranges) {
        RankedSpan span =
                stands.withScenarios(scenarios.gains(stands.assessment())).withOffer(offer);
        return span.rank().isEmpty() ? span : span.withSureness(sureness).withMoney(ranges);
    }

    @Override
    public int size() {
        return order.length;
    }

    @Override
    public RankedSpan at(int place) {
        int number = order[place];
        return at(place, assessor.assess(number, spans.get(number)));
    }

    private RankedSpan at(int place, Assessment assessment) {
        int number = order[place];
        RankedSpan stands = ranking.ranked(place, standings, assessment);
        return row(
                stands,
                new SpanOffer(assessor.newDuct(assessment), figures.feasibleDraws(number)),
                scenarios,
                stands.rank().isEmpty() ? Optional.empty() : sureness.map(run -> run.of(number, assessment)),
                money.of(number));
    }

    /** Returns the span at a place as far as its row was not packed. */
    PlacedSpan placed(int place, int bankPlace) {
        int number = order[place];
        boolean isRanked = place < standings.countRanked();
        return new PlacedSpan(
                spans,
                number,
                isRanked ? OptionalInt.of(place + 1) : OptionalInt.empty(),
                bankPlace,
                isRanked && sureness.isPresent() ? OptionalDouble.of(topRatio(number)) : OptionalDouble.empty());
    }

    private double topRatio(int number) {
        RankConfidenceRun run = sureness.orElseThrow();
        return run.mayBeTop(number)
                ? run.of(number, assessor.assess(number, spans.get(number))).topRatio()
                : 0;
    }

    /** Returns what to go and measure first: on spans of which it is open whether they belong to the top. */
    List<FieldCheck> fieldChecks(int threads, Progress progress) {
        if (sureness.isEmpty()) {
            return List.of();
        }
        int[] open = IntStream.range(0, standings.countRanked())
                .filter(place -> sureness.get().mayNeedCheck(order[place]))
                .toArray();
        progress.begin("find field checks", open.length);
        var found = new ConcurrentLinkedQueue<FieldCheckFinder.Found>();
        new ParallelRanges(threads, CHECKED_AT_A_TIME).run(open.length, () -> (from, to) -> {
            for (int i = from; i < to; i++) {
                int place = open[i];
                Assessment assessed = assessor.assess(order[place], spans.get(order[place]));
                FieldCheckFinder.Found ofSpan = sureness.get().fieldChecks(assessed, () -> at(place, assessed));
                if (ofSpan.open()) {
                    found.add(ofSpan);
                }
                // One takes long enough to be counted by itself.
                progress.advance(1);
            }
        });
        List<FieldCheck> checks = found.stream()
                .flatMap(ofSpan -> ofSpan.checks().stream())
                .sorted(FieldCheckFinder.MOST_CHANGE_FIRST)
                .limit(MOST_FIELD_CHECKS)
                .toList();
        progress.end(String.format(
                Locale.ROOT,
                "%,d field checks; %,d spans with an uncertain place at the top",
                checks.size(),
                found.size()));
        return checks;
    }

    /** Returns what decides most of the spans that have a rank, one sentence each. */
    List<String> deciders() {
        return deciders.sentences();
    }

    /** Returns the figures of all spans, by number in the list of spans. */
    SpanFigures figures() {
        return figures;
    }

    /** Returns what all spans that have a rank cost and save together. */
    MoneyTotals money(RunSections sections) {
        return money.totals().withSharedBuild(sections.sharedBuildMoney(build));
    }

    /** Returns what the run would find under each scenario of contents that are not recorded. */
    ScenarioRun scenarios() {
        return scenarios;
    }

    /** Returns the sections that the spans form, in their order. */
    RunSections sections() {
        return new RunSections(spans, order, standings, figures);
    }

    /** Returns how many spans have a rank. */
    int countRanked() {
        return standings.countRanked();
    }
}
