package org.spanroom.program.annual;

import java.util.Comparator;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;

/**
 * Finds a good plan of tasks: from a greedy start, ruins and rebuilds a few related tasks at a time, under simulated annealing.
 *
 * <p>Tasks are related if they share a place, or at random. Those taken out, others at their places and some promising ones of those left out are put in, the
 * most valuable first for what they use at given prices, each into the year with the best profit in which it fits. A plan is always within the
 * limits and does every must. The same seed gives the same plan.
 */
final class TaskSearch {
    private static final int MOST_RUINED = 30;
    private static final int MOST_AT_PLACE = 6;
    private static final int PROMISING = 8;
    private static final double FIRST_TEMPERATURE = 0.1;
    private static final double LAST_TEMPERATURE = 0.003;
    private static final double LEAST_PART = 0.3;
    private static final double NOISE = 0.1;
    /** Of so many rebuilds, one tries what prices speak against. */
    private static final int WILD_ONCE_IN = 6;

    private static final double WILD_NOISE = 1;

    private final YearProblem problem;
    private final SetUpLevels levels;
    private final YearOptions options;
    private final double[][] prices;
    private final SplittableRandom random;
    private final WorkingPlan plan;
    private final double[] ratios;
    private final int[] byRatio;
    private final int[] pool;
    private final double[] keys;
    private final int[] inPool;
    private boolean isWild;
    private int pooled;
    private int round;
    private int[] best;
    private double bestValue;
    private long iterations;

    /**
     * Prepares a search.
     *
     * @param start a plan that does every must within the limits
     * @param prices of each year, of each resource: what a unit of its use is worth; they guide the search
     */
    TaskSearch(
            YearProblem problem,
            SetUpLevels levels,
            YearOptions options,
            YearAccount empty,
            int[] start,
            double[][] prices,
            long seed) {
        this.problem = problem;
        this.levels = levels;
        this.options = options;
        this.prices = prices;
        random = new SplittableRandom(seed);
        plan = new WorkingPlan(problem, empty);
        plan.set(start);
        int tasks = problem.tasks().size();
        ratios = new double[tasks];
        for (int task = 0; task < tasks; task++) {
            ratios[task] = ratio(task);
        }
        byRatio = IntStream.range(0, tasks)
                .boxed()
                .sorted(Comparator.comparingDouble((Integer task) -> -ratios[task]))
                .mapToInt(Integer::intValue)
                .toArray();
        pool = new int[tasks];
        keys = new double[tasks];
        inPool = new int[tasks];
        best = plan.years();
        bestValue = plan.value();
    }

    /** What a task is worth in its best year, for what it uses there alone; above 0 where doing it is worth more than leaving it. */
    private double ratio(int task) {
        double best = Double.NEGATIVE_INFINITY;
        for (int year = 0; year < problem.years(); year++) {
            if (options.is(task, year)) {
                double gain = plan.value(task, year) - plan.value(task, YearPlan.NEVER);
                double price = 0;
                for (int resource = 0; resource < problem.resources(); resource++) {
                    price += prices[year][resource] * levels.usedAlone(task, resource);
                }
                best = Math.max(best, gain > 0 ? gain / (price + 1e-6 * gain) : gain);
            }
        }
        return best;
    }

    /** Returns the years of the best plan so far. */
    int[] best() {
        return best.clone();
    }

    double bestValue() {
        return bestValue;
    }

    long iterations() {
        return iterations;
    }

    /** Puts in what the relaxation does in large parts, the largest first. */
    void round(PriceSearch relaxed) {
        int tasks = ratios.length;
        var yearOf = new int[tasks];
        var part = new double[tasks];
        for (int task = 0; task < tasks; task++) {
            for (int year = 0; year < problem.years(); year++) {
                if (options.is(task, year) && relaxed.part(task, year) > part[task]) {
                    part[task] = relaxed.part(task, year);
                    yearOf[task] = year;
                }
            }
        }
        IntStream.range(0, tasks)
                .filter(task -> part[task] > LEAST_PART && plan.yearOf(task) == YearPlan.NEVER)
                .filter(task -> plan.value(task, yearOf[task]) > plan.value(task, YearPlan.NEVER))
                .boxed()
                .sorted(Comparator.comparingDouble((Integer task) -> -part[task]))
                .filter(task -> plan.account().fits(task, yearOf[task]))
                .forEach(task -> plan.put(task, yearOf[task]));
        plan.keep();
        remember();
    }

    /** Puts in what fits, the most valuable tasks for their use first. */
    void fill() {
        for (int task : byRatio) {
            if (plan.yearOf(task) == YearPlan.NEVER) {
                insert(task);
            }
        }
        plan.keep();
        remember();
    }

    /**
     * Searches.
     *
     * @param most how many iterations
     * @param stop asked before each
     * @return whether it ended by itself
     */
    boolean run(int most, BooleanSupplier stop) {
        if (ratios.length == 0) {
            return true;
        }
        double scale = meanValue();
        boolean isWhole = true;
        for (int i = 0; i < most; i++) {
            if (stop.getAsBoolean()) {
                isWhole = false;
                break;
            }
            iterations++;
            double share = (double) i / most;
            double temperature = scale * FIRST_TEMPERATURE * Math.pow(LAST_TEMPERATURE / FIRST_TEMPERATURE, share);
            double before = plan.value();
            boolean holdsMusts = rebuild();
            if (holdsMusts && plan.value() - before > temperature * Math.log(random.nextDouble())) {
                plan.keep();
                if (plan.value() > bestValue + 1e-9 * Math.abs(bestValue)) {
                    remember();
                }
            } else {
                plan.takeBack();
            }
        }
        return isWhole;
    }

    private void remember() {
        if (plan.value() > bestValue) {
            bestValue = plan.value();
            best = plan.years();
        }
    }

    private double meanValue() {
        double sum = 0;
        int count = 0;
        for (int task = 0; task < ratios.length; task++) {
            if (plan.yearOf(task) != YearPlan.NEVER) {
                sum += Math.abs(plan.value(task, plan.yearOf(task)) - plan.value(task, YearPlan.NEVER));
                count++;
            }
        }
        return count == 0 ? 1 : sum / count;
    }

    /** Takes related tasks out and puts in what fits; returns whether every must among them is done again. */
    private boolean rebuild() {
        round++;
        pooled = 0;
        isWild = random.nextInt(WILD_ONCE_IN) == 0;
        int toRuin = 1 + random.nextInt(Math.min(MOST_RUINED, 4 + ratios.length / 10));
        boolean isNear = random.nextInt(4) > 0;
        int tries = 0;
        while (pooled < toRuin && tries++ < 4 * toRuin) {
            ruinAround(random.nextInt(ratios.length), toRuin, isNear);
        }
        int ruined = pooled;
        for (int i = 0; i < ruined; i++) {
            plan.put(pool[i], YearPlan.NEVER);
        }
        addPromising();
        return insertPool();
    }

    private void ruinAround(int task, int most, boolean isNear) {
        if (plan.yearOf(task) == YearPlan.NEVER) {
            return;
        }
        pool(task);
        int[] reached = levels.levelsOf[task];
        if (!isNear || reached.length == 0) {
            return;
        }
        int[] there = levels.tasks[reached[random.nextInt(reached.length)]];
        int offset = random.nextInt(there.length);
        for (int i = 0; i < there.length && pooled < most; i++) {
            int other = there[(i + offset) % there.length];
            if (plan.yearOf(other) != YearPlan.NEVER) {
                pool(other);
            }
        }
    }

    private void pool(int task) {
        if (inPool[task] != round) {
            inPool[task] = round;
            pool[pooled++] = task;
        }
    }

    private void addPromising() {
        int ruined = pooled;
        for (int i = 0; i < ruined; i++) {
            for (int level : levels.levelsOf[pool[i]]) {
                int[] there = levels.tasks[level];
                int offset = random.nextInt(there.length);
                for (int j = 0; j < Math.min(MOST_AT_PLACE, there.length); j++) {
                    int task = there[(j + offset) % there.length];
                    if (plan.yearOf(task) == YearPlan.NEVER) {
                        pool(task);
                    }
                }
            }
        }
        for (int i = 0; i < PROMISING; i++) {
            double draw = random.nextDouble();
            int task = byRatio[(int) (draw * ratios.length)];
            if (plan.yearOf(task) == YearPlan.NEVER) {
                pool(task);
            }
        }
    }

    private boolean insertPool() {
        for (int i = 0; i < pooled; i++) {
            int task = pool[i];
            boolean isMust = problem.tasks().get(task).isMust();
            double noise = 1 + (isWild ? WILD_NOISE : NOISE) * (2 * random.nextDouble() - 1);
            keys[i] = isMust ? Double.POSITIVE_INFINITY : Math.min(1e9, presentRatio(task)) * noise;
        }
        for (int i = 1; i < pooled; i++) {
            int task = pool[i];
            double key = keys[i];
            int at = i;
            for (; at > 0 && keys[at - 1] < key; at--) {
                pool[at] = pool[at - 1];
                keys[at] = keys[at - 1];
            }
            pool[at] = task;
            keys[at] = key;
        }
        for (int i = 0; i < pooled; i++) {
            if (!insert(pool[i]) && problem.tasks().get(pool[i]).isMust()) {
                return false;
            }
        }
        return true;
    }

    private double presentRatio(int task) {
        double never = plan.value(task, YearPlan.NEVER);
        double ratio = Double.NEGATIVE_INFINITY;
        for (int year = 0; year < problem.years(); year++) {
            double gain = plan.value(task, year) - never;
            if (options.is(task, year) && gain > 0) {
                double price = plan.account().priced(task, year, prices[year]);
                ratio = Math.max(ratio, gain / (price + 1e-6 * gain));
            }
        }
        return ratio;
    }

    /** Puts a task into the year with the best profit in which it fits and is worth it; returns whether there is one. */
    private boolean insert(int task) {
        double never = plan.value(task, YearPlan.NEVER);
        boolean isMust = problem.tasks().get(task).isMust();
        int chosen = YearPlan.NEVER;
        double bestProfit = Double.NEGATIVE_INFINITY;
        for (int year = 0; year < problem.years(); year++) {
            double value = plan.value(task, year);
            if (options.is(task, year)
                    && (isMust || value > never)
                    && plan.account().fits(task, year)) {
                double profit = isWild && random.nextBoolean()
                        ? random.nextDouble() * Math.abs(value)
                        : value - plan.account().priced(task, year, prices[year]);
                if (profit > bestProfit) {
                    bestProfit = profit;
                    chosen = year;
                }
            }
        }
        plan.put(task, chosen);
        return chosen != YearPlan.NEVER;
    }
}
