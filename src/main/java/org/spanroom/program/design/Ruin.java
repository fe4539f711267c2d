package org.spanroom.program.design;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;

/** Chooses which demands to take out together: those that could gain from one another. Not thread-safe. */
final class Ruin {
    private static final int MOST = 10;
    private static final int WHOLE_LINK_OF = 20;
    private static final int UNSERVED_OF = 3;

    private final DesignTask task;
    private final WorkingDesign design;
    private final SplittableRandom random;
    private final int[] candidates;
    private final boolean[] isCandidate;

    /**
     * Creates.
     *
     * @param candidates demands that can be served at all; at least one when asked
     */
    Ruin(DesignTask task, WorkingDesign design, SplittableRandom random, int[] candidates) {
        this.candidates = candidates.clone();
        isCandidate = new boolean[task.demands()];
        for (int candidate : candidates) {
            isCandidate[candidate] = true;
        }
        this.task = task;
        this.design = design;
        this.random = random;
    }

    /** Returns demands in no order; the first ones may be unserved. */
    List<Integer> chosen() {
        int most = 1 + random.nextInt(Math.min(MOST, candidates.length));
        Set<Integer> chosen = new LinkedHashSet<>();
        int seed = any();
        int kind = random.nextInt(4);
        if (kind == 0) {
            neighbors(seed, most, chosen);
        } else if (kind == 1) {
            while (chosen.size() < most) {
                chosen.add(any());
            }
        } else {
            passing(seed, most, chosen);
        }
        return new ArrayList<>(chosen);
    }

    private int any() {
        return candidates[random.nextInt(candidates.length)];
    }

    private void neighbors(int seed, int most, Set<Integer> chosen) {
        chosen.add(seed);
        for (int neighbor : task.neighbors(seed)) {
            if (chosen.size() >= most) {
                return;
            }
            if (isCandidate[neighbor] && random.nextInt(4) > 0) {
                chosen.add(neighbor);
            }
        }
    }

    /** Demands on a link of the seed's way; at times all of them, since a link is only saved when none is left. */
    private void passing(int seed, int most, Set<Integer> chosen) {
        chosen.add(seed);
        int[] way = design.wayOf(seed);
        if (way == null || way.length == 0) {
            neighbors(seed, most, chosen);
            return;
        }
        List<Integer> passing = design.passing(way[random.nextInt(way.length)]);
        boolean isWhole = random.nextInt(WHOLE_LINK_OF) == 0;
        Shuffle.shuffle(passing, random);
        for (int demand : passing) {
            if (chosen.size() < most || isWhole) {
                chosen.add(demand);
            }
        }
        if (random.nextInt(UNSERVED_OF) == 0) {
            neighbors(seed, most, chosen);
        }
    }
}
