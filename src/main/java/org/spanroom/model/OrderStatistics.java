package org.spanroom.model;

import java.util.Arrays;

/**
 * Order statistics of one sample after another, where only a few of each are asked for.
 *
 * <p>Method: values are spread over as many buckets of equal width as there are values, and only the buckets that are asked for are
 * sorted. The result is that of sorting all, bit for bit but for the sign of a zero. Reusable; for one thread.
 */
public final class OrderStatistics {
    /** Where so many of the values fall into one bucket, sorting all of them is as fast. */
    private static final double MOST_RATIO = 0.5;

    private double[] values = {};
    private int[] buckets = {};
    private int[] ends = {};
    private int[] bucketByPlace = {};
    private boolean sorted;

    /** Takes the values of a sample, which are copied. */
    public void load(double[] sample) {
        if (values.length != sample.length) {
            values = new double[sample.length];
            buckets = new int[sample.length];
            bucketByPlace = new int[sample.length];
            ends = new int[sample.length + 1];
        }
        double least = sample[0];
        double most = sample[0];
        for (double value : sample) {
            if (value < least) {
                least = value;
            }
            if (value > most) {
                most = value;
            }
        }
        double perUnit = sample.length / (most - least);
        sorted = !(perUnit > 0 && perUnit < Double.MAX_VALUE) || !spread(sample, least, perUnit);
        if (sorted) {
            System.arraycopy(sample, 0, values, 0, sample.length);
            Arrays.sort(values);
        }
    }

    /** Returns whether the values were spread; not if too many are close to one another, or one is not a number. */
    private boolean spread(double[] sample, double least, double perUnit) {
        int last = sample.length - 1;
        Arrays.fill(ends, 0);
        for (int i = 0; i < sample.length; i++) {
            buckets[i] = Math.min((int) ((sample[i] - least) * perUnit), last);
            ends[buckets[i] + 1]++;
        }
        int fullest = 0;
        for (int bucket = 1; bucket < ends.length; bucket++) {
            fullest = Math.max(fullest, ends[bucket]);
            ends[bucket] += ends[bucket - 1];
        }
        if (fullest > MOST_RATIO * sample.length) {
            return false;
        }
        boolean numbers = true;
        for (int i = 0; i < sample.length; i++) {
            int place = ends[buckets[i]]++;
            values[place] = sample[i];
            bucketByPlace[place] = buckets[i];
            numbers &= !Double.isNaN(sample[i]);
        }
        return numbers;
    }

    /** Returns the value at a place in rising order, from 0. */
    public double at(int place) {
        if (!sorted) {
            sortAround(place);
        }
        return values[place];
    }

    /** Returns the value that so large a share of the sample does not exceed, as {@link Quantile#inUnit} does. */
    public double quantile(double shareRatio) {
        double place = shareRatio * (values.length - 1);
        int below = (int) place;
        int above = Math.min(below + 1, values.length - 1);
        return at(below) + (place - below) * (at(above) - at(below));
    }

    /** Sorts the bucket that holds a place. */
    private void sortAround(int place) {
        int bucket = bucketByPlace[place];
        int from = bucket == 0 ? 0 : ends[bucket - 1];
        for (int i = from + 1; i < ends[bucket]; i++) {
            double value = values[i];
            int at = i;
            while (at > from && values[at - 1] > value) {
                values[at] = values[at - 1];
                at--;
            }
            values[at] = value;
        }
    }
}
