package org.spanroom.program.design;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Places groups of cables in bins that are opened in a given order, at least cost: exact, by dynamic programming over the bins
 * with what is still to be placed as the state.
 *
 * <p>A bin is only filled until none of the remaining groups fits: a group moved from a later bin to an earlier one never costs
 * more. Of solutions of one cost, the one with fewer new ducts, then with fewer recovered bins, then the first found. Serves for
 * one set of groups.
 */
final class BinFilling {
    /**
     * A bin in the order of filling.
     *
     * @param bin its number
     * @param now what it takes at no cost
     * @param after what it takes once it is paid; a bin without {@code now} may be left empty
     * @param money its price
     * @param isNew whether it is a new duct: these are the same, so that the first of them is the first to be filled
     */
    record Stage(int bin, int now, int after, double money, boolean isNew) {}

    /** What goes in a bin, and in those after it. */
    @SuppressWarnings("ArrayRecordComponent") // Inside the search only; never changed or compared.
    record Step(
            Stage stage,
            boolean isPaid,
            int[] filled,
            @Nullable Step next,
            double money,
            int built,
            int recovered) {
        private boolean isFree() {
            return money == 0 && built == 0 && recovered == 0;
        }

        private boolean isBetterThan(@Nullable Step other) {
            if (other == null || money != other.money) {
                return other == null || money < other.money;
            }
            return built != other.built ? built < other.built : recovered < other.recovered;
        }
    }

    @SuppressWarnings("ArrayRecordComponent") // Equality is its own, by content.
    private record State(int stage, int[] counts) {
        @Override
        public boolean equals(Object other) {
            return other instanceof State state && state.stage == stage && Arrays.equals(state.counts, counts);
        }

        @Override
        public int hashCode() {
            return 31 * Arrays.hashCode(counts) + stage;
        }
    }

    private static final Stage NOTHING = new Stage(-1, 0, 0, 0, false);
    private static final Step PLACED = new Step(NOTHING, false, new int[0], null, 0, 0, 0);
    private static final Step IMPOSSIBLE = new Step(NOTHING, false, new int[0], null, Double.POSITIVE_INFINITY, 0, 0);

    private final int[] sizes;
    private final List<Stage> stages;
    private final long[] roomFrom;
    private final int[] largestFrom;
    private final Map<State, Step> known = new HashMap<>();

    /**
     * Creates.
     *
     * @param sizes numbers of cables of a group, each once, descending
     * @param stages the bins; new ducts last
     */
    BinFilling(int[] sizes, List<Stage> stages) {
        this.sizes = sizes.clone();
        this.stages = List.copyOf(stages);
        roomFrom = new long[stages.size() + 1];
        largestFrom = new int[stages.size() + 1];
        for (int stage = stages.size() - 1; stage >= 0; stage--) {
            roomFrom[stage] = roomFrom[stage + 1] + stages.get(stage).after();
            largestFrom[stage] =
                    Math.max(largestFrom[stage + 1], stages.get(stage).after());
        }
    }

    /** Returns the bins that are touched, in order, for so many groups of each size; null where they cannot all be placed. */
    @SuppressWarnings("ReferenceEquality") // Compared with one of two marks, which are objects of their own.
    @Nullable
    List<Step> fill(int[] counts) {
        @Nullable Step step = best(0, counts);
        if (step == IMPOSSIBLE) {
            return null;
        }
        var steps = new ArrayList<Step>();
        for (; step != null && step != PLACED; step = step.next()) {
            steps.add(step);
        }
        return steps;
    }

    private Step best(int stage, int[] counts) {
        long cables = 0;
        int largest = 0;
        for (int size = 0; size < sizes.length; size++) {
            cables += (long) counts[size] * sizes[size];
            largest = counts[size] > 0 ? Math.max(largest, sizes[size]) : largest;
        }
        if (cables == 0) {
            return PLACED;
        }
        if (cables > roomFrom[stage] || largest > largestFrom[stage]) {
            return IMPOSSIBLE;
        }
        var state = new State(stage, counts);
        Step step = known.get(state);
        if (step == null) {
            step = calculated(stage, counts);
            known.put(state, step);
        }
        return step;
    }

    private Step calculated(int number, int[] counts) {
        Stage stage = stages.get(number);
        var best = new Step[] {IMPOSSIBLE};
        if (!stage.isNew()) {
            tryFills(number, false, stage.now(), counts, best);
        }
        if (stage.isNew() || (stage.after() > stage.now() && stage.money() <= best[0].money())) {
            tryFills(number, true, stage.after(), counts, best);
        }
        return best[0];
    }

    private void tryFills(int number, boolean isPaid, int room, int[] counts, Step[] best) {
        tryFills(number, isPaid, room, 0, new int[sizes.length], counts.clone(), best);
    }

    private void tryFills(int number, boolean isPaid, int room, int size, int[] filled, int[] left, Step[] best) {
        if (size == sizes.length) {
            if (isFull(room, left)) {
                offer(number, isPaid, filled, left, best);
            }
            return;
        }
        int all = left[size];
        int most = Math.min(all, room / sizes[size]);
        for (int count = most; count >= 0 && !best[0].isFree(); count--) {
            filled[size] = count;
            left[size] = all - count;
            if (count == 0 && isFirstOfAlike(number, size, filled, all)) {
                break;
            }
            tryFills(number, isPaid, room - count * sizes[size], size + 1, filled, left, best);
        }
        filled[size] = 0;
        left[size] = all;
    }

    /** New ducts are all the same, so that the largest group that is left may as well go in the first of them. */
    private boolean isFirstOfAlike(int number, int size, int[] filled, int all) {
        if (!stages.get(number).isNew() || all == 0) {
            return false;
        }
        for (int larger = 0; larger < size; larger++) {
            if (filled[larger] > 0) {
                return false;
            }
        }
        return true;
    }

    private boolean isFull(int room, int[] left) {
        for (int size = 0; size < sizes.length; size++) {
            if (left[size] > 0 && sizes[size] <= room) {
                return false;
            }
        }
        return true;
    }

    @SuppressWarnings("ReferenceEquality") // Compared with one of two marks, which are objects of their own.
    private void offer(int number, boolean isPaid, int[] filled, int[] left, Step[] best) {
        Step next = best(number + 1, left.clone());
        if (next == IMPOSSIBLE) {
            return;
        }
        Stage stage = stages.get(number);
        var step = new Step(
                stage,
                isPaid,
                filled.clone(),
                next,
                next.money() + (isPaid ? stage.money() : 0),
                next.built() + (stage.isNew() ? 1 : 0),
                next.recovered() + (isPaid && !stage.isNew() ? 1 : 0));
        if (step.isBetterThan(best[0])) {
            best[0] = step;
        }
    }
}
