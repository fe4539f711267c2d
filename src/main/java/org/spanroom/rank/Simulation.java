package org.spanroom.rank;

import java.util.List;
import java.util.function.DoubleBinaryOperator;
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
    /** More than what rounding may add to points, which are 100 at most. */
    private static final double ROUNDING_POINTS = 1e-9;

    private final UncertaintySettings settings;
    private final Points points;
    private final int easePlace;
    private final int savingPlace;
    private final DoubleBinaryOperator easeMostPoints;
    private final DoubleBinaryOperator savingMostPoints;

    /** A simulation of which it is not known how many points the pull can give at most. */
    Simulation(UncertaintySettings settings, Points points, int easePlace, int savingPlace) {
        this(settings, points, easePlace, savingPlace, (fromPercent, toPercent) -> Double.POSITIVE_INFINITY);
    }

    /** A simulation of which it is not known how many points the saving can give at most. */
    Simulation(
            UncertaintySettings settings,
            Points points,
            int easePlace,
            int savingPlace,
            DoubleBinaryOperator easeMostPoints) {
        this(settings, points, easePlace, savingPlace, easeMostPoints, (from, to) -> Double.POSITIVE_INFINITY);
    }

    /**
     * Prepares a simulation.
     *
     * @param points what each criterion adds to a score
     * @param easePlace which of the quantities is the utilization of the pull in percent; -1 where none is
     * @param savingPlace which of them is the saving per money spent; -1 where none is
     * @param easeMostPoints the most that the criterion of the pull adds, where the utilization lies between two percentages
     * @param savingMostPoints the most that the criterion of the saving adds, where the saving per money spent lies between two ratios
     */
    Simulation(
            UncertaintySettings settings,
            Points points,
            int easePlace,
            int savingPlace,
            DoubleBinaryOperator easeMostPoints,
            DoubleBinaryOperator savingMostPoints) {
        this.settings = settings;
        this.savingMostPoints = savingMostPoints;
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

    /** Returns a span's scores in all samples. */
    public Scores scores(SpanOutlook span) {
        double[] bySample = new double[settings.samples()];
        boolean[] isFeasible = new boolean[bySample.length];
        samples(span).scoreAll(bySample, isFeasible);
        int feasible = 0;
        long mask = 0;
        for (int sample = 0; sample < bySample.length; sample++) {
            if (isFeasible[sample]) {
                feasible++;
                mask |= sample < Long.SIZE ? 1L << sample : 0;
            }
        }
        return new Scores(bySample, feasible / (double) bySample.length, mask);
    }

    /** Returns the samples of a span; its scores are the first of them. */
    SpanSamples samples(SpanOutlook span) {
        return new SpanSamples(this, settings.seed(), span);
    }

    /**
     * Returns the most that a span can score, whatever its friction and its condition: never less than what it scores. Takes a hundredth of
     * the time of drawing.
     *
     * @param samples so many of each situation; all later ones repeat these if {@link #period} divides it
     * @return points by situation and sample; 0 where a situation gains no room
     */
    public double[][] mostPoints(SpanOutlook span, int samples) {
        List<SpanOutlook.Situation> situations = span.situations();
        double[][] most = new double[situations.size()][samples];
        double easePoints = easeMostPoints(span);
        for (int number = 0; number < most.length; number++) {
            SpanOutlook.Situation situation = situations.get(number);
            if (!situation.gainsRoom()) {
                continue;
            }
            double fixed = fixedPoints(situation.quantities());
            int period = Math.min(samples, period(situation));
            for (int sample = 0; sample < period; sample++) {
                most[number][sample] = fixed + (easePoints + savingPoints(situation, sample));
            }
            for (int sample = period; sample < samples; sample++) {
                most[number][sample] = most[number][sample - period];
            }
        }
        return most;
    }

    /** Returns points that no sample of a span exceeds, in a fraction of the time of {@link #mostPoints(SpanOutlook, int)}; 0 if it gains no room. */
    public double mostPoints(SpanOutlook span) {
        double most = 0;
        double easePoints = easeMostPoints(span);
        for (SpanOutlook.Situation situation : span.situations()) {
            if (situation.gainsRoom()) {
                double fixed = fixedPoints(situation.quantities());
                most = Math.max(most, fixed + (easePoints + savingMostPoints(situation)) + ROUNDING_POINTS);
            }
        }
        return most;
    }

    private double savingMostPoints(SpanOutlook.Situation situation) {
        double[] savings = situation.savingRatios();
        if (savingPlace < 0 || savings.length == 0) {
            return savingPoints(situation, 0);
        }
        double least = savings[0];
        double most = savings[0];
        for (double saving : savings) {
            least = Math.min(least, saving);
            most = Math.max(most, saving);
        }
        return savingMostPoints.applyAsDouble(least, most) + ROUNDING_POINTS;
    }

    /** Returns after how many samples the points repeat that depend on the number of the sample alone. */
    int period(SpanOutlook.Situation situation) {
        return savingPlace < 0 ? 1 : Math.max(1, situation.savingRatios().length);
    }

    private double easeMostPoints(SpanOutlook span) {
        if (easePlace < 0) {
            return 0;
        }
        UseCurve use = span.use();
        return easeMostPoints.applyAsDouble(use.leastPercent(), use.mostPercent()) + ROUNDING_POINTS;
    }

    /** The points of all criteria that friction and rates leave as they are. */
    double fixedPoints(double[] quantities) {
        double sum = 0;
        for (int place = 0; place < quantities.length; place++) {
            sum += place == easePlace || place == savingPlace ? 0 : points.of(place, quantities[place]);
        }
        return sum;
    }

    /** The points of the two that they change. */
    double variedPoints(SpanOutlook.Situation situation, double usedPercent, int sample) {
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
}
