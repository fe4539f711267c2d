package org.spanroom.program.annual;

import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import org.spanroom.program.design.SearchSettings;
import org.spanroom.program.design.Spread;

/** Finds a good plan of a problem with connections and what none can be worth more than: prices, a search that they guide, and a bound at them. */
final class WishSolver {
    private static final long SEED_STEP = 0x9E3779B97F4A7C15L;
    private static final int ITERATIONS_OF_PRICES = 100;
    private static final int ITERATIONS_OF_DESIGN = 3_000;

    private final YearProblem problem;
    private final AnnualSettings settings;
    private final boolean hasLibrary;
    private final Spread spread;
    private final BooleanSupplier stop;
    private final SetUpLevels levels;
    private final WishNetwork network;
    private boolean isWhole = true;

    WishSolver(
            YearProblem problem,
            AnnualSettings settings,
            SetUpLevels levels,
            boolean hasLibrary,
            Spread spread,
            BooleanSupplier stop) {
        this.problem = problem;
        this.settings = settings;
        this.levels = levels;
        this.hasLibrary = hasLibrary;
        this.spread = spread;
        this.stop = stop;
        network = new WishNetwork(problem);
    }

    /**
     * Solves.
     *
     * @param mustYears of each task that has to be done, a year, so that all of them keep the limits
     */
    AnnualResult run(int[] mustYears) {
        var ofPrices = new SearchSettings(settings.seed(), ITERATIONS_OF_PRICES, 1);
        WishPrices prices = WishPriceSearch.of(problem, false, settings.priceSteps(), ofPrices, spread, stop);
        PricedDesigns designs = designs(new PricedYears(problem, prices, false));
        WishSearch best = search(prices, designs, mustYears);
        YearPlan plan = ready(filled(best.best()), prices);
        List<Shortage> shortages = WishShortages.of(network, prices, levels, plan);
        double bound = settings.isBounded() ? bound(prices, designs, shortages.isEmpty()) : Double.POSITIVE_INFINITY;
        return new AnnualResult(
                Optional.of(plan),
                Math.max(plan.value(), bound),
                shortages,
                (long) settings.starts() * settings.iterations(),
                isWhole && !stop.getAsBoolean());
    }

    private PricedDesigns designs(PricedYears years) {
        return PricedDesigns.of(problem, years, new SearchSettings(settings.seed(), ITERATIONS_OF_DESIGN, 1), spread);
    }

    /** Several starts; the best of them, the first one of equals. */
    private WishSearch search(WishPrices prices, PricedDesigns designs, int[] mustYears) {
        var searches = new WishSearch[settings.starts()];
        var wholes = new boolean[searches.length];
        spread.over(searches.length, () -> network, (same, number) -> {
            var search = new WishSearch(same, prices, levels, mustYears, settings.seed() + number * SEED_STEP);
            search.start(designs);
            wholes[number] = search.run(settings.iterations(), stop);
            searches[number] = search;
        });
        WishSearch best = searches[0];
        for (int number = 0; number < searches.length; number++) {
            isWhole &= wholes[number];
            best = searches[number].isBetterThan(best) ? searches[number] : best;
        }
        return best;
    }

    /** What no connection needs is chosen again, with the connections as they are, where tasks are worth something by themselves. */
    private YearPlan filled(YearPlan plan) {
        boolean isOfValue = problem.tasks().stream()
                .anyMatch(task -> task.values().stream().anyMatch(value -> value != task.valueNever()));
        return isOfValue ? new TaskFilling(problem, plan).run(settings, hasLibrary, spread, stop) : plan;
    }

    /** Of ways that are worth the same, those that wait for less work. */
    private YearPlan ready(YearPlan plan, WishPrices prices) {
        var changed = new WishPlan(network, prices, levels);
        changed.set(plan);
        new ReadyWays(network, changed).choose();
        return changed.plan();
    }

    /** Over plans that do and serve all that they must, if the one that was found does. */
    private double bound(WishPrices prices, PricedDesigns designs, boolean areMustsRequired) {
        boolean hasMusts = areMustsRequired
                && (problem.tasks().stream().anyMatch(Task::isMust)
                        || network.connections().wishes().stream().anyMatch(Wish::isMust));
        var years = new PricedYears(problem, prices, hasMusts);
        PricedDesigns known = hasMusts ? designs(years) : designs;
        List<Double> knownMoney =
                IntStream.range(0, problem.years()).mapToObj(known::knownMoney).toList();
        WishBound bound = WishBound.of(years, knownMoney, -1, hasMusts, hasLibrary, spread, stop);
        isWhole &= bound.isWhole();
        return bound.value();
    }
}
