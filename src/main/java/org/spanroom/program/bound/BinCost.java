package org.spanroom.program.bound;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.spanroom.program.design.Bin;
import org.spanroom.program.design.Piece;

/**
 * Cost of one piece: which ducts to recover, and how many to build, so that every demand fits into one duct whole.
 *
 * <p>Bin by bin: the least cost of holding certain counts in the first bins is that of holding less in one bin fewer, the rest going
 * into the last one as it is or recovered. Only loads that leave no room for a further demand need to be tried.
 */
record BinCost(Piece piece) implements CountCost {
    @Override
    public double[] table(CountBox box, int[] sizes) {
        double[] costs = new double[box.size()];
        Arrays.fill(costs, Double.POSITIVE_INFINITY);
        costs[0] = 0;
        for (Bin bin : piece.bins()) {
            double[] asItIs = with(costs, bin.now(), 0, box, sizes);
            costs = bin.isRecoverable() ? least(asItIs, with(costs, bin.after(), bin.money(), box, sizes)) : asItIs;
        }
        return withNewDucts(costs, box, sizes);
    }

    private double[] withNewDucts(double[] without, CountBox box, int[] sizes) {
        double[] best = without;
        double[] held = without;
        for (int ducts = 1; ducts <= piece.more().most(); ducts++) {
            double[] further = with(held, piece.more().positions(), 0, box, sizes);
            if (Arrays.equals(further, held)) {
                break;
            }
            held = further;
            double money = piece.more().money(ducts);
            best = least(best, Arrays.stream(held).map(cost -> cost + money).toArray());
        }
        best[0] = 0;
        return best;
    }

    private static double[] least(double[] one, double[] other) {
        double[] least = new double[one.length];
        for (int i = 0; i < least.length; i++) {
            least[i] = Math.min(one[i], other[i]);
        }
        return least;
    }

    private static double[] with(double[] costs, int positions, double money, CountBox box, int[] sizes) {
        double[] result = new double[costs.length];
        Arrays.fill(result, Double.POSITIVE_INFINITY);
        for (int[] load : fullLoads(positions, box, sizes)) {
            for (int i = 0; i < result.length; i++) {
                result[i] = Math.min(result[i], costs[box.indexOfRest(i, load)] + money);
            }
        }
        return result;
    }

    private static List<int[]> fullLoads(int positions, CountBox box, int[] sizes) {
        var loads = new ArrayList<int[]>();
        fill(loads, new int[sizes.length], sizes.length - 1, positions, box, sizes);
        return loads;
    }

    /** Chooses counts from the largest size down; of the smallest one goes in what still fits. */
    private static void fill(List<int[]> loads, int[] load, int k, int left, CountBox box, int[] sizes) {
        int most = Math.min(box.most(k), left / sizes[k]);
        for (int count = k == 0 ? most : 0; count <= most; count++) {
            load[k] = count;
            if (k == 0) {
                loads.add(load.clone());
            } else {
                fill(loads, load, k - 1, left - count * sizes[k], box, sizes);
            }
        }
    }
}
