package org.spanroom.model.learn;

import org.spanroom.model.Check;

/**
 * What several ratios of actual to planned say: a robust middle, how certain it is, and how far it is to be followed.
 *
 * @param spans how many spans reported; each counts once
 * @param medianRatio of actual to planned
 * @param lowRatio lower end of the bootstrap interval of the median
 * @param highRatio upper end of it
 * @param lowSpreadRatio the ratio below which no span would be if ratios were triangular, over the median; 1 or less
 * @param highSpreadRatio the ratio above which none would be, over the median; 1 or more
 * @param weightRatio how far the median is followed: 0 not at all, 1 all the way
 */
public record RatioEstimate(
        int spans,
        double medianRatio,
        double lowRatio,
        double highRatio,
        double lowSpreadRatio,
        double highSpreadRatio,
        double weightRatio) {
    public RatioEstimate {
        Check.positive("spans", spans);
        Check.positive("medianRatio", medianRatio);
        Check.within("lowSpreadRatio", lowSpreadRatio, 0, 1);
        Check.notNegative("highSpreadRatio", highSpreadRatio);
        Check.within("weightRatio", weightRatio, 0, 1);
    }

    /** Returns the ratio that is followed: the median shrunk towards 1, in logarithms; exactly 1 where the median is. */
    public double learnedRatio() {
        return Math.exp(weightRatio * Math.log(medianRatio));
    }

    /** Returns the estimate of the inverse ratio, for a rate that divides. */
    public RatioEstimate inverse() {
        return new RatioEstimate(
                spans,
                1 / medianRatio,
                1 / highRatio,
                1 / lowRatio,
                1 / highSpreadRatio,
                lowSpreadRatio > 0 ? 1 / lowSpreadRatio : Double.MAX_VALUE,
                weightRatio);
    }

    /**
     * Returns the learned low limit of a value: its distance from the value, in logarithms, is that of today and that of the spans,
     * by weight. A limit of 0 stays 0.
     *
     * @param lowOverValueRatio today's low limit over today's value, 1 or less
     */
    public double lowOverValueRatio(double lowOverValueRatio) {
        return mixed(lowOverValueRatio, lowSpreadRatio);
    }

    /** Returns the same for the high limit, 1 or more. */
    public double highOverValueRatio(double highOverValueRatio) {
        return mixed(highOverValueRatio, highSpreadRatio);
    }

    private double mixed(double todayRatio, double seenRatio) {
        return Math.exp((1 - weightRatio) * Math.log(todayRatio) + weightRatio * Math.log(seenRatio));
    }
}
