package org.spanroom.bore;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;
import org.spanroom.model.bore.SleeveRow;

/**
 * Which cells of the sleeves of a task are neighbors, and how far they are stretched apart.
 *
 * <p>The stretch of two cells is what the distance of their outsides exceeds the slack by; that of a sleeve is the sum of squares
 * along the row in which the sum is least. A sleeve hangs together exactly where its stretch is 0. Cells as wide as others change
 * places between sleeves, or with loose things as wide. Holds no state of an arrangement.
 */
final class Joints {
    private static final int MOST_ROUNDS = 12;

    private final PackingTask task;
    private final int[][] sleeves;
    private final int[] sleeveOf;

    Joints(PackingTask task) {
        this.task = task;
        var cells = new TreeMap<Integer, List<Integer>>();
        for (int i = 0; i < task.size(); i++) {
            if (task.sleeve(i) > 0) {
                cells.computeIfAbsent(task.sleeve(i), sleeve -> new ArrayList<>())
                        .add(i);
            }
        }
        sleeves = cells.values().stream()
                .map(list -> list.stream().mapToInt(Integer::intValue).toArray())
                .toArray(int[][]::new);
        sleeveOf = new int[task.size()];
        Arrays.fill(sleeveOf, -1);
        for (int sleeve = 0; sleeve < sleeves.length; sleeve++) {
            for (int cell : sleeves[sleeve]) {
                sleeveOf[cell] = sleeve;
            }
        }
    }

    boolean isEmpty() {
        return sleeves.length == 0;
    }

    /** Returns the cells of the sleeve that a circle belongs to; none where it belongs to none. */
    int[] cellsBeside(int circle) {
        return sleeveOf[circle] < 0 ? new int[0] : sleeves[sleeveOf[circle]];
    }

    /** Returns the widest that two neighbors are stretched apart; 0 where every sleeve hangs together. */
    double tornMm(double[] centers) {
        double tornMm = 0;
        int[] pairs = pairs(centers);
        for (int k = 0; k < pairs.length; k += 2) {
            tornMm = Math.max(tornMm, stretchMm(pairs[k], pairs[k + 1], centers));
        }
        return tornMm;
    }

    /** Returns the neighbors as the places show them: two circles for each joint in turn. */
    int[] pairs(double[] centers) {
        int joints = 0;
        for (int[] cells : sleeves) {
            joints += cells.length - 1;
        }
        int[] pairs = new int[2 * joints];
        int at = 0;
        for (int[] cells : sleeves) {
            int[] row = SleeveRow.shortest(costs(cells, centers));
            for (int k = 1; k < row.length; k++) {
                pairs[at++] = cells[row[k - 1]];
                pairs[at++] = cells[row[k]];
            }
        }
        return pairs;
    }

    /** Lets circles of one width change places as long as the sleeves become less stretched by it. */
    void reassign(double[] centers) {
        double[] stretches = new double[sleeves.length];
        for (int sleeve = 0; sleeve < sleeves.length; sleeve++) {
            stretches[sleeve] = stretchMm2(sleeve, centers);
        }
        for (int round = 0; round < MOST_ROUNDS; round++) {
            boolean changed = false;
            for (int i = 0; i < task.size(); i++) {
                for (int j = i + 1; j < task.size() && task.radiusMm(j) == task.radiusMm(i); j++) {
                    changed |= sleeveOf[i] != sleeveOf[j] && tryExchange(i, j, centers, stretches);
                }
            }
            if (!changed) {
                return;
            }
        }
    }

    private boolean tryExchange(int i, int j, double[] centers, double[] stretches) {
        double before = of(i, stretches) + of(j, stretches);
        if (before == 0) {
            return false;
        }
        exchange(i, j, centers);
        double one = sleeveOf[i] < 0 ? 0 : stretchMm2(sleeveOf[i], centers);
        double other = sleeveOf[j] < 0 ? 0 : stretchMm2(sleeveOf[j], centers);
        if (one + other >= before * (1 - 1e-9)) {
            exchange(i, j, centers);
            return false;
        }
        if (sleeveOf[i] >= 0) {
            stretches[sleeveOf[i]] = one;
        }
        if (sleeveOf[j] >= 0) {
            stretches[sleeveOf[j]] = other;
        }
        return true;
    }

    private double of(int circle, double[] stretches) {
        return sleeveOf[circle] < 0 ? 0 : stretches[sleeveOf[circle]];
    }

    static void exchange(int i, int j, double[] centers) {
        for (int k = 0; k < 2; k++) {
            double kept = centers[2 * i + k];
            centers[2 * i + k] = centers[2 * j + k];
            centers[2 * j + k] = kept;
        }
    }

    private double stretchMm2(int sleeve, double[] centers) {
        int[] cells = sleeves[sleeve];
        double[][] costs = costs(cells, centers);
        int[] row = SleeveRow.shortest(costs);
        double sum = 0;
        for (int k = 1; k < row.length; k++) {
            sum += costs[row[k - 1]][row[k]];
        }
        return sum;
    }

    private double[][] costs(int[] cells, double[] centers) {
        double[][] costs = new double[cells.length][cells.length];
        for (int a = 0; a < cells.length; a++) {
            for (int b = 0; b < a; b++) {
                double stretchMm = stretchMm(cells[a], cells[b], centers);
                costs[a][b] = stretchMm * stretchMm;
                costs[b][a] = costs[a][b];
            }
        }
        return costs;
    }

    private double stretchMm(int i, int j, double[] centers) {
        double dx = centers[2 * i] - centers[2 * j];
        double dy = centers[2 * i + 1] - centers[2 * j + 1];
        return Math.max(0, Math.sqrt(dx * dx + dy * dy) - task.radiusMm(i) - task.radiusMm(j) - task.slackMm());
    }
}
