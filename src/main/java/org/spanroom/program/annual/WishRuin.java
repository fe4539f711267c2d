package org.spanroom.program.annual;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/** Chooses which connections to take out together: those that could gain from one another. Not thread-safe. */
final class WishRuin {
    private static final int MOST = 10;
    private static final int MOST_OF_YEAR = 20;
    private static final int MOST_WAITING = 3;

    private final WishNetwork network;
    private final WishPlan plan;
    private final SplittableRandom random;
    private final int[] candidates;

    /**
     * Creates.
     *
     * @param candidates connections that can be served at all; at least one when asked
     */
    WishRuin(WishNetwork network, WishPlan plan, SplittableRandom random, int[] candidates) {
        this.network = network;
        this.plan = plan;
        this.random = random;
        this.candidates = candidates.clone();
    }

    /** Returns how many to take out at most. */
    int most() {
        return 1 + random.nextInt(Math.min(MOST, candidates.length));
    }

    private int any() {
        return candidates[random.nextInt(candidates.length)];
    }

    /** Adds connections, some of which may not be served. */
    void choose(Set<Integer> chosen) {
        int most = most();
        int kind = random.nextInt(8);
        int seed = any();
        WishPlan.Placed way = plan.placed(seed);
        if (kind < 2 || way == null) {
            while (chosen.size() < most) {
                chosen.add(any());
            }
        } else if (kind == 2) {
            ofYear(way.year(), chosen);
        } else {
            chosen.add(seed);
            List<Integer> passing = passing(way.links()[random.nextInt(way.links().length)]);
            shuffle(passing);
            boolean isWhole = random.nextInt(10) == 0;
            for (int demand : passing) {
                if (chosen.size() < most || isWhole) {
                    chosen.add(demand);
                }
            }
        }
        for (int next = random.nextInt(MOST_WAITING + 1); next > 0; next--) {
            int demand = waiting();
            if (demand >= 0) {
                chosen.add(demand);
            }
        }
    }

    private void ofYear(int year, Set<Integer> chosen) {
        List<Integer> there = new ArrayList<>();
        for (int demand : candidates) {
            WishPlan.Placed each = plan.placed(demand);
            if (each != null && each.year() == year) {
                there.add(demand);
            }
        }
        shuffle(there);
        chosen.addAll(there.subList(0, Math.min(MOST_OF_YEAR, there.size())));
    }

    private List<Integer> passing(int link) {
        List<Integer> passing = new ArrayList<>();
        for (int demand : candidates) {
            WishPlan.Placed each = plan.placed(demand);
            if (each != null && contains(each.links(), link)) {
                passing.add(demand);
            }
        }
        return passing;
    }

    private static boolean contains(int[] links, int link) {
        for (int each : links) {
            if (each == link) {
                return true;
            }
        }
        return false;
    }

    /** Returns a connection that is not served, a must if there is one; -1 where all are. */
    int waiting() {
        List<Integer> waiting = new ArrayList<>();
        boolean isMust = false;
        for (int demand : candidates) {
            if (plan.placed(demand) == null) {
                boolean isMustToo = network.wish(demand).isMust();
                if (isMustToo && !isMust) {
                    waiting.clear();
                    isMust = true;
                }
                if (isMustToo || !isMust) {
                    waiting.add(demand);
                }
            }
        }
        return waiting.isEmpty() ? -1 : waiting.get(random.nextInt(waiting.size()));
    }

    /** Returns served connections in the order of a draw in which those of small value for what they need come first more often. */
    List<Integer> nearServed(int demand) {
        List<Integer> served = new ArrayList<>();
        double[] keys = new double[network.demands()];
        for (int other : candidates) {
            WishPlan.Placed each = plan.placed(other);
            if (other != demand && each != null) {
                double value = network.wish(other).values().get(each.year()) / (1 + each.slots().length);
                keys[other] = value * -Math.log(1 - random.nextDouble());
                served.add(other);
            }
        }
        served.sort(Comparator.<Integer>comparingDouble(other -> keys[other]).thenComparing(Comparator.naturalOrder()));
        return served;
    }

    /** Adds some that are not served, with what was before. */
    List<Integer> someWaiting(int most, Set<Integer> chosen, List<WishPlan.@Nullable Placed> old) {
        List<Integer> some = new ArrayList<>();
        for (int next = 0; next < most; next++) {
            int demand = waiting();
            if (demand >= 0 && chosen.add(demand)) {
                old.add(null);
                some.add(demand);
            }
        }
        return some;
    }

    private void shuffle(List<Integer> list) {
        for (int last = list.size() - 1; last > 0; last--) {
            Collections.swap(list, last, random.nextInt(last + 1));
        }
    }
}
