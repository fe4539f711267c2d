package org.spanroom.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanroom.program.NetworkBuilder.duct;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.spanroom.model.program.CurvePoint;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.PriceItem;
import org.spanroom.program.annual.Task;
import org.spanroom.program.annual.Wish;
import org.spanroom.program.annual.YearPlan;
import org.spanroom.program.annual.YearProblem;

/** What other budgets, draws and conditions make of small programs. */
class WhatIfsTest {
    /** Three spans apart from one another of 1, 2 and 3 positions; draws 0 and 1 of four have all, draw 2 lacks c, draw 3 has none. */
    private static DuctNetwork apart() {
        return new NetworkBuilder(6)
                .section(0, 1, 50, duct("a", 0, 1, 1_000, 0, 0b0111))
                .section(2, 3, 50, duct("b", 0, 2, 1_000, 0, 0b0111))
                .section(4, 5, 50, duct("c", 0, 3, 1_000, 0, 0b0011))
                .build();
    }

    private static YearPlan none(YearProblem problem) {
        return new YearPlan(
                problem.tasks().stream().map(task -> YearPlan.NEVER).toList(),
                List.of(),
                Map.of(),
                0,
                problem.limits().stream().map(year -> List.of(0.0, 0.0)).toList());
    }

    /** By hand: 500 buys none of the spans, 1,000 the best one, 1,500 no more, 2,000 the two best ones, 3,000 and 4,000 all. */
    @Test
    void theCurveSaysWhatBudgetsBuyAndWhatTheNextPositionCosts() {
        ProgramInputs inputs = new ProgramCase(apart()).budgets(2_000.0).inputs();

        List<CurvePoint> curve = new WhatIfs(new TinySolver()).curve(inputs);

        assertThat(curve)
                .extracting(CurvePoint::budgetMoney)
                .containsExactly(500.0, 1_000.0, 1_500.0, 2_000.0, 2_500.0, 3_000.0, 4_000.0);
        assertThat(curve).extracting(CurvePoint::positions).containsExactly(0, 3, 3, 5, 5, 6, 6);
        assertThat(curve)
                .extracting(CurvePoint::spentMoney)
                .containsExactly(0.0, 1_000.0, 1_000.0, 2_000.0, 2_000.0, 3_000.0, 3_000.0);
        assertThat(curve.get(0).marginalMoneyPerPosition()).isEmpty();
        assertThat(curve.get(1).marginalMoneyPerPosition().orElseThrow()).isCloseTo(1_000 / 3.0, within(1e-9));
        assertThat(curve.get(2).marginalMoneyPerPosition()).isEmpty();
        assertThat(curve.get(3).marginalMoneyPerPosition()).isEqualTo(OptionalDouble.of(500));
        assertThat(curve.get(5).marginalMoneyPerPosition()).isEqualTo(OptionalDouble.of(1_000));
        assertThat(curve).allSatisfy(point -> {
            assertThat(point.valueMoney()).isEqualTo(1_000 * point.positions());
            assertThat(point.boundMoney().orElseThrow()).isGreaterThanOrEqualTo(point.valueMoney());
            assertThat(point.spentMoney()).isLessThanOrEqualTo(point.budgetMoney());
        });
    }

    @Test
    void withoutALimitThereIsNoCurveAndBudgetsThatTheMustsExceedHaveNoPoint() {
        WhatIfs whatIfs = new WhatIfs(new TinySolver());

        assertThat(whatIfs.curve(new ProgramCase(apart())
                        .budgets(2_000.0, Double.POSITIVE_INFINITY)
                        .inputs()))
                .isEmpty();
        assertThat(whatIfs.curve(
                        new ProgramCase(apart()).budgets(2_000.0).musts("a").inputs()))
                .extracting(CurvePoint::budgetRatio)
                .containsExactly(0.5, 0.75, 1.0, 1.25, 1.5, 2.0);
    }

    /** Budgets of 2,000: b and c where they work, b and a in the third draw, nothing in the fourth. */
    @Test
    void chosenRatiosCountTheDrawsInWhichASpanIsChosen() {
        ProgramInputs inputs = new ProgramCase(apart()).budgets(2_000.0).inputs();
        YearProblem problem = new YearModel(inputs).problem();

        Map<Integer, Double> four = new WhatIfs(new TinySolver()).chosenRatios(inputs, problem, 64);

        assertThat(four).containsExactlyInAnyOrderEntriesOf(Map.of(0, 0.25, 1, 0.75, 2, 0.5));
        assertThat(new WhatIfs(new TinySolver()).chosenRatios(inputs, problem, 2))
                .containsExactlyInAnyOrderEntriesOf(Map.of(0, 0.0, 1, 1.0, 2, 1.0));
        assertThat(new WhatIfs(new TinySolver()).chosenRatios(inputs, problem, 0))
                .isEmpty();
    }

    /** A must that fails in a draw does not keep the other work of that draw from being chosen. */
    @Test
    void aMustThatFailsInADrawIsNoMustInIt() {
        ProgramInputs inputs =
                new ProgramCase(apart()).budgets(2_000.0).musts("c").inputs();

        Map<Integer, Double> ratios =
                new WhatIfs(new TinySolver()).chosenRatios(inputs, new YearModel(inputs).problem(), 4);

        assertThat(ratios).containsExactlyInAnyOrderEntriesOf(Map.of(0, 0.25, 1, 0.75, 2, 0.5));
    }

    @Test
    void thePriceOfAConditionIsWhatTheProgramIsWorthWithoutIt() {
        WhatIfs whatIfs = new WhatIfs(new TinySolver());
        WhatIfs.Amounts with = whatIfs.amounts(
                        new ProgramCase(apart()).budgets(1_000.0).musts("a").inputs())
                .orElseThrow();
        WhatIfs.Amounts without = whatIfs.amounts(
                        new ProgramCase(apart()).budgets(1_000.0).inputs())
                .orElseThrow();

        assertThat(without.over(with, "must", "a")).isEqualTo(new PriceItem("must", "a", 2_000, 2, 0, 0));
        assertThat(whatIfs.amounts(
                        new ProgramCase(apart()).budgets(500.0).musts("a").inputs()))
                .isEmpty();
    }

    private static ProgramInputs asking() {
        return new ProgramCase(apart())
                .budgets(1_000.0, 1_000.0)
                .connect("c", 0, 1, 1, 100, "2027-12-31", false)
                .connect("other", 2, 3, 1, 100, "", true)
                .inputs();
    }

    /** A solver that serves the first connection where it is a must and money is at least a limit. */
    private static YearSolver serving(double leastMoney, List<YearProblem> asked) {
        return (problem, effort) -> {
            asked.add(problem);
            boolean isServed =
                    problem.connections().orElseThrow().wishes().get(0).isMust()
                            && problem.limits().get(0).get(YearProblem.MONEY) >= leastMoney;
            YearPlan none = none(problem);
            var plan = new YearPlan(
                    none.yearOf(),
                    List.of(
                            isServed ? Optional.of(new YearPlan.Served(0, List.of(0), List.of(0))) : Optional.empty(),
                            Optional.empty()),
                    Map.of(),
                    300,
                    List.of(List.of(1_234.0, 2.0), List.of(0.0, 0.0)));
            return new YearSolver.Solved(Optional.of(plan), 300, List.of(), true);
        };
    }

    private static String takes(double leastMoney, List<YearProblem> asked) {
        ProgramInputs inputs = asking();
        YearProblem problem = new YearModel(inputs).problem();
        var plan = new YearPlan(
                List.of(-1, -1, -1),
                List.of(Optional.empty(), Optional.of(new YearPlan.Served(0, List.of(1), List.of(0)))),
                Map.of(),
                400,
                List.of(List.of(0.0, 0.0), List.of(0.0, 0.0)));
        Map<String, String> takes =
                new WhatIfs(serving(leastMoney, asked)).takes(inputs, problem, plan, new WhatIfs.Amounts(400, 0, 0, 0));
        assertThat(takes).containsOnlyKeys("c");
        return takes.getOrDefault("c", "");
    }

    @Test
    void whatItTakesIsFirstSoughtWithinTheBudgets() {
        assertThat(takes(1_000, new ArrayList<>()))
                .isEqualTo("to serve it, the rest of the program would be worth 100 less");
    }

    /** Without a limit of money only this connection is asked for: all else is worth nothing, and none of it is a must. */
    @Test
    void thenWithoutALimitOfMoneyForItAlone() {
        var asked = new ArrayList<YearProblem>();

        assertThat(takes(1e9, asked)).isEqualTo("it alone would cost 1,234 by year 1, more than the budgets give");
        YearProblem alone = asked.get(1);
        assertThat(alone.limits().get(0).get(YearProblem.MONEY)).isInfinite();
        assertThat(alone.limits().get(0).get(YearProblem.HOURS)).isFinite();
        assertThat(alone.tasks()).noneMatch(Task::isMust);
        assertThat(alone.tasks()).allMatch(task -> task.values().stream().allMatch(value -> value == 0));
        assertThat(alone.connections().orElseThrow().wishes())
                .extracting(Wish::isMust)
                .containsExactly(true, false);
    }

    @Test
    void whatNothingServesSaysSo() {
        YearSolver never = (problem, effort) -> new YearSolver.Solved(Optional.empty(), 0, List.of(), true);
        ProgramInputs inputs = asking();
        YearProblem problem = new YearModel(inputs).problem();
        var plan = new YearPlan(
                List.of(-1, -1, -1),
                List.of(Optional.empty(), Optional.empty()),
                Map.of(),
                0,
                List.of(List.of(0.0, 0.0), List.of(0.0, 0.0)));

        assertThat(new WhatIfs(never).takes(inputs, problem, plan, new WhatIfs.Amounts(0, 0, 0, 0)))
                .containsEntry("c", "no work can serve it by then, whatever it costs")
                .containsKey("other");
    }
}
