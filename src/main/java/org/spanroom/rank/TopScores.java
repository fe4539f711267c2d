package org.spanroom.rank;

import java.util.Arrays;

/**
 * Keeps, for each sample, the highest scores of all spans, and so what it takes to be among them. The result does not depend on the
 * order in which spans come.
 */
public final class TopScores {
    private final double[][] heaps;
    private final int topCount;
    private final int[] sizes;

    /** The least score of each full heap; 0 of one that is not. */
    private final double[] leastPoints;

    public TopScores(int samples, int topCount) {
        this.topCount = topCount;
        heaps = new double[samples][topCount];
        sizes = new int[samples];
        leastPoints = new double[samples];
    }

    /** Takes one span's scores; for one thread at a time. */
    public void add(double[] bySample) {
        for (int sample = 0; sample < heaps.length; sample++) {
            add(sample, bySample[sample]);
        }
    }

    /** Takes all that another one holds. */
    public void addAll(TopScores other) {
        for (int sample = 0; sample < heaps.length; sample++) {
            for (int i = 0; i < other.sizes[sample]; i++) {
                add(sample, other.heaps[sample][i]);
            }
        }
    }

    /** Returns, for each sample, the least score of its top; 0 where there are fewer spans than the top has places. */
    public double[] thresholds() {
        return leastPoints.clone();
    }

    /** Returns the same array that later scores change; not to be changed by others. */
    double[] leastPoints() {
        return leastPoints;
    }

    /** Returns what it takes to be among the top in at least one sample, as far as scores are known. */
    double leastOfAllPoints() {
        return leastPoints(leastPoints);
    }

    /** Returns what it takes to be among the top in at least one sample. */
    public static double leastPoints(double[] thresholds) {
        double least = thresholds[0];
        for (double points : thresholds) {
            least = points < least ? points : least;
        }
        return least;
    }

    /** Returns whether such scores are among the top in any sample, as far as scores are known. */
    public boolean isAnyTop(double[] bySample) {
        for (int sample = 0; sample < bySample.length; sample++) {
            if (isTop(bySample[sample], leastPoints[sample])) {
                return true;
            }
        }
        return false;
    }

    /** Returns the share of samples in which these scores are among the top. */
    public static double topRatio(double[] bySample, double[] thresholds) {
        return countTop(bySample, thresholds) / (double) bySample.length;
    }

    /** Returns in how many of some samples such scores are among the top. */
    static int countTop(double[] bySample, double[] thresholds) {
        int top = 0;
        for (int sample = 0; sample < bySample.length; sample++) {
            top += isTop(bySample[sample], thresholds[sample % thresholds.length]) ? 1 : 0;
        }
        return top;
    }

    static boolean isTop(double scorePoints, double thresholdPoints) {
        return scorePoints > 0 && scorePoints >= thresholdPoints;
    }

    private void add(int sample, double score) {
        // Most scores are too low, which the one array shows that is always at hand.
        if (sizes[sample] == topCount) {
            if (score > leastPoints[sample]) {
                double[] heap = heaps[sample];
                sink(heap, score);
                leastPoints[sample] = heap[0];
            }
            return;
        }
        double[] heap = heaps[sample];
        heap[sizes[sample]++] = score;
        if (sizes[sample] == topCount) {
            // A sorted array is a heap with its least on top.
            Arrays.sort(heap);
            leastPoints[sample] = heap[0];
        }
    }

    private static void sink(double[] heap, double score) {
        int at = 0;
        while (2 * at + 1 < heap.length) {
            int child = 2 * at + 1;
            if (child + 1 < heap.length && heap[child + 1] < heap[child]) {
                child++;
            }
            if (heap[child] >= score) {
                break;
            }
            heap[at] = heap[child];
            at = child;
        }
        heap[at] = score;
    }
}
