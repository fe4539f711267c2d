package org.spanroom.learn;

import java.util.Arrays;
import org.spanroom.model.Quantile;

/**
 * The percentile interval of a median: samples of the same size are drawn with replacement, and the interval holds the
 * middle share of their medians (Efron 1979, from memory). Deterministic: everything follows from the seed.
 */
final class Bootstrap {
    private static final long STEP = 0x9E3779B97F4A7C15L;

    private Bootstrap() {}

    /** Both ends of an interval. */
    record Interval(double lowRatio, double highRatio) {}

    /**
     * Returns the interval.
     *
     * @param ratios at least one, in any order
     * @param shareRatio share of the medians that the interval holds
     */
    static Interval ofMedian(double[] ratios, double shareRatio, int resamples, int seed) {
        double[] sorted = ratios.clone();
        Arrays.sort(sorted);
        double[] medians = new double[resamples];
        double[] drawn = new double[sorted.length];
        long state = mixed(STEP * (seed + 1L));
        for (int i = 0; i < resamples; i++) {
            for (int k = 0; k < drawn.length; k++) {
                state += STEP;
                drawn[k] = sorted[(int) Math.multiplyHigh(mixed(state) >>> 1, 2L * sorted.length)];
            }
            medians[i] = median(drawn);
        }
        Arrays.sort(medians);
        double outside = (1 - shareRatio) / 2;
        return new Interval(Quantile.inUnit(medians, outside), Quantile.inUnit(medians, 1 - outside));
    }

    /** Returns the median; that of an even number of values is half way between the middle two. The array is sorted. */
    static double median(double[] ratios) {
        Arrays.sort(ratios);
        return Quantile.inUnit(ratios, 0.5);
    }

    /** The finalizer of SplitMix64 (Steele, Lea and Flood 2014; from memory). */
    private static long mixed(long bits) {
        long z = bits;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }
}
