package org.spanroom.program.annual;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;

/** Spreads the musts over the years, with nothing else, so that limits are exceeded as little as possible, relative to themselves. */
final class MustStart {
    private static final int ITERATIONS = 20_000;
    private static final int ITERATIONS_OF_MUST = 200;
    private static final double FIRST_TEMPERATURE = 0.05;
    private static final double LAST_TEMPERATURE = 1e-4;

    private final YearProblem problem;
    private final YearOptions options;
    private final WorkingPlan plan;
    private final List<Integer> musts;
    private double excess;

    MustStart(YearProblem problem, SetUpLevels levels, YearOptions options, YearAccount empty) {
        this.problem = problem;
        this.options = options;
        plan = new WorkingPlan(problem, empty);
        musts = IntStream.range(0, problem.tasks().size())
                .filter(task -> problem.tasks().get(task).isMust())
                .boxed()
                .sorted(Comparator.comparingInt(options::count)
                        .thenComparingDouble(task -> -share(levels, task))
                        .thenComparingInt(task -> task))
                .toList();
    }

    /** The largest share of a year's limit that a task uses. */
    private double share(SetUpLevels levels, int task) {
        double largest = 0;
        for (List<Double> ofYear : problem.limits()) {
            for (int resource = 0; resource < ofYear.size(); resource++) {
                double use = levels.usedAlone(task, resource);
                largest = Math.max(largest, use > 0 && ofYear.get(resource) > 0 ? use / ofYear.get(resource) : 0);
            }
        }
        return largest;
    }

    /** Searches; returns whether every must is done within the limits. */
    boolean run(long seed, BooleanSupplier stop) {
        musts.forEach(this::putBest);
        plan.keep();
        excess = excess();
        if (excess > 0) {
            improve(new SplittableRandom(seed), stop);
        }
        return excess == 0;
    }

    int[] years() {
        return plan.years();
    }

    /** Returns what is exceeded. */
    List<Shortage> shortages(boolean isProven) {
        List<Shortage> shortages = new ArrayList<>();
        for (int year = 0; year < problem.years(); year++) {
            for (int resource = 0; resource < problem.resources(); resource++) {
                if (plan.account().excess(year, resource) > 0) {
                    shortages.add(new Shortage.NotFound(
                            year,
                            resource,
                            plan.account().used(year, resource),
                            problem.limits().get(year).get(resource),
                            isProven));
                }
            }
        }
        return shortages;
    }

    private void putBest(int must) {
        int best = YearPlan.NEVER;
        double least = Double.POSITIVE_INFINITY;
        for (int year = 0; year < problem.years(); year++) {
            if (options.is(must, year)) {
                plan.put(must, year);
                double here = excess();
                boolean isBetter = here < least
                        || here == least && best >= 0 && plan.value(must, year) > plan.value(must, best);
                if (isBetter) {
                    least = here;
                    best = year;
                }
            }
        }
        plan.put(must, best);
    }

    private void improve(SplittableRandom random, BooleanSupplier stop) {
        int most = ITERATIONS + ITERATIONS_OF_MUST * musts.size();
        int[] best = plan.years();
        double bestExcess = excess;
        for (int i = 0; i < most && bestExcess > 0 && !stop.getAsBoolean(); i++) {
            double temperature =
                    FIRST_TEMPERATURE * Math.pow(LAST_TEMPERATURE / FIRST_TEMPERATURE, (double) i / most);
            change(random);
            double after = excess();
            if (excess - after > temperature * Math.log(random.nextDouble())) {
                plan.keep();
                excess = after;
                if (excess < bestExcess) {
                    bestExcess = excess;
                    best = plan.years();
                }
            } else {
                plan.takeBack();
            }
        }
        plan.set(best);
        excess = bestExcess;
    }

    /** Moves a must, or lets two change their years. */
    private void change(SplittableRandom random) {
        int must = musts.get(random.nextInt(musts.size()));
        int year = random.nextInt(problem.years());
        int before = plan.yearOf(must);
        if (!options.is(must, year)) {
            return;
        }
        plan.put(must, year);
        int other = musts.get(random.nextInt(musts.size()));
        if (random.nextBoolean() && other != must && options.is(other, before)) {
            plan.put(other, before);
        }
    }

    private double excess() {
        double sum = 0;
        for (int year = 0; year < problem.years(); year++) {
            for (int resource = 0; resource < problem.resources(); resource++) {
                double over = plan.account().excess(year, resource);
                double limit = problem.limits().get(year).get(resource);
                sum += over > 0 ? over / (limit > 0 ? limit : 1) : 0;
            }
        }
        return sum;
    }
}
