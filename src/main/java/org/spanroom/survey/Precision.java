package org.spanroom.survey;

import org.spanroom.model.survey.StratumEstimate;

/**
 * How precisely a share is known from a sample without replacement: half the width of the normal interval, {@code z sqrt(P Q / n (N - n)
 * / (N - 1))}, at P = 1/2 where it is widest (Cochran, Sampling Techniques, section 3.2, from memory; z = 1.96 for 95 percent). It takes
 * the spans seen for a random sample; those that one vault shows are often similar, so that it is optimistic.
 */
final class Precision {
    private static final double Z_95 = 1.959964;
    private static final double WIDEST_RATIO = 0.25;

    private Precision() {}

    /** Returns the margin after this many of this many have been seen; before any, half of everything. */
    static double marginRatio(int seen, int all) {
        if (seen >= all) {
            return 0;
        }
        if (seen == 0) {
            return StratumEstimate.MOST_RATIO;
        }
        double variance = WIDEST_RATIO / seen * (all - seen) / (all - 1.0);
        return Math.min(StratumEstimate.MOST_RATIO, Z_95 * Math.sqrt(variance));
    }
}
