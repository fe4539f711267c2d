package org.spanroom.program.annual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.ObjIntConsumer;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.spanroom.pipeline.NativeSolver;
import org.spanroom.program.design.Spread;

/** Laws of plans and bounds on thousands of problems that are small enough to try every plan. */
class AnnualLawTest {
    private static final AnnualSettings SETTINGS = new AnnualSettings(1, 400, 300, 2, 0.2);

    private static final Spread ON_MANY_THREADS = new Spread() {
        @Override
        public <W> void over(int count, Supplier<W> worker, ObjIntConsumer<W> work) {
            IntStream.range(0, count).parallel().forEach(number -> work.accept(worker.get(), number));
        }
    };

    @Test
    void plansHoldAndMostAreTheBestAndNoBoundIsBelowTheBest() {
        int solved = 0;
        int reached = 0;
        for (long seed = 0; seed < 6000; seed++) {
            YearProblem problem = SmallYears.draw(seed);
            OptionalDouble best = SmallYears.best(problem);

            AnnualResult result = solve(problem, false, Spread.ON_ONE_THREAD);

            assertEquals(best.isPresent(), result.plan().isPresent(), "seed " + seed);
            assertEquals(best.isEmpty(), !result.shortages().isEmpty(), "seed " + seed);
            if (best.isPresent()) {
                solved++;
                YearPlan plan = result.plan().orElseThrow();
                assertEquals(List.of(), YearPlanChecker.problems(problem, plan), "seed " + seed);
                assertTrue(plan.value() <= best.getAsDouble() + 1e-9, "seed " + seed);
                assertTrue(result.bound() >= best.getAsDouble() - 1e-9, "seed " + seed + ": " + result + best);
                reached += plan.value() > best.getAsDouble() - 1e-6 ? 1 : 0;
            }
        }
        assertTrue(solved > 3000, solved + " have a plan");
        assertTrue(reached > 0.99 * solved, reached + " of " + solved);
    }

    /** Not only at prices that steps lead to. */
    @Test
    void boundHoldsAtAnyPricesAndShares() {
        for (long seed = 0; seed < 3000; seed++) {
            YearProblem problem = SmallYears.draw(seed);
            OptionalDouble best = SmallYears.best(problem);
            var random = new SplittableRandom(seed);
            var levels = new SetUpLevels(problem);
            var options = new YearOptions(problem, new YearAccount(problem, levels));
            var bound = new PriceBound(problem, levels, options);
            for (int draw = 0; draw < 5 && best.isPresent(); draw++) {
                var prices = new double[problem.years()][problem.resources()];
                for (int year = 0; year < problem.years(); year++) {
                    for (int resource = 0; resource < problem.resources(); resource++) {
                        boolean hasLimit =
                                Double.isFinite(problem.limits().get(year).get(resource));
                        prices[year][resource] = hasLimit && random.nextBoolean() ? random.nextDouble() * 5 : 0;
                    }
                }
                double[] weights = random.doubles((long) levels.slots * problem.years())
                        .map(weight -> weight < 0.4 ? 0 : weight)
                        .toArray();
                double value = bound.evaluate(prices, weights);
                assertTrue(value >= best.getAsDouble() - 1e-9, "seed " + seed);
            }
        }
    }

    @Test
    void programFindsAndProvesTheBest() {
        assumeTrue(NativeSolver.load().isEmpty(), "no library on this platform");
        for (long seed = 0; seed < 600; seed++) {
            YearProblem problem = SmallYears.draw(seed);
            OptionalDouble best = SmallYears.best(problem);

            AnnualResult result = solve(problem, true, Spread.ON_ONE_THREAD);

            assertEquals(best.isPresent(), result.plan().isPresent(), "seed " + seed);
            if (best.isPresent()) {
                YearPlan plan = result.plan().orElseThrow();
                assertEquals(List.of(), YearPlanChecker.problems(problem, plan), "seed " + seed);
                assertEquals(best.getAsDouble(), plan.value(), 1e-6, "seed " + seed);
                assertEquals(best.getAsDouble(), result.bound(), 1e-6, "seed " + seed);
            }
        }
    }

    @Test
    void resultDoesNotDependOnThreads() {
        for (long seed = 0; seed < 200; seed++) {
            YearProblem problem = SmallYears.draw(seed);

            assertEquals(solve(problem, false, Spread.ON_ONE_THREAD), solve(problem, false, ON_MANY_THREADS));
        }
    }

    /** Adding and removing in any order leaves what the uses of the tasks in a year are. */
    @Test
    void accountAgreesWithTheCheckerAfterAnyChanges() {
        for (long seed = 0; seed < 2000; seed++) {
            YearProblem problem = SmallYears.draw(seed);
            var random = new SplittableRandom(seed);
            var plan = new WorkingPlan(problem, new YearAccount(problem, new SetUpLevels(problem)));
            for (int change = 0; change < 40; change++) {
                plan.put(random.nextInt(problem.tasks().size()), random.nextInt(problem.years() + 1) - 1);
                if (random.nextInt(3) == 0) {
                    plan.takeBack();
                } else if (random.nextInt(3) == 0) {
                    plan.keep();
                }
            }
            List<String> problems = YearPlanChecker.problems(problem, plan.plan());

            assertFalse(problems.stream().anyMatch(line -> line.contains("recalculated")), problems.toString());
        }
    }

    private static AnnualResult solve(YearProblem problem, boolean hasLibrary, Spread spread) {
        return AnnualSolver.solve(problem, SETTINGS, hasLibrary, spread, () -> false);
    }
}
