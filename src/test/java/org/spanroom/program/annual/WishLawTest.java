package org.spanroom.program.annual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.spanroom.program.design.SearchSettings;
import org.spanroom.program.design.Spread;

/** Bounds are never below the best of all plans, and plans that are found never above it. */
class WishLawTest {
    private static final int CASES = 1_000;
    private static final double ROUNDING = 1e-6;

    private static double bound(YearProblem problem, WishPrices prices, boolean areMustsRequired) {
        var years = new PricedYears(problem, prices, areMustsRequired);
        List<Double> unknown = Collections.nCopies(problem.years(), Double.POSITIVE_INFINITY);
        return WishBound.of(years, problem.years(), unknown, 60, areMustsRequired, false, Spread.ON_ONE_THREAD, () -> false)
                .value();
    }

    private static WishPrices found(YearProblem problem, boolean areMustsRequired) {
        return WishPriceSearch.of(
                problem, areMustsRequired, 12, new SearchSettings(1, 20, 1), Spread.ON_ONE_THREAD, () -> false);
    }

    /** Prices that no search would choose. */
    private static WishPrices drawn(YearProblem problem, boolean areMustsRequired, long seed) {
        var random = new SplittableRandom(seed);
        double[][] prices = new double[problem.years()][problem.resources()];
        for (int year = 0; year < prices.length; year++) {
            for (int resource = 0; resource < prices[year].length; resource++) {
                boolean isFree = Double.isInfinite(problem.limits().get(year).get(resource));
                prices[year][resource] = isFree ? 0 : random.nextDouble(0, 2);
            }
        }
        double[] weights = new double[problem.tasks().size()];
        Arrays.setAll(weights, task -> random.nextDouble(0.01, 1));
        double[][] worth = problem.connections().orElseThrow().wishes().stream()
                .map(wish -> {
                    double[] least = WishPrices.leastWorth(wish, areMustsRequired && wish.isMust());
                    for (int year = 1; year < least.length; year++) {
                        least[year] = random.nextBoolean() ? least[year] : Math.max(least[year], random.nextDouble() * least[year - 1]);
                    }
                    return least;
                })
                .toArray(double[][]::new);
        return new WishPrices(new YearPrices(prices), worth, WishPrices.shares(problem, weights));
    }

    @Test
    void noPlanIsWorthMoreThanTheBound() {
        double gaps = 0;
        for (long seed = 0; seed < CASES; seed++) {
            YearProblem problem = TinyYears.drawn(seed);
            YearEnumeration.Best best = YearEnumeration.of(problem);
            for (boolean areMustsRequired : new boolean[] {false, true}) {
                double value = areMustsRequired ? best.valueOfWhole() : best.value();
                double atFound = bound(problem, found(problem, areMustsRequired), areMustsRequired);
                double atDrawn = bound(problem, drawn(problem, areMustsRequired, seed), areMustsRequired);
                assertTrue(atFound >= value - ROUNDING, () -> problem + " is worth " + value + ", bound " + atFound);
                assertTrue(atDrawn >= value - ROUNDING, () -> problem + " is worth " + value + ", bound " + atDrawn);
                gaps += areMustsRequired ? 0 : 1 - value / Math.max(1e-9, atFound);
            }
        }
        System.out.println("mean gap of bounds " + gaps / CASES);
    }

    @Test
    void plansAreNeverAboveTheBestAndNearIt() {
        double sum = 0;
        double foundSum = 0;
        int misses = 0, lost = 0; double a = 0, b = 0;
        for (long seed = 0; seed < CASES; seed++) {
            YearProblem problem = TinyYears.drawn(seed);
            YearEnumeration.Best best = YearEnumeration.of(problem);
            var search = new WishSearch(new WishNetwork(problem), found(problem, false), new SetUpLevels(problem), seed);
            search.run(200, () -> false);
            boolean isWhole = search.bestMissing() == 0 && best.valueOfWhole() > Double.NEGATIVE_INFINITY;
            boolean hf = problem.tasks().stream().anyMatch(t -> t.values().stream().anyMatch(v -> v > t.valueNever()));
            if (isWhole) {
                if (hf) { a += best.valueOfWhole(); b += search.best().value(); }
                if (search.best().value() < best.valueOfWhole() - 1e-6) lost++;
                assertEquals(List.of(), YearPlanChecker.problems(problem, search.best()), () -> "seed");
                assertTrue(search.best().value() <= best.valueOfWhole() + ROUNDING);
                sum += best.valueOfWhole();
                foundSum += search.best().value();
            }
            assertTrue(search.bestMissing() >= best.missing());
            misses += search.bestMissing() > best.missing() ? 1 : 0;
        }
        System.out.println("plans " + foundSum / sum + " of the best, lost " + lost + " fillers " + (b / a) + " others " + (foundSum - b) / (sum - a) + " more missing " + misses);
    }
}
