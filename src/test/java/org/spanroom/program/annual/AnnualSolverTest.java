package org.spanroom.program.annual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.spanroom.program.design.Spread;

/** Cases worked by hand. */
class AnnualSolverTest {
    private static final int NEVER = YearPlan.NEVER;

    /** Two tasks of 5, of which 2 are the set-up: 10 alone, 8 together, where there are 8. */
    @Test
    void neighborsFitWhereStrangersDoNot() {
        YearProblem neighbors = problem(limits(8), task(5, 10, 0, 2), task(5, 10, 0, 2));
        YearProblem strangers = problem(limits(8), task(5, 10, 0, 2), task(5, 10, 1, 2));

        assertEquals(List.of(0, 0), years(neighbors));
        assertEquals(List.of(List.of(8.0)), solve(neighbors).plan().orElseThrow().uses());
        assertEquals(1, years(strangers).stream().filter(year -> year == 0).count());
    }

    /** Of set-ups 2 and 3 the greater one is used: 3 + 2 + 3 = 8. */
    @Test
    void greatestSetUpOfAPlaceIsUsed() {
        YearProblem problem = problem(limits(8), task(5, 10, 0, 2), task(5, 10, 0, 3));

        assertEquals(List.of(List.of(8.0)), solve(problem).plan().orElseThrow().uses());
    }

    @Test
    void mustsBeyondTheLimitAreReportedWithWhatTheyNeed() {
        YearProblem problem = problem(limits(4, 3), must(5, 0, 1), must(3, 0, 1));

        AnnualResult result = solve(problem);

        assertTrue(result.plan().isEmpty());
        assertEquals(Double.NEGATIVE_INFINITY, result.bound());
        assertEquals(
                List.of(new Shortage.NoYear(0)), result.shortages(), "5 fits in neither year, 3 fits in both");
    }

    /** Each fits alone; together they use 6, where the two years have 5. */
    @Test
    void mustsThatExceedAllYearsTogetherAreReportedWithTheSum() {
        YearProblem problem = problem(limits(3, 2), must(2, 0, 1), must(2, 0, 1), must(2, 0, 1));

        assertEquals(List.of(new Shortage.MustsExceed(0, 1, 0, 6, 5)), solve(problem).shortages());
    }

    @Test
    void mustsOfOneYearAreReportedAgainstThatYear() {
        YearProblem problem = problem(limits(9, 3), must(2, 1, 1), must(2, 1, 1));

        assertEquals(List.of(new Shortage.MustsExceed(1, 1, 0, 4, 3)), solve(problem).shortages());
    }

    /** Three musts of 2 in two years of 3: 6 in sum, but a year takes only one of them. */
    @Test
    void mustsThatDoNotDivideAreReportedWithTheLeastExcess() {
        YearProblem problem = problem(limits(3, 3), must(2, 0, 1), must(2, 0, 1), must(2, 0, 1));

        List<Shortage> shortages = solve(problem).shortages();

        assertEquals(1, shortages.size());
        var shortage = (Shortage.NotFound) shortages.get(0);
        assertEquals(4, shortage.used(), 1e-9);
        assertEquals(3, shortage.limit());
        assertFalse(shortage.isProven());
    }

    /** What uses nothing can be done in a year without money; what uses some cannot. */
    @Test
    void emptyYearTakesOnlyWhatIsFree() {
        Task free = task(List.of(4.0, 1.0), 0, 0, 1, false);
        Task paid = task(List.of(4.0, 1.0), 2, 0, 1, false);

        assertEquals(List.of(0, 1), years(problem(limits(0, 2), free, paid)));
    }

    @Test
    void taskOfOneYearIsDoneThereAndTheOtherMakesRoom() {
        Task only = task(List.of(9.0, 9.0), 2, 1, 1, false);
        Task any = task(List.of(5.0, 8.0), 2, 0, 1, false);

        assertEquals(List.of(1, 0), years(problem(limits(2, 2), only, any)));
        assertEquals(14, solve(problem(limits(2, 2), only, any)).plan().orElseThrow().value());
    }

    /** A must is done in the year where it costs least; what is not worth doing is left, even if leaving it costs too. */
    @Test
    void lossesAreTakenOnlyWhereTheyAreLeast() {
        Task must = task(List.of(-5.0, -3.0), 1, 0, 1, true);
        Task loss = task(List.of(-5.0, -3.0), 1, 0, 1, false);
        Task promised = new Task(List.of(-5.0, -3.0), -4, List.of(1.0), 0, 1, false, List.of());

        AnnualResult result = solve(problem(limits(9, 9), must, loss, promised));

        assertEquals(List.of(1, NEVER, 1), result.plan().orElseThrow().yearOf());
        assertEquals(-6, result.bound(), 1e-6);
    }

    @Test
    void problemWithoutTasksOrYearsIsSolved() {
        assertEquals(0, solve(problem(limits(3))).bound(), 1e-6);
        assertEquals(0, solve(new YearProblem(List.of(), List.of(), 0, Optional.empty())).bound(), 1e-6);
    }


    /** Each fault of a plan is seen. */
    @Test
    void checkerSeesFaults() {
        YearProblem problem = problem(limits(8, 1), task(List.of(7.0, 6.0), 5, 0, 0, false), must(4, 0, 0));
        List<List<Double>> right = List.of(List.of(4.0), List.of(0.0));

        assertEquals(List.of(), faults(problem, List.of(NEVER, 0), 0, right));
        assertEquals("task 1 is a must and not done", faults(problem, List.of(0, NEVER), 7, right).get(0));
        assertEquals("task 0 is not possible in year 1", faults(problem, List.of(1, 0), 6, right).get(0));
        assertEquals(
                "year 0, resource 0: 9.0 used of 8.0",
                faults(problem, List.of(0, 0), 7, List.of(List.of(9.0), List.of(0.0))).get(0));
        assertEquals("value 1.0, recalculated 0.0", faults(problem, List.of(NEVER, 0), 1, right).get(0));
        assertEquals(
                "year 0, resource 0: use 3.0, recalculated 4.0",
                faults(problem, List.of(NEVER, 0), 0, List.of(List.of(3.0), List.of(0.0))).get(0));
    }

    private static List<String> faults(
            YearProblem problem, List<Integer> years, double value, List<List<Double>> uses) {
        return YearPlanChecker.problems(problem, new YearPlan(years, List.of(), Map.of(), value, uses));
    }

    private static List<Integer> years(YearProblem problem) {
        return solve(problem).plan().orElseThrow().yearOf();
    }

    private static AnnualResult solve(YearProblem problem) {
        var settings = new AnnualSettings(1, 2000, 500, 1, 0);
        AnnualResult result = AnnualSolver.solve(problem, settings, false, Spread.ON_ONE_THREAD, () -> false);
        result.plan().ifPresent(plan -> assertEquals(List.of(), YearPlanChecker.problems(problem, plan)));
        return result;
    }

    private static List<List<Double>> limits(double... ofYears) {
        return Arrays.stream(ofYears).mapToObj(List::of).toList();
    }

    private static YearProblem problem(List<List<Double>> limits, Task... tasks) {
        return new YearProblem(limits, List.of(tasks), 2, Optional.empty());
    }

    private static Task task(double use, double value, int place, double setUpUse) {
        SetUp setUp = new SetUp(place, List.of(setUpUse));
        return new Task(List.of(value), 0, List.of(use), 0, 0, false, List.of(setUp));
    }

    private static Task task(List<Double> values, double use, int firstYear, int lastYear, boolean isMust) {
        return new Task(values, 0, List.of(use), firstYear, lastYear, isMust, List.of());
    }

    private static Task must(double use, int firstYear, int lastYear) {
        return task(List.of(0.0, 0.0), use, firstYear, lastYear, true);
    }
}
