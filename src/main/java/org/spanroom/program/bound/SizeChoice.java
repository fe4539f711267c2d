package org.spanroom.program.bound;

import java.util.ArrayList;
import java.util.List;

/**
 * Best choice of so many demands of one size by their prices, those of one group all in one direction.
 *
 * <p>Not thread-safe. Reusable.
 */
final class SizeChoice {
    private final PriceList free = new PriceList();
    private final List<Crossing> crossings = new ArrayList<>();
    private int crossingCount;
    private int total;
    private int most;

    /** Of each count the best sum of prices; the last one is that of all. */
    private double[] best = new double[1];

    /** A group of which sometimes the one direction pays more, sometimes the other. */
    private static final class Crossing {
        private final PriceList forward = new PriceList();
        private final PriceList backward = new PriceList();
        private int[] taken = new int[1];

        double sum(int count) {
            return Math.max(forward.sum(count), backward.sum(count));
        }

        int largest() {
            return Math.max(forward.count(), backward.count());
        }

        PriceList better(int count) {
            return forward.sum(count) >= backward.sum(count) ? forward : backward;
        }
    }

    void clear() {
        free.clear();
        crossingCount = 0;
        total = 0;
    }

    /** Adds the prices of a group, by direction. */
    void addGroup(PriceList forward, PriceList backward) {
        if (forward.count() <= 1 && backward.count() <= 1) {
            addOne(forward, backward);
            return;
        }
        forward.sort();
        backward.sort();
        if (forward.isAlwaysAbove(backward)) {
            free.addAll(forward);
            total += forward.count();
        } else if (backward.isAlwaysAbove(forward)) {
            free.addAll(backward);
            total += backward.count();
        } else {
            addCrossing(forward, backward);
            total += Math.max(forward.count(), backward.count());
        }
    }

    /** Of single prices the higher one is always better. */
    private void addOne(PriceList forward, PriceList backward) {
        boolean isForward = backward.count() == 0 || (forward.count() > 0 && forward.price(0) >= backward.price(0));
        PriceList better = isForward ? forward : backward;
        if (better.count() > 0) {
            free.add(better.price(0), better.code(0));
            total++;
        }
    }

    private void addCrossing(PriceList forward, PriceList backward) {
        if (crossingCount == crossings.size()) {
            crossings.add(new Crossing());
        }
        Crossing crossing = crossings.get(crossingCount++);
        crossing.forward.setTo(forward);
        crossing.forward.sort();
        crossing.backward.setTo(backward);
        crossing.backward.sort();
    }

    /** Calculates the best sums up to some count; that of the last count is of all. */
    void finish(int mostCount) {
        most = Math.min(mostCount, total);
        free.sort();
        if (best.length <= most) {
            best = new double[2 * most + 1];
        }
        for (int n = 0; n < most; n++) {
            best[n] = free.sum(n);
        }
        best[most] = free.sum(free.count());
        for (int c = 0; c < crossingCount; c++) {
            with(crossings.get(c));
        }
    }

    /** From the highest count down, so that each sum is still that without the group. */
    private void with(Crossing crossing) {
        if (crossing.taken.length <= most) {
            crossing.taken = new int[2 * most + 1];
        }
        best[most] += crossing.sum(crossing.largest());
        crossing.taken[most] = crossing.largest();
        for (int n = most - 1; n >= 0; n--) {
            double highest = best[n];
            crossing.taken[n] = 0;
            for (int taken = 1; taken <= Math.min(n, crossing.largest()); taken++) {
                double sum = best[n - taken] + crossing.sum(taken);
                if (sum > highest) {
                    highest = sum;
                    crossing.taken[n] = taken;
                }
            }
            best[n] = highest;
        }
    }

    int most() {
        return most;
    }

    /** Returns whether the last sum is of more demands than its count. */
    boolean isCut() {
        return total > most;
    }

    double best(int count) {
        return best[count];
    }

    /** Adds the codes of the best choice to a list. */
    void collect(int count, IntList codes) {
        int left = count;
        for (int c = crossingCount - 1; c >= 0; c--) {
            Crossing crossing = crossings.get(c);
            int taken = crossing.taken[left];
            PriceList better = crossing.better(taken);
            for (int i = 0; i < Math.min(taken, better.count()); i++) {
                codes.add(better.code(i));
            }
            left -= left == most ? 0 : taken;
        }
        int fromFree = left == most ? free.count() : Math.min(left, free.count());
        for (int i = 0; i < fromFree; i++) {
            codes.add(free.code(i));
        }
    }
}
