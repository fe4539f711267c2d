package org.spanroom.model;

import java.util.Arrays;

/** Points of a sample below which a given share of it lies. */
public final class Quantile {
    private Quantile() {}

    /**
     * Returns the value that so large a share of a sample does not exceed, linear between order statistics (type 7 of Hyndman and Fan
     * 1996, from memory: the default of common statistics libraries).
     *
     * @param sortedInUnit the sample in rising order, at least one value; or arranged by {@link #arrange} for this share
     */
    public static double inUnit(double[] sortedInUnit, double shareRatio) {
        double place = shareRatio * (sortedInUnit.length - 1);
        int below = (int) place;
        int above = Math.min(below + 1, sortedInUnit.length - 1);
        return sortedInUnit[below] + (place - below) * (sortedInUnit[above] - sortedInUnit[below]);
    }

    /**
     * Arranges a sample so that {@link #inUnit} finds some shares of it as if it were sorted, in less time than sorting takes: by selection
     * (Hoare 1961, from memory).
     *
     * @param sharesRatio in rising order
     */
    public static void arrange(double[] sampleInUnit, double... sharesRatio) {
        for (double value : sampleInUnit) {
            if (Double.isNaN(value)) {
                Arrays.sort(sampleInUnit);
                return;
            }
        }
        int from = 0;
        int last = sampleInUnit.length - 1;
        for (double share : sharesRatio) {
            int place = (int) (share * last);
            select(sampleInUnit, from, last, place);
            if (place < last) {
                select(sampleInUnit, place + 1, last, place + 1);
            }
            from = place;
        }
    }

    /** Moves the value that belongs to a place in rising order there, with none larger before it and none smaller behind. */
    private static void select(double[] values, int first, int last, int place) {
        int from = first;
        int to = last;
        while (from < to) {
            double pivot = middle(values[from], values[(from + to) >>> 1], values[to]);
            int low = from;
            int high = to;
            while (low <= high) {
                while (values[low] < pivot) {
                    low++;
                }
                while (values[high] > pivot) {
                    high--;
                }
                if (low <= high) {
                    double swapped = values[low];
                    values[low++] = values[high];
                    values[high--] = swapped;
                }
            }
            if (place <= high) {
                to = high;
            } else if (place >= low) {
                from = low;
            } else {
                return;
            }
        }
    }

    private static double middle(double one, double two, double three) {
        return Math.max(Math.min(one, two), Math.min(Math.max(one, two), three));
    }
}
