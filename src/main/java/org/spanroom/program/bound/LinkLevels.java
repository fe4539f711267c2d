package org.spanroom.program.bound;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What a link lets through at each level of cost, as limits of weighted counts.
 *
 * <p>Of a level, the counts that it bears are described from outside, by the most of each weighted sum: no fewer counts than it bears, so a
 * program over levels costs at most what the link does.
 */
record LinkLevels(List<Level> levels) {
    private static final int LARGEST_BOX = 4096;

    /**
     * One level.
     *
     * @param money its cost
     * @param most of each weighted sum the most
     */
    @SuppressWarnings(
            "ArrayRecordComponent") // Inside the search only, where objects would cost too much; never changed or
    // compared.
    record Level(double money, int[] most) {}

    LinkLevels {
        levels = List.copyOf(levels);
    }

    /** Returns the weights of counts: the cables together, then the demands of each size and those above it. */
    static int[][] weights(int[] sizes) {
        int[][] weights = new int[sizes.length + 1][sizes.length];
        weights[0] = sizes.clone();
        for (int k = 0; k < sizes.length; k++) {
            Arrays.fill(weights[k + 1], k, sizes.length, 1);
        }
        return weights;
    }

    static LinkLevels of(CountCost cost, int[] sizes, int[] demandsOfSize) {
        CountBox box = box(demandsOfSize);
        double[] table = cost.table(box, sizes);
        double[] amounts = Arrays.stream(table)
                .filter(Double::isFinite)
                .sorted()
                .distinct()
                .toArray();
        int[][] weights = weights(sizes);
        var levels = new ArrayList<Level>();
        int[] before = new int[0];
        for (double money : amounts) {
            int[] most = new int[weights.length];
            for (int i = 0; i < table.length; i++) {
                if (table[i] <= money) {
                    raise(most, i, box, weights, demandsOfSize);
                }
            }
            if (!Arrays.equals(most, before)) {
                levels.add(new Level(money, most));
                before = most;
            }
        }
        return new LinkLevels(levels);
    }

    /** As large as memory allows; at its most a count stands for all above it. */
    private static CountBox box(int[] demandsOfSize) {
        int[] most = demandsOfSize.clone();
        while (Arrays.stream(most).mapToLong(count -> count + 1L).reduce(1, (a, b) -> a * b) > LARGEST_BOX) {
            int largest = 0;
            for (int k = 1; k < most.length; k++) {
                largest = most[k] > most[largest] ? k : largest;
            }
            most[largest]--;
        }
        return new CountBox(most);
    }

    private static void raise(int[] most, int index, CountBox box, int[][] weights, int[] demandsOfSize) {
        for (int w = 0; w < weights.length; w++) {
            int sum = 0;
            for (int k = 0; k < demandsOfSize.length; k++) {
                int count = box.count(index, k);
                sum += weights[w][k] * (count == box.most(k) ? demandsOfSize[k] : count);
            }
            most[w] = Math.max(most[w], sum);
        }
    }
}
