package org.spanroom.model.bore;

import java.util.Arrays;

/** The order in which the cells of a sleeve are side by side, as their places show it. */
public final class SleeveRow {
    /** Rows are found by dynamic programming over subsets, so longer ones only nearest to nearest. */
    private static final int MOST_EXACT = 10;

    /** More than the gaps of any row add up to. */
    private static final double FORBIDDEN = 1e12;

    private SleeveRow() {}

    /**
     * Returns the order of cells in the row with the least sum of costs between neighbors (Held and Karp 1962, from memory); for
     * more than ten cells each cell is followed by its nearest. Of the two directions that with the lower number first.
     *
     * @param costs of two cells as neighbors, symmetric
     */
    public static int[] shortest(double[][] costs) {
        int cells = costs.length;
        if (cells < 3) {
            return cells == 2 ? new int[] {0, 1} : new int[cells];
        }
        if (cells == 3) {
            return ofThree(costs);
        }
        return directed(cells <= MOST_EXACT ? exact(costs) : nearest(costs));
    }

    /** Returns the row whose widest gap is least; of several that with the least sum of gaps. */
    static int[] tightest(double[][] gaps) {
        double[] widest = Arrays.stream(gaps)
                .flatMapToDouble(Arrays::stream)
                .sorted()
                .distinct()
                .toArray();
        int from = 0;
        int to = widest.length - 1;
        while (from < to) {
            int middle = (from + to) / 2;
            if (hangsTogether(gaps, widest[middle])) {
                to = middle;
            } else {
                from = middle + 1;
            }
        }
        return shortest(within(gaps, widest[from]));
    }

    private static boolean hangsTogether(double[][] gaps, double widest) {
        int[] row = shortest(within(gaps, widest));
        for (int place = 1; place < row.length; place++) {
            if (gaps[row[place - 1]][row[place]] > widest) {
                return false;
            }
        }
        return true;
    }

    private static double[][] within(double[][] gaps, double widest) {
        double[][] costs = new double[gaps.length][];
        for (int cell = 0; cell < gaps.length; cell++) {
            costs[cell] = Arrays.stream(gaps[cell])
                    .map(gap -> gap > widest ? FORBIDDEN : gap)
                    .toArray();
        }
        return costs;
    }

    private static int[] ofThree(double[][] costs) {
        double ends01 = costs[0][2] + costs[2][1];
        double ends02 = costs[0][1] + costs[1][2];
        double ends12 = costs[1][0] + costs[0][2];
        if (ends02 <= ends01 && ends02 <= ends12) {
            return new int[] {0, 1, 2};
        }
        return ends01 <= ends12 ? new int[] {0, 2, 1} : new int[] {1, 0, 2};
    }

    private static int[] exact(double[][] costs) {
        int cells = costs.length;
        int sets = 1 << cells;
        double[][] least = new double[sets][cells];
        int[][] before = new int[sets][cells];
        for (double[] row : least) {
            Arrays.fill(row, Double.POSITIVE_INFINITY);
        }
        for (int cell = 0; cell < cells; cell++) {
            least[1 << cell][cell] = 0;
        }
        for (int set = 1; set < sets; set++) {
            for (int end = 0; end < cells; end++) {
                extend(costs, least, before, set, end);
            }
        }
        return trace(least, before);
    }

    private static void extend(double[][] costs, double[][] least, int[][] before, int set, int end) {
        if (Double.isInfinite(least[set][end])) {
            return;
        }
        for (int next = 0; next < costs.length; next++) {
            int wider = set | 1 << next;
            double cost = least[set][end] + costs[end][next];
            if (wider != set && cost < least[wider][next]) {
                least[wider][next] = cost;
                before[wider][next] = end;
            }
        }
    }

    private static int[] trace(double[][] least, int[][] before) {
        int cells = before[0].length;
        int set = (1 << cells) - 1;
        int end = 0;
        for (int cell = 1; cell < cells; cell++) {
            end = least[set][cell] < least[set][end] ? cell : end;
        }
        int[] order = new int[cells];
        for (int place = cells - 1; place >= 0; place--) {
            order[place] = end;
            int previous = before[set][end];
            set &= ~(1 << end);
            end = previous;
        }
        return order;
    }

    private static int[] nearest(double[][] costs) {
        int cells = costs.length;
        int[] order = new int[cells];
        boolean[] taken = new boolean[cells];
        taken[0] = true;
        for (int place = 1; place < cells; place++) {
            int best = -1;
            for (int cell = 0; cell < cells; cell++) {
                double cost = costs[order[place - 1]][cell];
                if (!taken[cell] && (best < 0 || cost < costs[order[place - 1]][best])) {
                    best = cell;
                }
            }
            order[place] = best;
            taken[best] = true;
        }
        return order;
    }

    private static int[] directed(int[] order) {
        int last = order.length - 1;
        if (order[0] < order[last]) {
            return order;
        }
        int[] turned = new int[order.length];
        for (int place = 0; place <= last; place++) {
            turned[place] = order[last - place];
        }
        return turned;
    }
}
