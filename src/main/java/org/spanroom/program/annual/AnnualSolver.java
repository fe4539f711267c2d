package org.spanroom.program.annual;

import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.spanroom.program.design.Spread;

/**
 * Finds a good program of years and what none can be worth more than: prices of the years, a search that they guide, and, where the native library is
 * loaded, an integer program that starts from what was found.
 *
 * <p>The same problem and settings give the same result, whatever the threads, with or without the library each.
 */
public final class AnnualSolver {
    private static final long SEED_STEP = 0x9E3779B97F4A7C15L;
    private static final double CLOSE_RATIO = 1e-5;

    private final YearProblem problem;
    private final AnnualSettings settings;
    private final boolean hasLibrary;
    private final Spread spread;
    private final BooleanSupplier stop;
    private final SetUpLevels levels;
    private final YearAccount empty;
    private final YearOptions options;
    private final PriceBound bound;
    private long iterations;
    private boolean isWhole = true;

    private AnnualSolver(
            YearProblem problem, AnnualSettings settings, boolean hasLibrary, Spread spread, BooleanSupplier stop) {
        this.problem = problem;
        this.settings = settings;
        this.hasLibrary = hasLibrary;
        this.spread = spread;
        this.stop = stop;
        levels = new SetUpLevels(problem);
        empty = new YearAccount(problem, levels);
        options = new YearOptions(problem, empty);
        bound = new PriceBound(problem, levels, options);
    }

    /**
     * Solves a problem, with connections or without.
     *
     * @param hasLibrary whether the native library for integer programs is loaded
     * @param spread does the starts of the search, at the same time if it likes
     * @param stop ends the work early with the best so far, once it is true; an integer program that has begun runs to its limit of work
     */
    public static AnnualResult solve(
            YearProblem problem, AnnualSettings settings, boolean hasLibrary, Spread spread, BooleanSupplier stop) {
        return new AnnualSolver(problem, settings, hasLibrary, spread, stop).solve();
    }

    private AnnualResult solve() {
        List<Shortage> shortages = MustLimits.shortages(problem, levels, options);
        if (!shortages.isEmpty()) {
            return AnnualResult.impossible(shortages, 0, true);
        }
        var prices = new PriceSearch(problem, levels, options, bound);
        if (problem.connections().isEmpty()) {
            isWhole = prices.run(settings.priceSteps(), CLOSE_RATIO, stop);
        }
        var musts = new MustStart(problem, levels, options, empty.empty());
        if (musts.run(settings.seed(), stop)) {
            return solve(musts.years(), prices);
        }
        TaskProgram.Found found = program(options, Optional.empty());
        Optional<int[]> start = found.years().flatMap(this::repaired);
        if (start.isPresent()) {
            return solve(start.get(), prices);
        }
        boolean isProven = found.bound() == Double.NEGATIVE_INFINITY;
        double ofTasks = problem.connections().isPresent() ? Double.POSITIVE_INFINITY : bound.bestValue();
        return new AnnualResult(
                Optional.empty(),
                isProven ? found.bound() : ofTasks,
                musts.shortages(isProven),
                iterations,
                isWhole && !stop.getAsBoolean());
    }

    /** From years in which all tasks that have to be done keep the limits. */
    private AnnualResult solve(int[] start, PriceSearch prices) {
        return problem.connections().isPresent()
                ? new WishSolver(problem, settings, levels, hasLibrary, spread, stop).run(start)
                : finish(search(start, prices));
    }

    private TaskProgram.Found program(YearOptions open, Optional<int[]> start) {
        if (!hasLibrary || settings.programTime() == 0 || stop.getAsBoolean()) {
            return new TaskProgram.Found(Optional.empty(), Double.POSITIVE_INFINITY);
        }
        return TaskProgram.of(problem, levels, open, start, settings.seed(), settings.programTime());
    }

    /** Several starts at once; the best of them, the first one of equals. */
    private int[] search(int[] start, PriceSearch relaxed) {
        var searches = new TaskSearch[settings.starts()];
        var wholes = new boolean[searches.length];
        spread.over(searches.length, () -> start, (from, number) -> {
            var search = new TaskSearch(
                    problem,
                    levels,
                    options,
                    empty.empty(),
                    from,
                    bound.bestPrices(),
                    settings.seed() + number * SEED_STEP);
            search.round(relaxed);
            search.fill();
            wholes[number] = search.run(settings.iterations(), stop);
            searches[number] = search;
        });
        TaskSearch best = searches[0];
        for (int number = 0; number < searches.length; number++) {
            best = searches[number].bestValue() > best.bestValue() ? searches[number] : best;
            iterations += searches[number].iterations();
            isWhole &= wholes[number];
        }
        return best.best();
    }

    private AnnualResult finish(int[] found) {
        YearPlan plan = plan(found);
        double least = bound.bestValue();
        if (least > plan.value() + YearAccount.ROUNDING * Math.abs(plan.value())) {
            TaskProgram.Found proven = program(bound.reduced(plan.value()), Optional.of(found));
            Optional<YearPlan> other = proven.years().flatMap(this::repaired).map(this::plan);
            least = Math.min(least, Math.max(plan.value(), proven.bound()));
            if (other.isPresent() && other.get().value() > plan.value()) {
                plan = other.get();
            }
            isWhole &= !stop.getAsBoolean();
        }
        return new AnnualResult(
                Optional.of(plan), Math.max(least, plan.value()), List.of(), iterations, isWhole);
    }

    private YearPlan plan(int[] years) {
        var working = new WorkingPlan(problem, empty.empty());
        working.set(years);
        return working.plan();
    }

    /** A plan of rounded uses may exceed a limit by the rounding: the least valuable tasks leave such a year; empty where only musts are left. */
    private Optional<int[]> repaired(List<Integer> years) {
        var working = new WorkingPlan(problem, empty.empty());
        working.set(years.stream().mapToInt(Integer::intValue).toArray());
        for (int year = 0; year < problem.years(); year++) {
            while (!working.account().isWithin(year)) {
                int worst = YearPlan.NEVER;
                double least = Double.POSITIVE_INFINITY;
                for (int task = 0; task < years.size(); task++) {
                    double gain = working.value(task, year) - working.value(task, YearPlan.NEVER);
                    if (working.yearOf(task) == year && options.is(task, YearPlan.NEVER) && gain < least) {
                        least = gain;
                        worst = task;
                    }
                }
                if (worst == YearPlan.NEVER) {
                    return Optional.empty();
                }
                working.put(worst, YearPlan.NEVER);
            }
        }
        return Optional.of(working.years());
    }
}
