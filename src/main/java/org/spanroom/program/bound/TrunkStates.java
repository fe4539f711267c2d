package org.spanroom.program.bound;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * What can pass a trunk at which cost, cheapest first: only counts none of which could be higher at the same cost.
 *
 * <p>Others are never better, as no price is below 0, and they are most of a table.
 */
final class TrunkStates {
    private final double[] moneys;
    private final int[] counts;
    private final int classes;

    private TrunkStates(double[] moneys, int[] counts, int classes) {
        this.moneys = moneys;
        this.counts = counts;
        this.classes = classes;
    }

    /**
     * Takes the states from a table.
     *
     * @param costs by the number of counts in the box; they never fall as a count rises
     */
    static TrunkStates of(CountBox box, double[] costs) {
        int[] found = IntStream.range(0, box.size())
                .filter(i -> Double.isFinite(costs[i]) && isHighest(box, costs, i))
                .boxed()
                .sorted(Comparator.comparingDouble((Integer i) -> costs[i]).thenComparing(Comparator.naturalOrder()))
                .mapToInt(Integer::intValue)
                .toArray();
        var counts = new int[found.length * box.classes()];
        Arrays.setAll(counts, at -> box.count(found[at / box.classes()], at % box.classes()));
        return new TrunkStates(Arrays.stream(found).mapToDouble(i -> costs[i]).toArray(), counts, box.classes());
    }

    private static boolean isHighest(CountBox box, double[] costs, int index) {
        for (int k = 0; k < box.classes(); k++) {
            if (box.count(index, k) < box.most(k) && costs[index + box.stride(k)] <= costs[index]) {
                return false;
            }
        }
        return true;
    }

    int size() {
        return moneys.length;
    }

    double money(int state) {
        return moneys[state];
    }

    /** Returns the least cost above an amount; infinite where there is none. */
    double firstMoneyAbove(double money) {
        for (double each : moneys) {
            if (each > money) {
                return each;
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    int count(int state, int k) {
        return counts[state * classes + k];
    }
}
