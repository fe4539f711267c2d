package org.spanroom.program.annual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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
        return WishBound.of(years, unknown, 60, areMustsRequired, false, Spread.ON_ONE_THREAD, () -> false)
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
                        least[year] = random.nextBoolean()
                                ? least[year]
                                : Math.max(least[year], random.nextDouble() * least[year - 1]);
                    }
                    return least;
                })
                .toArray(double[][]::new);
        return new WishPrices(new YearPrices(prices), worth, WishPrices.shares(problem, weights));
    }

    @Test
    void noPlanIsWorthMoreThanTheBound() {
        double sum = 0;
        double boundSum = 0;
        for (long seed = 0; seed < CASES; seed++) {
            YearProblem problem = TinyYears.drawn(seed);
            YearEnumeration.Best best = YearEnumeration.of(problem);
            for (boolean areMustsRequired : new boolean[] {false, true}) {
                double value = areMustsRequired ? best.valueOfWhole() : best.value();
                double atFound = bound(problem, found(problem, areMustsRequired), areMustsRequired);
                double atDrawn = bound(problem, drawn(problem, areMustsRequired, seed), areMustsRequired);
                assertTrue(atFound >= value - ROUNDING, () -> problem + " is worth " + value + ", bound " + atFound);
                assertTrue(atDrawn >= value - ROUNDING, () -> problem + " is worth " + value + ", bound " + atDrawn);
                boundSum += areMustsRequired ? 0 : atFound;
                sum += areMustsRequired ? 0 : value;
            }
        }
        double gap = 1 - sum / boundSum;
        assertTrue(gap < 0.25, () -> "gap of the bounds " + gap);
    }

    @Test
    void plansAreNeverAboveTheBestAndNearIt() {
        double sum = 0;
        double foundSum = 0;
        int misses = 0;
        for (long seed = 0; seed < CASES; seed++) {
            YearProblem problem = TinyYears.drawn(seed);
            YearEnumeration.Best best = YearEnumeration.of(problem);
            AnnualResult result = AnnualSolver.solve(
                    problem, new AnnualSettings(1, 12, 200, 1, true, 0), false, Spread.ON_ONE_THREAD, () -> false);
            if (result.plan().isEmpty()) {
                assertEquals(Double.NEGATIVE_INFINITY, best.valueOfWhole(), "a plan does all that it must");
                assertFalse(result.shortages().isEmpty());
                continue;
            }
            YearPlan plan = result.plan().get();
            List<String> problems = YearPlanChecker.problems(problem, plan);
            if (result.shortages().isEmpty()) {
                assertEquals(List.of(), problems, () -> problem.toString());
                assertTrue(plan.value() <= best.valueOfWhole() + ROUNDING, () -> problem.toString());
                assertTrue(result.bound() >= best.valueOfWhole() - ROUNDING, () -> problem.toString());
                sum += best.valueOfWhole();
                foundSum += plan.value();
            } else {
                assertEquals(result.shortages().size(), problems.size(), () -> problem + " " + problems);
                assertTrue(result.shortages().size() >= best.missing());
                misses += best.valueOfWhole() > Double.NEGATIVE_INFINITY ? 1 : 0;
            }
        }
        double ratio = foundSum / sum;
        int missed = misses;
        assertTrue(ratio > 0.985, () -> "plans have " + ratio + " of the best");
        assertTrue(missed <= CASES / 100, () -> missed + " plans miss a must that another one has");
    }
}
