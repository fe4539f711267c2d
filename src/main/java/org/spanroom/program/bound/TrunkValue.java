package org.spanroom.program.bound;

import java.util.Arrays;
import java.util.List;

/**
 * The least of a trunk's cost less the prices of the demands that pass it, over all choices of demands: at most 0.
 *
 * <p>Not thread-safe. Reusable; results are valid until the next {@link #run}.
 */
final class TrunkValue {
    /** So high a price that the demand which pays it is always chosen, and so low that sums keep a millionth. */
    private static final double ENFORCING = 1e10;

    private final TrunkNetwork network;
    private final SizeChoice[] choices;
    private final PriceList forward = new PriceList();
    private final PriceList backward = new PriceList();
    private final int[] counts;
    private final int[] bestCounts;
    private double least;

    private final IntList chosen = new IntList();
    private final boolean[] cut;
    private double priceSum;

    TrunkValue(TrunkNetwork network) {
        this.network = network;
        int sizes = network.sizes.length;
        choices = new SizeChoice[sizes];
        for (int k = 0; k < sizes; k++) {
            choices[k] = new SizeChoice();
        }
        counts = new int[sizes];
        bestCounts = new int[sizes];
        cut = new boolean[sizes];
    }

    /**
     * Finds the least value.
     *
     * @param prices of each demand, of each slot
     */
    double run(int t, TrunkTable table, double[][] prices) {
        gather(t, table, prices);
        least = 0;
        int bestSide = TrunkNetwork.NONE;
        Arrays.fill(bestCounts, 0);
        for (int s = 0; s < table.sides().size(); s++) {
            double before = least;
            search(
                    table.box(),
                    table.costs()[s],
                    0,
                    0,
                    localPrice(t, table.sides().get(s), prices));
            if (least < before) {
                bestSide = s;
            }
        }
        collect(t, table, bestSide);
        return least;
    }

    /**
     * Returns by how much one price can rise without the value falling below 0, if it is 0 now.
     *
     * @param prices of each demand, of each slot; left as they are
     */
    double slack(int t, TrunkTable table, double[][] prices, int demand, int slot) {
        double price = prices[demand][slot];
        prices[demand][slot] = price + ENFORCING;
        double value = run(t, table, prices);
        prices[demand][slot] = price;
        return Math.max(0, value + ENFORCING);
    }

    /** Returns the demands of the least value: twice the demand's number, plus 1 where it passes backward. */
    int[] chosen() {
        return chosen.toArray();
    }

    /** Returns of each size whether more demands are chosen than the table tells the cost of. */
    boolean[] cut() {
        return cut.clone();
    }

    /** Returns the sum of all prices: rounding errors are in proportion to it. */
    double priceSum() {
        return priceSum;
    }

    private void gather(int t, TrunkTable table, double[][] prices) {
        priceSum = 0;
        for (SizeChoice choice : choices) {
            choice.clear();
        }
        forward.clear();
        backward.clear();
        int[] groups = network.groupOf;
        for (int d = 0; d < groups.length; d++) {
            double priceForward = prices[d][2 * t];
            double priceBackward = prices[d][2 * t + 1];
            if (priceForward > 0 || priceBackward > 0) {
                addPrices(t, d, priceForward, priceBackward);
            }
            if ((d + 1 == groups.length || groups[d + 1] != groups[d]) && forward.count() + backward.count() > 0) {
                choices[network.sizeOf[d]].addGroup(forward, backward);
                forward.clear();
                backward.clear();
            }
        }
        for (int k = 0; k < choices.length; k++) {
            choices[k].finish(table.box().most(k));
        }
    }

    private void addPrices(int t, int d, double priceForward, double priceBackward) {
        priceSum += priceForward + priceBackward;
        boolean endsInside = network.rootTrunk[d] == t || network.targetTrunk[d] == t;
        if (!endsInside && priceForward > 0) {
            forward.add(priceForward, 2 * d);
        }
        if (!endsInside && priceBackward > 0) {
            backward.add(priceBackward, 2 * d + 1);
        }
    }

    private double localPrice(int t, int[] side, double[][] prices) {
        double sum = 0;
        List<Trunk.End> ends = network.trunks.get(t).ends();
        for (int e = 0; e < side.length; e++) {
            if (side[e] != 0) {
                sum += prices[ends.get(e).demand()][2 * t + side[e] - 1];
            }
        }
        return sum;
    }

    /** Tries all counts of the sizes from one on; stops where the cost alone is above all that is still to be gained. */
    private void search(CountBox box, double[] costs, int k, int index, double gain) {
        if (k == choices.length) {
            if (costs[index] - gain < least) {
                least = costs[index] - gain;
                System.arraycopy(counts, 0, bestCounts, 0, counts.length);
            }
            return;
        }
        double mostGain = gain;
        for (int j = k; j < choices.length; j++) {
            mostGain += choices[j].best(choices[j].most());
        }
        for (int count = 0; count <= choices[k].most(); count++) {
            int next = index + count * box.stride(k);
            if (costs[next] - mostGain >= least) {
                break;
            }
            counts[k] = count;
            search(box, costs, k + 1, next, gain + choices[k].best(count));
        }
    }

    private void collect(int t, TrunkTable table, int bestSide) {
        chosen.clear();
        Arrays.fill(cut, false);
        if (bestSide == TrunkNetwork.NONE) {
            return;
        }
        for (int k = 0; k < choices.length; k++) {
            choices[k].collect(bestCounts[k], chosen);
            cut[k] = choices[k].isCut() && bestCounts[k] == choices[k].most();
        }
        int[] side = table.sides().get(bestSide);
        for (int e = 0; e < side.length; e++) {
            if (side[e] != 0) {
                chosen.add(2 * network.trunks.get(t).ends().get(e).demand() + side[e] - 1);
            }
        }
    }
}
