package org.spanroom.rank;

import java.util.List;
import org.spanroom.model.Quantile;
import org.spanroom.model.rank.UncertaintySettings;

/**
 * Simulates the score of one span under uncertain inputs.
 *
 * <p>Each sample takes a state of friction (triangular from lubricated over dry to bad), one situation of sizes and contents, whether the
 * duct is blocked, and the rates of the sample, which all spans share: wages and prices move together. Each pulling
 * limit is interpolated between the three calculated states ({@link UseCurve}); then the tightest counts. A blocked duct, or one without room to gain, scores 0.
 *
 * <p>Everything depends on seed, span and sample only. Safe for use by several threads.
 */
public final class Simulation {
    private static final int FRICTION = 0;
    private static final int SITUATION = 1;
    private static final int CONDITION = 2;

    private final UncertaintySettings settings;
    private final Points points;
    private final int easePlace;
    private final int savingPlace;
    private final double easeMostPoints;

    /** A simulation of which it is not known how many points the pull can give at most. */
    Simulation(UncertaintySettings settings, Points points, int easePlace, int savingPlace) {
        this(settings, points, easePlace, savingPlace, Double.POSITIVE_INFINITY);
    }

    /**
     * Prepares a simulation.
     *
     * @param points what each criterion adds to a score
     * @param easePlace which of the quantities is the utilization of the pull in percent; -1 where none is
     * @param savingPlace which of them is the saving per money spent; -1 where none is
     * @param easeMostPoints the most that the criterion of the pull adds, whatever the utilization
     */
    Simulation(UncertaintySettings settings, Points points, int easePlace, int savingPlace, double easeMostPoints) {
        this.settings = settings;
        this.easeMostPoints = easeMostPoints;
        this.points = points;
        this.easePlace = easePlace;
        this.savingPlace = savingPlace;
    }

    /** From the quantity of the criterion at a place to its points. */
    @FunctionalInterface
    interface Points {
        double of(int place, double quantity);
    }

    /** What one sample turned out to be. */
    interface Sink {
        void accept(int sample, double scorePoints, boolean feasible, Drawn drawn);
    }

    /**
     * The state that a sample has drawn.
     *
     * @param frictionRatio share of all states of friction that are better
     */
    record Drawn(double frictionRatio, SpanOutlook.Situation situation, boolean blocked) {}

    /** The scores of one span over all samples. */
    public static final class Scores {
        private final double[] bySample;
        private final double feasibleRatio;
        private final long feasibleDraws;

        Scores(double[] bySample, double feasibleRatio, long feasibleDraws) {
            this.bySample = bySample;
            this.feasibleRatio = feasibleRatio;
            this.feasibleDraws = feasibleDraws;
        }

        /** Returns the scores by sample, not to be changed. */
        public double[] bySample() {
            return bySample;
        }

        /** Returns the chance that everything can be pulled and room is gained. */
        public double feasibleRatio() {
            return feasibleRatio;
        }

        /** Returns in which samples that is so: bit {@code i} is set for sample {@code i}, of the first 64. */
        public long feasibleDraws() {
            return feasibleDraws;
        }
    }

    /** Returns the score, of such in rising order, that so large a share of them does not exceed; linear between ranks. */
    public static double quantilePoints(double[] sorted, double share) {
        return Quantile.inUnit(sorted, share);
    }

    /** Returns a span's scores in all samples. */
    public Scores scores(SpanOutlook span) {
        double[] bySample = new double[settings.samples()];
        int[] feasible = new int[1];
        long[] mask = new long[1];
        draw(span, settings.samples(), (sample, scorePoints, isFeasible, drawn) -> {
            bySample[sample] = scorePoints;
            feasible[0] += isFeasible ? 1 : 0;
            mask[0] |= isFeasible && sample < Long.SIZE ? 1L << sample : 0;
        });
        return new Scores(bySample, feasible[0] / (double) bySample.length, mask[0]);
    }

    void draw(SpanOutlook span, int samples, Sink sink) {
        var draws = new Draws(settings.seed(), span.spanId());
        UseCurve use = UseCurve.of(span.use());
        double[] fixedPoints = span.situations().stream()
                .mapToDouble(situation -> fixedPoints(situation.quantities()))
                .toArray();
        for (int sample = 0; sample < samples; sample++) {
            int number = situation(span.situations(), draws.at(SITUATION, sample));
            SpanOutlook.Situation situation = span.situations().get(number);
            double better = draws.at(FRICTION, sample);
            double usedPercent = use.percentAt(triangular(better));
            boolean blocked = draws.at(CONDITION, sample) < span.blockedRatio();
            boolean none = blocked || !situation.gainsRoom();
            double scorePoints = none ? 0 : fixedPoints[number] + variedPoints(situation, usedPercent, sample);
            sink.accept(sample, scorePoints, !none && usedPercent <= 100, new Drawn(better, situation, blocked));
        }
    }

    /**
     * Returns the most that a span can score in each sample, whatever its friction, its situation and its state: never less than what it
     * scores. In a hundredth of the time of drawing.
     */
    public double[] mostPoints(SpanOutlook span, int samples) {
        double[] most = new double[samples];
        for (SpanOutlook.Situation situation : span.situations()) {
            if (!situation.gainsRoom()) {
                continue;
            }
            double fixed = fixedPoints(situation.quantities());
            int period = savingPlace < 0 ? 1 : Math.max(1, situation.savingRatios().length);
            double[] ofDraw = new double[period];
            for (int draw = 0; draw < period; draw++) {
                ofDraw[draw] = fixed + ((easePlace < 0 ? 0 : easeMostPoints) + savingPoints(situation, draw));
            }
            for (int sample = 0; sample < samples; sample++) {
                most[sample] = Math.max(most[sample], ofDraw[sample % period]);
            }
        }
        return most;
    }

    /** The points of all criteria that friction and rates leave as they are. */
    private double fixedPoints(double[] quantities) {
        double sum = 0;
        for (int place = 0; place < quantities.length; place++) {
            sum += place == easePlace || place == savingPlace ? 0 : points.of(place, quantities[place]);
        }
        return sum;
    }

    private double variedPoints(SpanOutlook.Situation situation, double usedPercent, int sample) {
        double sum = easePlace < 0 ? 0 : points.of(easePlace, usedPercent);
        return sum + savingPoints(situation, sample);
    }

    private double savingPoints(SpanOutlook.Situation situation, int sample) {
        if (savingPlace < 0) {
            return 0;
        }
        double[] savings = situation.savingRatios();
        double saving = savings.length > 0
                ? savings[sample % savings.length]
                : situation.quantities()[savingPlace];
        return points.of(savingPlace, saving);
    }

    /** Returns the number of the situation that is drawn. */
    private static int situation(List<SpanOutlook.Situation> situations, double drawn) {
        double sum = 0;
        for (int number = 0; number < situations.size(); number++) {
            sum += situations.get(number).chanceRatio();
            if (drawn < sum) {
                return number;
            }
        }
        return 0;
    }

    /** From a share of all cases to a place between 0 (lubricated) and 1 (bad), dry in the middle being the likeliest. */
    private static double triangular(double share) {
        return share < 0.5 ? Math.sqrt(share / 2) : 1 - Math.sqrt((1 - share) / 2);
    }
}
