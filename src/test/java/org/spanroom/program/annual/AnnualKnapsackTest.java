package org.spanroom.program.annual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.pipeline.NativeSolver;
import org.spanroom.program.design.Spread;

/** Source of instances and optima: OR-Library, mknapcb1; see the README beside them. */
class AnnualKnapsackTest {
    /** The two others need longer for their proof than a test should take. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 4})
    void programReachesAndProvesTheOptimum(int number) {
        assumeTrue(NativeSolver.load().isEmpty(), "no library on this platform");
        double optimum = KnapsackInstances.optima().get(number);

        AnnualResult result = solve(number, true);

        assertEquals(optimum, result.plan().orElseThrow().value());
        assertEquals(optimum, result.bound(), 1e-6);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4})
    void searchAndPricesComeCloseToTheOptimumWithoutTheLibrary(int number) {
        double optimum = KnapsackInstances.optima().get(number);

        AnnualResult result = solve(number, false);

        double value = result.plan().orElseThrow().value();
        assertTrue(value <= optimum && value >= 0.995 * optimum, value + " of " + optimum);
        assertTrue(result.bound() >= optimum && result.bound() <= 1.015 * optimum, result.bound() + " of " + optimum);
    }

    private static AnnualResult solve(int number, boolean hasLibrary) {
        YearProblem problem = KnapsackInstances.problems().get(number);
        AnnualSettings settings = AnnualSettings.forTasks(100);
        AnnualResult result = AnnualSolver.solve(problem, settings, hasLibrary, Spread.ON_ONE_THREAD, () -> false);
        assertEquals(List.of(), YearPlanChecker.problems(problem, result.plan().orElseThrow()));
        return result;
    }
}
