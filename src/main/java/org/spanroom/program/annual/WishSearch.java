package org.spanroom.program.annual;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * One start of the search for a plan of a problem with connections: takes related connections out and serves them again in another order, each on the way and by the year that
 * is worth most at prices of the limits, and keeps the result by the rule of simulated annealing. Not thread-safe.
 */
final class WishSearch {
    private static final double FIRST_RATIO = 0.02;
    private static final double LAST_RATIO = 0.0005;
    private static final double LEFT_RATIO = 1;
    private static final int MOST_FILLERS = 200;
    /** One time in so many, prices decide on ways and years only, not on whether to serve. */
    private static final int PRICELESS_OF = 10;

    private static final double PRICELESS = 1e6;
    private static final double NOISE_SHARE = 0.3;
    private static final double MOST_NOISE = 1.0;
    private static final double HASH_SCALE = 1.0 / (1L << 53);

    private final WishNetwork network;
    private final SplittableRandom random;
    private final WishPlan plan;
    private final WishRuin ruin;
    private final Fillers fillers;
    private final int[] candidates;
    private final int[] mustTasks;
    private final double scale;
    private int bestMissing = Integer.MAX_VALUE;
    private double bestValue = Double.NEGATIVE_INFINITY;
    private YearPlan best;
    private double hope = 1;
    private PricedWay.@Nullable LinkPrice noise;

    /**
     * Creates.
     *
     * @param mustYears of each task that has to be done, a year, so that all of them keep the limits
     */
    WishSearch(WishNetwork network, WishPrices prices, SetUpLevels levels, int[] mustYears, long seed) {
        this.network = network;
        random = new SplittableRandom(seed);
        plan = new WishPlan(network, prices, levels);
        doMusts(mustYears);
        mustTasks = IntStream.range(0, mustYears.length)
                .filter(task -> network.problem().tasks().get(task).isMust() && mustYears[task] >= 0)
                .toArray();
        candidates = IntStream.range(0, network.demands())
                .filter(demand -> plan.lastYear(demand) >= 0
                        && plan.offer(demand, plan.lastYear(demand), Double.POSITIVE_INFINITY, null) != null)
                .toArray();
        ruin = new WishRuin(network, plan, random, candidates);
        fillers = new Fillers(network, plan);
        scale = IntStream.of(candidates)
                .mapToDouble(demand -> Collections.max(network.wish(demand).values()))
                .average()
                .orElse(1);
        best = plan.plan();
    }

    /** Tasks that have to be done come before everything else. */
    private void doMusts(int[] mustYears) {
        for (int task = 0; task < mustYears.length; task++) {
            if (network.problem().tasks().get(task).isMust() && mustYears[task] >= 0) {
                plan.state().setTask(task, mustYears[task]);
            }
        }
        plan.state().forget();
    }

    /** Serves what designs of the years serve, each connection on its way in the first year whose design has it, as far as limits allow. */
    void start(PricedDesigns designs) {
        for (int year = 0; year < network.problem().years(); year++) {
            List<Integer> all = new ArrayList<>(IntStream.of(candidates).boxed().toList());
            shuffle(all);
            for (int demand : all) {
                List<Integer> way = designs.way(demand, year);
                if (plan.placed(demand) == null && !way.isEmpty() && year <= plan.lastYear(demand)) {
                    plan.place(demand, new WishPlan.Offer(year, network.linksOf(way), 0));
                }
            }
        }
        plan.state().forget();
        keepIfBest();
    }

    /** Searches; returns whether it went through all iterations. */
    boolean run(int iterations, BooleanSupplier stop) {
        List<Integer> all = new ArrayList<>(IntStream.of(candidates).boxed().toList());
        shuffle(all);
        serve(all);
        keepIfBest();
        for (int done = 0; done < iterations && candidates.length > 0; done++) {
            if (stop.getAsBoolean()) {
                return false;
            }
            double progress = (double) done / iterations;
            double temperature = scale * FIRST_RATIO * Math.pow(LAST_RATIO / FIRST_RATIO, progress);
            iterate(temperature, fillers.count() == 0 ? LEFT_RATIO * (1 - progress) : 1);
        }
        return true;
    }

    private void iterate(double temperature, double leftRatio) {
        int mark = plan.state().mark();
        double before = objective(leftRatio);
        int missing = plan.missingMusts();
        draw();
        Set<Integer> chosen = new LinkedHashSet<>();
        List<WishPlan.@Nullable Placed> old = new ArrayList<>();
        List<Integer> order;
        if (random.nextInt(4) == 0) {
            order = makeRoom(chosen, old);
        } else {
            ruin.choose(chosen);
            chosen.forEach(demand -> takeOut(demand, old));
            order = new ArrayList<>(chosen);
            shuffle(order);
        }
        if (mustTasks.length > 0 && random.nextInt(2) == 0) {
            plan.moveIfFree(mustTasks[random.nextInt(mustTasks.length)]);
        }
        serve(order);
        double more = objective(leftRatio) - before;
        double chance = random.nextDouble();
        boolean isKept = plan.missingMusts() != missing
                ? plan.missingMusts() < missing
                : more >= 0 || chance < Math.exp(more / temperature);
        if (isKept) {
            plan.state().forget();
            keepIfBest();
        } else {
            plan.state().undo(mark);
            int next = 0;
            for (int demand : chosen) {
                plan.restore(demand, old.get(next++));
            }
        }
    }

    /** Where few tasks are worth something by themselves, they are done before the plan is looked at; of many, what is left of the limits says what they could add. */
    private double objective(double leftRatio) {
        if (fillers.count() == 0 || fillers.count() > MOST_FILLERS) {
            return plan.value() + leftRatio * plan.leftPrice();
        }
        int mark = plan.state().mark();
        fillers.fill();
        double value = plan.value();
        plan.state().undo(mark);
        return value;
    }

    private void takeOut(int demand, List<WishPlan.@Nullable Placed> old) {
        old.add(plan.placed(demand));
        plan.remove(demand);
    }

    /** Serves one that waits, and takes others out until it can be; they are served again after it. */
    private List<Integer> makeRoom(Set<Integer> chosen, List<WishPlan.@Nullable Placed> old) {
        List<Integer> order = new ArrayList<>();
        int waiting = ruin.waiting();
        if (waiting < 0) {
            return order;
        }
        chosen.add(waiting);
        old.add(null);
        List<Integer> others = ruin.nearServed(waiting);
        int most = Math.min(others.size(), ruin.most());
        for (int next = 0; next < most && !insert(waiting); next++) {
            chosen.add(others.get(next));
            takeOut(others.get(next), old);
            order.add(others.get(next));
        }
        order.add(waiting);
        if (random.nextInt(2) == 0) {
            order.addAll(ruin.someWaiting(3, chosen, old));
        }
        return order;
    }

    /** Draws how dear the limits are this time, and which links seem dearer than they are. */
    private void draw() {
        hope = random.nextInt(2) == 0 ? 1 : Math.exp(2.5 * random.nextDouble() - 0.5);
        hope = random.nextInt(PRICELESS_OF) == 0 ? PRICELESS : hope;
        boolean areYearsDisturbed = random.nextInt(3) == 0;
        for (int year = 0; year < network.problem().years(); year++) {
            plan.disturb(year, areYearsDisturbed ? Math.exp(4 * random.nextDouble() - 2) : 1);
        }
        noise = null;
        if (random.nextDouble() < NOISE_SHARE) {
            double most = MOST_NOISE * random.nextDouble();
            long salt = random.nextLong();
            noise = link -> 1 + most * hashed(salt + link);
        }
    }

    private static double hashed(long number) {
        long mixed = number * 0x9E3779B97F4A7C15L;
        mixed = (mixed ^ (mixed >>> 32)) * 0xD6E8FEB86659FD93L;
        return ((mixed ^ (mixed >>> 32)) >>> 11) * HASH_SCALE;
    }

    private void serve(List<Integer> order) {
        for (int demand : order) {
            if (network.wish(demand).isMust()) {
                insert(demand);
            }
        }
        for (int demand : order) {
            if (!network.wish(demand).isMust()) {
                insert(demand);
            }
        }
    }

    /** Serves a connection by the year that is worth most less its price; the next one where limits do not allow it. */
    private boolean insert(int demand) {
        if (plan.placed(demand) != null) {
            return true;
        }
        Wish wish = network.wish(demand);
        List<WishPlan.Offer> offers = new ArrayList<>();
        List<Double> nets = new ArrayList<>();
        double atLeast = 0;
        for (int year = plan.lastYear(demand); year >= 0; year--) {
            double value = hope * wish.values().get(year);
            if (!wish.isMust() && value <= atLeast) {
                continue;
            }
            WishPlan.Offer offer = plan.offer(demand, year, wish.isMust() ? Double.POSITIVE_INFINITY : value, noise);
            if (offer == null) {
                continue;
            }
            int at = 0;
            while (at < nets.size() && nets.get(at) >= value - offer.price()) {
                at++;
            }
            nets.add(at, value - offer.price());
            offers.add(at, offer);
            atLeast = offer.price();
        }
        for (WishPlan.Offer offer : offers) {
            if (plan.place(demand, offer)) {
                return true;
            }
        }
        return false;
    }

    private void keepIfBest() {
        int mark = plan.state().mark();
        fillers.fill();
        int missing = plan.missingMusts();
        double value = plan.value();
        if (missing < bestMissing || (missing == bestMissing && value > bestValue)) {
            plan.state().recount();
            bestMissing = missing;
            bestValue = plan.value();
            best = plan.plan();
        }
        plan.state().undo(mark);
    }

    private void shuffle(List<Integer> list) {
        for (int last = list.size() - 1; last > 0; last--) {
            Collections.swap(list, last, random.nextInt(last + 1));
        }
    }

    YearPlan best() {
        return best;
    }

    /** Returns whether its plan misses fewer musts, or as many and is worth more. */
    boolean isBetterThan(WishSearch other) {
        return bestMissing != other.bestMissing ? bestMissing < other.bestMissing : bestValue > other.bestValue;
    }

    int bestMissing() {
        return bestMissing;
    }
}
