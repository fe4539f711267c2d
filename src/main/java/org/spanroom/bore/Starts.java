package org.spanroom.bore;

import java.util.SplittableRandom;

/** First arrangements, overlapping, from which a search goes downhill. */
final class Starts {
    private Starts() {}

    /** Scatters the centers evenly over the bore, the cells of a sleeve about one place. */
    static void scattered(PackingTask task, double halfMm, SplittableRandom random, double[] centers) {
        for (int i = 0; i < task.size(); i++) {
            double reachMm = Math.max(0, halfMm - task.radiusMm(i));
            double x = 2 * random.nextDouble() - 1;
            double y = 2 * random.nextDouble() - 1;
            double toDisc = task.isSquare() ? 1 : discFactor(x, y);
            centers[2 * i] = reachMm * x * toDisc;
            centers[2 * i + 1] = reachMm * y * toDisc;
            gather(task, i, x, y, centers);
        }
    }

    /** A cell is beside the first one of its sleeve. */
    private static void gather(PackingTask task, int cell, double x, double y, double[] centers) {
        for (int first = 0; task.sleeve(cell) > 0 && first < cell; first++) {
            if (task.sleeve(first) == task.sleeve(cell)) {
                centers[2 * cell] = centers[2 * first] + 2 * task.radiusMm(cell) * x;
                centers[2 * cell + 1] = centers[2 * first + 1] + 2 * task.radiusMm(cell) * y;
                return;
            }
        }
    }

    /** Maps the square onto the disc along rays, so that no center is thrown away. */
    private static double discFactor(double x, double y) {
        double out = Math.hypot(x, y);
        return out == 0 ? 0 : Math.max(Math.abs(x), Math.abs(y)) / out;
    }

    /**
     * Lays the circles in rings from the wall inward, each ring as full as it goes, in random order and turned at random:
     * good arrangements in a round bore are often so. Cells of a sleeve follow one another.
     */
    static void rings(PackingTask task, double halfMm, SplittableRandom random, double[] centers) {
        int[] order = besideOneAnother(task, shuffled(task.size(), random));
        int from = 0;
        double outerMm = halfMm;
        while (from < order.length) {
            int to = ringEnd(task, order, from, outerMm, random);
            double thickMm = lay(task, order, from, to, outerMm, 2 * Math.PI * random.nextDouble(), centers);
            outerMm = Math.max(0, outerMm - 1.8 * thickMm);
            from = to;
        }
    }

    /** Returns the end of the ring that begins at a place of the order: as many as have room, sometimes one less. */
    private static int ringEnd(PackingTask task, int[] order, int from, double outerMm, SplittableRandom random) {
        double usedRad = 0;
        int to = from;
        while (to < order.length) {
            double radiusMm = task.radiusMm(order[to]);
            double reachMm = outerMm - radiusMm;
            usedRad += reachMm <= radiusMm ? 2 * Math.PI : 2 * Math.asin(radiusMm / reachMm);
            if (usedRad > 2 * Math.PI + 0.02 && to > from) {
                break;
            }
            to++;
        }
        boolean leaveOne = to - from > 2 && to < order.length && random.nextInt(3) == 0;
        return leaveOne ? to - 1 : to;
    }

    private static double lay(
            PackingTask task, int[] order, int from, int to, double outerMm, double turnRad, double[] centers) {
        double thickMm = 0;
        for (int k = from; k < to; k++) {
            int i = order[k];
            double reachMm = Math.max(0, outerMm - task.radiusMm(i));
            double angleRad = turnRad + 2 * Math.PI * (k - from) / (to - from);
            centers[2 * i] = reachMm * Math.cos(angleRad);
            centers[2 * i + 1] = reachMm * Math.sin(angleRad);
            thickMm = Math.max(thickMm, task.radiusMm(i));
        }
        return thickMm;
    }

    private static int[] shuffled(int size, SplittableRandom random) {
        int[] order = new int[size];
        for (int i = 0; i < size; i++) {
            int j = random.nextInt(i + 1);
            order[i] = order[j];
            order[j] = i;
        }
        return order;
    }

    private static int[] besideOneAnother(PackingTask task, int[] order) {
        if (!task.hasSleeves()) {
            return order;
        }
        int[] ordered = new int[order.length];
        boolean[] taken = new boolean[order.length];
        int at = 0;
        for (int circle : order) {
            for (int k = 0; !taken[circle] && k < order.length; k++) {
                boolean beside = task.sleeve(circle) > 0 && task.sleeve(order[k]) == task.sleeve(circle);
                if (order[k] == circle || beside) {
                    ordered[at++] = order[k];
                    taken[order[k]] = order[k] != circle;
                }
            }
            taken[circle] = true;
        }
        return ordered;
    }
}
