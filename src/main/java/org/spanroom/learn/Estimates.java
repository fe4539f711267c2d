package org.spanroom.learn;

import org.spanroom.model.Quantile;
import org.spanroom.model.learn.LearnSettings;
import org.spanroom.model.learn.RatioEstimate;

/**
 * Estimates a ratio of actual to planned from the ratios of several spans.
 *
 * <p>The middle is the median, which a few wild reports hardly move. It is followed with the weight n / (n + n0). The spread is read
 * at the tenth and the ninetieth percentile and carried on, in logarithms, to where a triangle around the median would end: ranges
 * of rates are such triangles ({@code Rate.quantileInUnit}).
 */
public final class Estimates {
    private static final double TAIL_RATIO = 0.1;

    /** How far from its middle to its end a triangle's tenth percentile is. */
    private static final double REACH_RATIO = 1 - Math.sqrt(2 * TAIL_RATIO);

    private Estimates() {}

    /**
     * Returns the estimate of some ratios.
     *
     * @param ratios of actual to planned, at least one, each above 0
     * @param earlierSpans how many spans the value of today has been learned from already
     */
    public static RatioEstimate of(double[] ratios, int earlierSpans, LearnSettings settings) {
        double[] sorted = ratios.clone();
        double medianRatio = Bootstrap.median(sorted);
        Bootstrap.Interval interval =
                Bootstrap.ofMedian(sorted, settings.intervalRatio(), settings.resamples(), settings.seed());
        return new RatioEstimate(
                sorted.length,
                medianRatio,
                interval.lowRatio(),
                interval.highRatio(),
                end(Quantile.inUnit(sorted, TAIL_RATIO) / medianRatio),
                end(Quantile.inUnit(sorted, 1 - TAIL_RATIO) / medianRatio),
                sorted.length / (double) (sorted.length + settings.priorSpans() + earlierSpans));
    }

    private static double end(double tailRatio) {
        return Math.exp(Math.log(tailRatio) / REACH_RATIO);
    }
}
