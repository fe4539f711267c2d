package org.spanroom.program.bound;

import java.util.List;

/** Cost of parts one after the other: what passes one passes all, so the costs add up. */
record ChainCost(List<CountCost> parts) implements CountCost {
    ChainCost {
        parts = List.copyOf(parts);
    }

    @Override
    public double[] table(CountBox box, int[] sizes) {
        double[] sum = new double[box.size()];
        for (CountCost part : parts) {
            double[] costs = part.table(box, sizes);
            for (int i = 0; i < sum.length; i++) {
                sum[i] += costs[i];
            }
        }
        return sum;
    }
}
