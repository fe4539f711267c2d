package org.spanroom.program.annual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.spanroom.program.design.Bin;
import org.spanroom.program.design.Demand;
import org.spanroom.program.design.DesignProblem;
import org.spanroom.program.design.NewDucts;
import org.spanroom.program.design.Piece;
import org.spanroom.program.design.SearchSettings;
import org.spanroom.program.design.Spread;

/** Problems with connections whose best plans are known by hand. Streets are chains of places from 0 on. */
class WishCasesTest {
    private static final int YEARS = 3;
    private static final Bin FULL = new Bin(0, 3, 10);
    private static final NewDucts ONE_NEW = new NewDucts(3, 20, 5, 1);

    private final List<Piece> pieces = new ArrayList<>();
    private final List<List<Integer>> taskOfBin = new ArrayList<>();
    private final List<Task> tasks = new ArrayList<>();
    private final List<Demand> demands = new ArrayList<>();
    private final List<Wish> wishes = new ArrayList<>();

    private void street(Bin bin, NewDucts more) {
        int from = pieces.size();
        pieces.add(new Piece(from, from + 1, 50, List.of(bin), more));
        taskOfBin.add(List.of(bin.isRecoverable() ? tasks.size() : -1));
        if (bin.isRecoverable()) {
            List<Double> values = Collections.nCopies(YEARS, 0.0);
            tasks.add(new Task(values, 0, List.of(bin.money(), 1.0), 0, YEARS - 1, false, List.of()));
        }
    }

    private void connection(int from, int to, int cables, boolean isMust, int lastYear, double... values) {
        demands.add(new Demand(from, to, cables, 1));
        List<Double> ofYears = new ArrayList<>();
        for (double value : values) {
            ofYears.add(value);
        }
        wishes.add(new Wish(ofYears, isMust, lastYear));
    }

    private YearProblem problem(double money) {
        var network = new DesignProblem(pieces.size() + 1, pieces, demands);
        List<Integer> firstBuildYears = Collections.nCopies(pieces.size(), 1);
        List<List<Double>> buildUses = pieces.stream()
                .map(piece -> List.of(piece.more().firstMoney(), 2.0))
                .toList();
        return new YearProblem(
                Collections.nCopies(YEARS, List.of(money, 100.0)),
                tasks,
                pieces.size() + 1,
                Optional.of(new Connections(network, taskOfBin, firstBuildYears, buildUses, wishes)));
    }

    private static AnnualResult solve(YearProblem problem) {
        return AnnualSolver.solve(
                problem, new AnnualSettings(1, 20, 300, 1, true, 0), false, Spread.ON_ONE_THREAD, () -> false);
    }

    private static YearPlan checked(YearProblem problem) {
        AnnualResult result = solve(problem);
        YearPlan plan = result.plan().orElseThrow();
        assertEquals(List.of(), result.shortages());
        assertEquals(List.of(), YearPlanChecker.problems(problem, plan));
        assertTrue(result.bound() >= plan.value());
        return plan;
    }

    @Test
    void twoTasksOneAYear() {
        street(FULL, NewDucts.NONE);
        street(FULL, NewDucts.NONE);
        connection(0, 2, 2, false, 2, 9, 8, 7);
        YearPlan plan = checked(problem(12));
        assertEquals(8, plan.value(), "served by the end of the second year");
        assertEquals(1, plan.served().get(0).orElseThrow().year());
        assertEquals(1, Math.abs(plan.yearOf().get(0) - plan.yearOf().get(1)), "one task in each of the years");
    }

    @Test
    void neededBeforeAnythingIsPossible() {
        street(FULL, NewDucts.NONE);
        street(FULL, NewDucts.NONE);
        connection(0, 2, 2, false, 0, 9, 0, 0);
        YearPlan plan = checked(problem(12));
        assertEquals(0, plan.value());
        assertTrue(plan.served().get(0).isEmpty());
        assertEquals(List.of(-1, -1), plan.yearOf(), "work that serves nothing is not done");
    }

    @Test
    void twoConnectionsShareOneTask() {
        street(FULL, NewDucts.NONE);
        connection(0, 1, 2, false, 2, 6, 6, 6);
        connection(1, 0, 1, false, 2, 6, 6, 6);
        YearPlan plan = checked(problem(10));
        assertEquals(12, plan.value());
        assertEquals(1, plan.yearOf().stream().filter(year -> year >= 0).count());
    }

    @Test
    void freePositionsServeWithoutATask() {
        street(new Bin(2, 2, 0), NewDucts.NONE);
        connection(0, 1, 2, false, 2, 5, 4, 3);
        YearPlan plan = checked(problem(0));
        assertEquals(5, plan.value());
        assertEquals(0, plan.served().get(0).orElseThrow().year(), "served from the first year on, at no cost");
        assertEquals(List.of(0.0, 0.0), plan.uses().get(0));
    }

    private void streetThatIsRecoveredAnywayAndALongerOneWithTwoFree() {
        street(FULL, NewDucts.NONE);
        tasks.set(0, new Task(List.of(5.0, 4.0, 3.0), 0, List.of(10.0, 1.0), 0, 2, true, List.of()));
        pieces.add(new Piece(0, 1, 500, List.of(new Bin(2, 2, 0)), NewDucts.NONE));
        taskOfBin.add(List.of(-1));
    }

    @Test
    void freePositionsServeBeforeWorkThatIsDoneAnyway() {
        streetThatIsRecoveredAnywayAndALongerOneWithTwoFree();
        connection(0, 1, 2, false, 2, 9, 9, 9);
        YearPlan plan = checked(problem(10));
        assertEquals(14, plan.value());
        assertEquals(List.of(0), plan.yearOf(), "the work is worth its money by itself");
        assertEquals(List.of(1), plan.served().get(0).orElseThrow().way(), "the longer way, which is free today");
    }

    @Test
    void freePositionsAreNotTakenFromOthers() {
        streetThatIsRecoveredAnywayAndALongerOneWithTwoFree();
        connection(0, 1, 2, false, 2, 9, 9, 9);
        connection(1, 0, 2, true, 2, 7, 7, 7);
        YearPlan plan = checked(problem(10));
        assertEquals(21, plan.value());
        assertEquals(List.of(0), plan.served().get(0).orElseThrow().way());
        assertEquals(List.of(1), plan.served().get(1).orElseThrow().way(), "the must is served first");
    }

    /** A plan that the search would not make: it recovers a duct for a connection that free positions serve. */
    @Test
    void workThatOnlyAConnectionNeededIsLeftOutOnceItIsServedWithoutIt() {
        street(FULL, NewDucts.NONE);
        pieces.add(new Piece(0, 1, 500, List.of(new Bin(2, 2, 0)), NewDucts.NONE));
        taskOfBin.add(List.of(-1));
        connection(0, 1, 2, false, 2, 9, 9, 9);
        YearProblem problem = problem(10);
        var network = new WishNetwork(problem);
        WishPrices prices = WishPriceSearch.of(
                problem, false, 20, new SearchSettings(1, 100, 1), Spread.ON_ONE_THREAD, () -> false);
        var plan = new WishPlan(network, prices, new SetUpLevels(problem));
        var recovered = new YearPlan.Served(0, List.of(0), List.of(0));
        List<Double> nothing = List.of(0.0, 0.0);
        plan.set(new YearPlan(
                List.of(0),
                List.of(Optional.of(recovered)),
                Map.of(),
                9,
                List.of(List.of(10.0, 1.0), nothing, nothing)));

        new ReadyWays(network, plan).choose();

        YearPlan ready = plan.plan();
        assertEquals(List.of(), YearPlanChecker.problems(problem, ready));
        assertEquals(9, ready.value());
        assertEquals(List.of(YearPlan.NEVER), ready.yearOf());
        assertEquals(List.of(1), ready.served().get(0).orElseThrow().way());
        assertEquals(nothing, ready.uses().get(0));
    }

    @Test
    void aMustThatOnlyANewDuctServes() {
        street(new Bin(0, 1, 10), ONE_NEW);
        connection(0, 1, 3, true, 2, 0, 0, 0);
        YearPlan plan = checked(problem(20));
        assertEquals(1, plan.built().get(0).size());
        assertTrue(plan.built().get(0).get(0) >= 1, "new ducts can be built from the second year on");
        assertEquals(
                List.of(1),
                plan.served().get(0).orElseThrow().bins(),
                "in the new duct, after the one bin that there is");
    }

    @Test
    void freePositionsFirstAndRecoveredOnesLater() {
        street(new Bin(1, 3, 10), NewDucts.NONE);
        connection(0, 1, 1, false, 2, 9, 0, 0);
        connection(0, 1, 2, false, 2, 4, 4, 4);
        YearProblem problem = problem(10);
        var lateTask = new Task(List.of(0.0, 0.0, 0.0), 0, List.of(10.0, 1.0), 1, 2, false, List.of());
        problem = problem.withTasks(List.of(lateTask));
        YearPlan plan = checked(problem);
        assertEquals(13, plan.value());
        assertEquals(0, plan.served().get(0).orElseThrow().year());
        assertTrue(plan.served().get(1).orElseThrow().year() >= 1);
    }

    @Test
    void aMustThatIsShortOfMoneyIsSaid() {
        street(FULL, NewDucts.NONE);
        street(FULL, NewDucts.NONE);
        connection(0, 2, 2, true, 0, 0, 0, 0);
        connection(0, 1, 1, false, 2, 5, 5, 5);
        AnnualResult result = solve(problem(12));
        assertEquals(
                List.of(new Shortage.NotServed(0, List.of(8.0, 0.0))),
                result.shortages(),
                "20 of 12 in the first year");
        YearPlan plan = result.plan().orElseThrow();
        assertEquals(5, plan.value(), "the others are served");
        assertFalse(YearPlanChecker.problems(problem(12), plan).isEmpty());
    }

    @Test
    void aMustWithoutAWayIsSaid() {
        street(FULL, NewDucts.NONE);
        connection(0, 1, 4, true, 2, 0, 0, 0);
        assertEquals(List.of(new Shortage.NoWay(0)), solve(problem(100)).shortages());
    }

    @Test
    void sameResultOnManyThreads() {
        YearProblem problem = TinyYears.drawn(11);
        var settings = new AnnualSettings(3, 10, 100, 2, true, 0);
        AnnualResult one = AnnualSolver.solve(problem, settings, false, Spread.ON_ONE_THREAD, () -> false);
        AnnualResult many = AnnualSolver.solve(
                problem, settings, false, org.spanroom.program.design.ManyThreads.SPREAD, () -> false);
        assertEquals(one, many);
    }

    @Test
    void brokenPlansAreFound() {
        street(new Bin(1, 3, 10), NewDucts.NONE);
        connection(0, 1, 2, false, 2, 9, 8, 7);
        YearProblem problem = problem(10);
        YearPlan good = checked(problem);
        YearPlan.Served served = good.served().get(0).orElseThrow();
        var early = new YearPlan(
                List.of(1),
                good.served(),
                good.built(),
                good.value(),
                List.of(List.of(0.0, 0.0), List.of(10.0, 1.0), List.of(0.0, 0.0)));
        assertFalse(YearPlanChecker.problems(problem, early).isEmpty(), "served before its bin is recovered");
        var elsewhere = new YearPlan.Served(served.year(), List.of(), List.of());
        var noWay =
                new YearPlan(good.yearOf(), List.of(Optional.of(elsewhere)), good.built(), good.value(), good.uses());
        assertFalse(YearPlanChecker.problems(problem, noWay).isEmpty(), "a way that does not reach its end");
        var rich = new YearPlan(good.yearOf(), good.served(), good.built(), good.value() + 1, good.uses());
        assertFalse(YearPlanChecker.problems(problem, rich).isEmpty(), "another value");
    }
}
