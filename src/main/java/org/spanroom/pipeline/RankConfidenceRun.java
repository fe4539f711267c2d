package org.spanroom.pipeline;

import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Supplier;
import org.spanroom.config.RunConfig;
import org.spanroom.model.OrderStatistics;
import org.spanroom.model.effort.VaultAccess;
import org.spanroom.model.network.Duct;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.RankConfidence;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.rank.FieldCheckFinder;
import org.spanroom.rank.Simulation;
import org.spanroom.rank.SpanOutlook;
import org.spanroom.rank.TopScores;

/**
 * Confidence in the rank of each span of a run. First every ranked span is given, in any order and by any thread; then what came of
 * it is requested. Of each span four numbers and two flags are kept; the few that may belong to the top are simulated again.
 */
final class RankConfidenceRun {
    private static final double LOW_SHARE = 0.1;
    private static final double HIGH_SHARE = 0.9;

    private final Scenarios outlooks;
    private final Simulation simulation;
    private final int samples;
    private final int topCount;
    private final double leastChangeRatio;
    private final VaultAccess access;
    private final float[] feasible;
    private final float[] low;
    private final float[] high;
    private final float[] mostPoints;
    private final boolean[] mayBeTop;
    private final boolean[] mayNeedCheck;
    private final ConcurrentLinkedQueue<TopScores> collected = new ConcurrentLinkedQueue<>();
    private double[] thresholds = {};
    private double leastThreshold;

    /** Prepares for this many spans. */
    private RankConfidenceRun(RunConfig config, Scenarios outlooks, int spans) {
        this.outlooks = outlooks;
        simulation = outlooks.simulation();
        samples = config.uncertainty().samples();
        leastChangeRatio = config.uncertainty().leastChangeRatio();
        access = ConfiguredParts.access(config);
        // One place more than there are spans: where all are in the top, nothing is needed to be in it.
        topCount = (int) Math.min(spans + 1L, config.uncertainty().topCount());
        feasible = new float[spans];
        low = new float[spans];
        high = new float[spans];
        mostPoints = new float[spans];
        mayBeTop = new boolean[spans];
        mayNeedCheck = new boolean[spans];
    }

    /** Prepares for this many spans, if there is anything to simulate. */
    static Optional<RankConfidenceRun> of(RunConfig config, Optional<Scenarios> outlooks, int spans) {
        return outlooks.map(all -> new RankConfidenceRun(config, all, spans));
    }

    /** What one thread collects scores in. */
    static final class Collector {
        private final TopScores top;
        private final OrderStatistics percentiles = new OrderStatistics();
        private Optional<Scenarios.DuctStates> latest = Optional.empty();

        private Collector(TopScores top) {
            this.top = top;
        }

        /** Returns what a duct may be like; of spans that follow one another most have the same one. */
        @SuppressWarnings(
                "ReferenceEquality") // Equal ducts are other objects and found again; comparing all of them would take
        // longer.
        private Scenarios.DuctStates statesOf(Duct duct, Scenarios outlooks) {
            if (latest.isEmpty() || latest.get().duct() != duct) {
                latest = Optional.of(outlooks.of(duct));
            }
            return latest.get();
        }
    }

    /** Returns what a thread collects scores in. */
    Collector begin() {
        var scores = new TopScores(samples, topCount);
        collected.add(scores);
        return new Collector(scores);
    }

    /**
     * Takes a ranked span, and returns in which of the first 64 samples it is feasible, as the bits of a mask.
     *
     * @param money what it costs in each draw of the rates
     */
    long add(int number, Assessment assessed, MoneyDraws money, Collector into) {
        Duct duct = assessed.span().duct();
        SpanOutlook outlook = outlooks.of(assessed, money, into.statesOf(duct, outlooks));
        Simulation.Scores scores = simulation.scores(outlook);
        into.percentiles.load(scores.bySample());
        feasible[number] = (float) scores.feasibleRatio();
        low[number] = (float) into.percentiles.quantile(LOW_SHARE);
        high[number] = (float) into.percentiles.quantile(HIGH_SHARE);
        into.top.add(scores.bySample());
        double most = simulation.mostPoints(outlook);
        // Rounded up, so that it is never below the points.
        mostPoints[number] = Math.nextUp((float) most);
        mayBeTop[number] = into.top.isAnyTop(scores.bySample());
        mayNeedCheck[number] = FieldCheckFinder.mayFind(simulation, outlook, most, into.top, leastChangeRatio);
        return scores.feasibleDraws();
    }

    /** Returns the same mask for a span that has no rank today, and takes it for nothing else. */
    long feasibleDraws(Assessment assessed) {
        return simulation.scores(outlooks.of(assessed)).feasibleDraws();
    }

    /** To be called when all spans have been taken. */
    void end() {
        var all = new TopScores(samples, topCount);
        collected.forEach(all::addAll);
        collected.clear();
        thresholds = all.thresholds();
        leastThreshold = TopScores.leastPoints(thresholds);
    }

    /** Returns the confidence in a span's rank as far as it is known before all spans have been taken: without the chance of the top. */
    RankConfidence soFar(int number) {
        return new RankConfidence(feasible[number], low[number], high[number], 0);
    }

    /** Returns the confidence in a span's rank. */
    RankConfidence of(int number, Assessment assessed) {
        double topRatio = 0;
        if (mayBeTop(number)) {
            topRatio =
                    TopScores.topRatio(simulation.scores(outlooks.of(assessed)).bySample(), thresholds);
        }
        return new RankConfidence(feasible[number], low[number], high[number], topRatio);
    }

    /** Returns whether a ranked span may be among the top in any sample; it surely is in none if not. */
    boolean mayBeTop(int number) {
        return mayBeTop[number] && reachesTop(number);
    }

    /** Returns whether something may be worth measuring on a span; surely nothing is if not. */
    boolean mayNeedCheck(int number) {
        return mayNeedCheck[number] && reachesTop(number);
    }

    /** The first spans were compared with a lower threshold than the final one. */
    private boolean reachesTop(int number) {
        return !(mostPoints[number] < leastThreshold);
    }

    /**
     * Returns what is worth measuring on a span.
     *
     * @param ranked the same span with all that a check says of it, which is asked for only if there is a check
     */
    FieldCheckFinder.Found fieldChecks(Assessment assessed, Supplier<RankedSpan> ranked) {
        return new FieldCheckFinder(simulation, thresholds, leastChangeRatio, access)
                .find(ranked, outlooks.of(assessed));
    }
}
