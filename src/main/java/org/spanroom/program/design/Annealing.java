package org.spanroom.program.design;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * One start of the search: serves the demands one after the other, then takes some out and serves them again in another order,
 * and keeps the result by the rule of simulated annealing. Serving one demand is exact, serving several is greedy. Not
 * thread-safe.
 */
final class Annealing {
    private static final double FIRST_RATIO = 0.3;
    private static final double LAST_RATIO = 0.0005;
    private static final double NOISE_SHARE = 0.3;
    private static final double MOST_NOISE = 1.2;
    private static final double HOPE_SHARE = 0.3;
    private static final double DETOUR_SHARE = 0.3;
    private static final int NODE_OF = 3;
    private static final int USUAL_DETOUR = 10;
    private static final double MOST_HOPE = 3;
    private static final double LEAST_SCALE = 1e-9;

    private final DesignTask task;
    private final SplittableRandom random;
    private final WorkingDesign design;
    private final int[] candidates;
    private final Ruin ruin;
    private final List<Integer> taken = new ArrayList<>();
    private final List<int @Nullable []> oldWays = new ArrayList<>();
    private final int hopelessMusts;
    private double scaleMoney;
    private int[] @Nullable [] best;
    private int bestMissing;
    private double bestMoney;
    private int done;

    Annealing(DesignTask task, long seed) {
        this.task = task;
        random = new SplittableRandom(seed);
        design = new WorkingDesign(task);
        candidates = IntStream.range(0, task.demands())
                .filter(demand -> design.way(demand, Double.POSITIVE_INFINITY) != null)
                .toArray();
        hopelessMusts = design.missingMusts()
                - (int) Arrays.stream(candidates).filter(task::isMust).count();
        ruin = new Ruin(task, design, random, candidates);
        best = design.copiedWays();
        bestMissing = Integer.MAX_VALUE;
        bestMoney = Double.POSITIVE_INFINITY;
    }

    /** Searches; returns whether it went through all iterations. */
    boolean run(int iterations, BooleanSupplier stop) {
        start();
        keepBest();
        scaleMoney = scaleMoney();
        while (done < iterations && candidates.length > 0 && !stop.getAsBoolean()) {
            double progress = (double) done / iterations;
            iterate(scaleMoney * FIRST_RATIO * Math.pow(LAST_RATIO / FIRST_RATIO, progress));
            done++;
        }
        boolean isWhole = done >= iterations || candidates.length == 0;
        design.restore(best);
        new Polish(task, design).run();
        keepBest();
        return isWhole;
    }

    /** Musts first, then what is worth most; among equals at random. */
    private void start() {
        List<Integer> order = new ArrayList<>(Arrays.stream(candidates).boxed().toList());
        Shuffle.shuffle(order, random);
        order.sort(Comparator.comparingDouble((Integer demand) -> -task.prize(demand)));
        order.forEach(demand -> design.serve(demand, task.prize(demand)));
        design.recount();
    }

    /** Mean cost of a served demand; where all is free or nothing served, a mean prize. */
    private double scaleMoney() {
        double work = design.workMoney();
        long served = Arrays.stream(candidates).filter(design::isServed).count();
        if (work > 0 && served > 0) {
            return work / served;
        }
        return Arrays.stream(candidates)
                .filter(demand -> !task.isMust(demand))
                .mapToDouble(task::prize)
                .average()
                .orElse(LEAST_SCALE);
    }

    private void iterate(double temperature) {
        double before = design.totalMoney();
        int missing = design.missingMusts();
        taken.clear();
        oldWays.clear();
        if (missing > hopelessMusts && random.nextInt(2) == 0) {
            makeRoom();
            serve();
        } else if (random.nextDouble() < DETOUR_SHARE) {
            detour();
        } else {
            List<Integer> chosen = ruin.chosen();
            Shuffle.shuffle(chosen, random);
            chosen.forEach(this::takeOut);
            serve();
        }
        if (!isAccepted(missing, before, temperature)) {
            undo();
        } else if (isBest()) {
            design.recount();
            keepBest();
        }
    }

    private void takeOut(int demand) {
        oldWays.add(design.remove(demand));
        taken.add(demand);
    }

    /** Takes out what keeps a must from its way, so that the must is served first. */
    private void makeRoom() {
        List<Integer> waiting = Arrays.stream(candidates)
                .filter(demand -> task.isMust(demand) && !design.isServed(demand))
                .boxed()
                .toList();
        int must = waiting.get(random.nextInt(waiting.size()));
        takeOut(must);
        int[] way = design.wayThroughFull(must, scaleMoney * random.nextDouble());
        if (way == null) {
            return;
        }
        for (int link : way) {
            List<Integer> passing = design.passing(link);
            Shuffle.shuffle(passing, random);
            for (int next = 0; next < passing.size() && design.isFull(link, must); next++) {
                takeOut(passing.get(next));
            }
        }
    }

    /**
     * Leads all demands away from a link or a node, one after the other: those that wait keep paying for what they share, so that
     * a whole branch moves to where it can be joined at least cost.
     */
    private void detour() {
        int[] way = design.wayOf(candidates[random.nextInt(candidates.length)]);
        if (way == null) {
            return;
        }
        int link = way[random.nextInt(way.length)];
        int node = random.nextInt(NODE_OF) == 0 ? task.network().from(link) : -1;
        List<Integer> passing = node < 0 ? design.passing(link) : design.passingNode(node);
        if (passing.isEmpty() || random.nextInt(passing.size()) >= USUAL_DETOUR) {
            return;
        }
        Shuffle.shuffle(passing, random);
        design.search().shut(node < 0 ? link : -1, node);
        for (int demand : passing) {
            takeOut(demand);
            design.serve(demand, Double.POSITIVE_INFINITY);
        }
        design.search().shut(-1, -1);
    }

    private void serve() {
        double hope = random.nextDouble() < HOPE_SHARE ? 1 + (MOST_HOPE - 1) * random.nextDouble() : 1;
        if (random.nextDouble() < NOISE_SHARE) {
            design.search().disturb(MOST_NOISE * random.nextDouble(), random.nextLong());
        }
        for (int demand : taken) {
            double limit = hope * task.prize(demand);
            int[] way = design.way(demand, limit);
            if (way != null && design.marginalMoney(demand, way) <= limit) {
                design.put(demand, way);
            }
        }
        design.search().disturb(0, 0);
    }

    private boolean isAccepted(int missingBefore, double moneyBefore, double temperature) {
        double more = design.totalMoney() - moneyBefore;
        double chance = random.nextDouble();
        if (design.missingMusts() != missingBefore) {
            return design.missingMusts() < missingBefore;
        }
        return more <= 0 || chance < Math.exp(-more / temperature);
    }

    private void undo() {
        taken.forEach(design::remove);
        for (int index = 0; index < taken.size(); index++) {
            int[] way = oldWays.get(index);
            if (way != null) {
                design.put(taken.get(index), way);
            }
        }
    }

    private boolean isBest() {
        if (design.missingMusts() != bestMissing) {
            return design.missingMusts() < bestMissing;
        }
        return design.totalMoney() < bestMoney;
    }

    private void keepBest() {
        best = design.copiedWays();
        bestMissing = design.missingMusts();
        bestMoney = design.totalMoney();
    }

    /** Returns the best design, once the search has run. */
    WorkingDesign design() {
        return design;
    }

    int done() {
        return done;
    }
}
