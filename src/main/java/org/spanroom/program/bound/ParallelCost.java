package org.spanroom.program.bound;

import java.util.Arrays;

/** Cost of two parts side by side: the demands are divided between them as is cheapest. */
record ParallelCost(CountCost one, CountCost other) implements CountCost {
    @Override
    public double[] table(CountBox box, int[] sizes) {
        double[] here = one.table(box, sizes);
        double[] there = other.table(box, sizes);
        double[] best = new double[box.size()];
        Arrays.fill(best, Double.POSITIVE_INFINITY);
        int[] counts = new int[box.classes()];
        for (int i = 0; i < here.length; i++) {
            if (Double.isInfinite(here[i])) {
                continue;
            }
            for (int k = 0; k < counts.length; k++) {
                counts[k] = box.count(i, k);
            }
            for (int all = i; all < best.length; all++) {
                best[all] = Math.min(best[all], here[i] + there[box.indexOfRest(all, counts)]);
            }
        }
        return best;
    }
}
