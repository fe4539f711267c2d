package org.spanroom.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanroom.program.NetworkBuilder.duct;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.model.program.CrewTeam;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.WorkCalendar;
import org.spanroom.program.annual.YearPlan;
import org.spanroom.program.annual.YearProblem;
import org.spanroom.program.calendar.CalendarChecker;

/**
 * Year plans and calendars that agree. Work takes 2 hours and costs 900 of which 50 at each vault can be shared. A crew with shifts of 2
 * hours does one span in each, so that its calendar shares nothing, while year plans share all.
 */
class ProgramPlannerTest {
    private static final CrewTeam SHORT_SHIFTS = new CrewTeam("short", 5, 2, CrewTeam.Shifts.DAYS);

    /** A star: all spans meet at V0. */
    private static DuctNetwork star(int spans) {
        var builder = new NetworkBuilder(spans + 1);
        for (int span = 1; span <= spans; span++) {
            builder.section(0, span, 50, duct("s" + span, 0, span, 900));
        }
        return builder.build();
    }

    private static ProgramPlanner.Planned plan(ProgramInputs inputs, YearSolver solver) {
        return new ProgramPlanner(inputs, new YearModel(inputs).problem(), solver)
                .plan(new ArrayList<>())
                .orElseThrow();
    }

    /** Adds up from the calendar alone what a year costs. */
    private static double money(ProgramPlanner.Planned planned, int year) {
        return planned.calendar().entries().stream()
                .filter(entry -> entry.order().year() == year)
                .mapToDouble(entry -> 900 - 100 * entry.sharedHours())
                .sum();
    }

    private static void assertAgrees(ProgramInputs inputs, ProgramPlanner.Planned planned) {
        assertThat(CalendarChecker.problems(inputs.rules(), planned.calendar())).isEmpty();
        assertThat(planned.calendar().unplaced()).isEmpty();
        assertThat(planned.calendar().entries()).hasSize(planned.orders().size());
        for (int task = 0; task < inputs.eligibleSpans().size(); task++) {
            int year = planned.plan().yearOf().get(task);
            assertThat(planned.orders().containsKey(task)).isEqualTo(year != YearPlan.NEVER);
            if (year != YearPlan.NEVER) {
                assertThat(planned.orders().get(task).year()).isEqualTo(year);
            }
        }
        for (int year = 0; year < inputs.budgets().size(); year++) {
            assertThat(planned.plan().uses().get(year).get(YearProblem.MONEY))
                    .isCloseTo(money(planned, year), within(1e-6));
        }
    }

    private static double value(ProgramInputs inputs, YearPlan plan) {
        YearProblem problem = new YearModel(inputs).problem();
        double value = 0;
        for (int task = 0; task < problem.tasks().size(); task++) {
            int year = plan.yearOf().get(task);
            value += year == YearPlan.NEVER
                    ? problem.tasks().get(task).valueNever()
                    : problem.tasks().get(task).values().get(year);
        }
        return value;
    }

    @Test
    void whatTheCalendarSharesNeedsNoRepair() {
        ProgramInputs inputs = new ProgramCase(star(3)).budgets(2_600.0, 0.0).inputs();
        var solver = new TinySolver();

        ProgramPlanner.Planned planned = plan(inputs, solver);

        assertAgrees(inputs, planned);
        assertThat(planned.orders()).hasSize(3);
        assertThat(planned.rounds()).isZero();
        assertThat(solver.efforts()).containsExactly(YearSolver.Effort.FULL);
        assertThat(planned.plan().value()).isEqualTo(planned.yearValue()).isEqualTo(planned.boundValue());
    }

    /** Year plans of 2,600 take all three spans into one year; the calendar takes 2,700. */
    @ParameterizedTest
    @ValueSource(doubles = {850, 1_750, 2_600, 2_650, 2_699, 2_700})
    void calendarsThatShareLessAreRepairedUntilTheyKeepTheBudgets(double budget) {
        ProgramInputs inputs = new ProgramCase(star(3))
                .budgets(budget, budget)
                .crews(SHORT_SHIFTS)
                .inputs();
        var solver = new TinySolver();

        ProgramPlanner.Planned planned = plan(inputs, solver);

        assertAgrees(inputs, planned);
        assertThat(money(planned, 0)).isLessThanOrEqualTo(budget);
        assertThat(money(planned, 1)).isLessThanOrEqualTo(budget);
        assertThat(planned.plan().value())
                .isCloseTo(value(inputs, planned.plan()), within(1e-6))
                .isLessThanOrEqualTo(planned.yearValue())
                .isLessThanOrEqualTo(planned.boundValue());
        assertThat(planned.rounds()).isEqualTo(solver.efforts().size() - 1);
        assertThat(solver.efforts().subList(1, solver.efforts().size()))
                .allMatch(effort -> effort == YearSolver.Effort.REPAIR);
        assertThat(solver.problems()).allSatisfy(problem -> {
            assertThat(problem.limits().get(0).get(YearProblem.MONEY)).isLessThanOrEqualTo(budget);
            assertThat(problem.limits().get(1).get(YearProblem.MONEY)).isLessThanOrEqualTo(budget);
        });
    }

    /** The same of hours: three spans take 5 of them where all set-ups are shared, and 6 in this calendar. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 2, 3.6, 5, 5.9, 6})
    void calendarsThatShareLessKeepTheCrewHours(double hours) {
        ProgramInputs inputs = new ProgramCase(star(3))
                .budgets(1e6)
                .mostHours(hours)
                .crews(SHORT_SHIFTS)
                .inputs();

        ProgramPlanner.Planned planned = plan(inputs, new TinySolver());

        assertAgrees(inputs, planned);
        assertThat(planned.calendar().entries().stream()
                        .mapToDouble(WorkCalendar.Entry::siteHours)
                        .sum())
                .isLessThanOrEqualTo(hours);
    }

    /** Two musts whose calendar exceeds the first year: the repair moves one of them, since none may be left out. */
    @Test
    void mustsThatTheCalendarCannotShareMoveToAnotherYear() {
        ProgramInputs inputs = new ProgramCase(star(2))
                .budgets(1_750.0, 1_750.0)
                .crews(SHORT_SHIFTS)
                .musts("s1", "s2")
                .inputs();

        ProgramPlanner.Planned planned = plan(inputs, new TinySolver());

        assertAgrees(inputs, planned);
        assertThat(planned.orders()).hasSize(2);
        assertThat(money(planned, 0)).isEqualTo(900);
        assertThat(money(planned, 1)).isEqualTo(900);
        assertThat(planned.rounds()).isPositive();
        assertThat(planned.shortfalls()).isEmpty();
    }

    /** Where no year can take them, the musts stay, other work goes, and the program says by how much the year exceeds its budget. */
    @Test
    void mustsAreNotTrimmed() {
        ProgramInputs inputs = new ProgramCase(star(3))
                .budgets(1_750.0)
                .crews(SHORT_SHIFTS)
                .musts("s1", "s2")
                .inputs();

        ProgramPlanner.Planned planned = plan(inputs, new TinySolver());

        assertAgrees(inputs, planned);
        assertThat(planned.orders().keySet()).containsExactly(0, 1);
        assertThat(planned.shortfalls()).hasSize(1);
        assertThat(planned.shortfalls().get(0))
                .contains("year 1")
                .contains("50")
                .contains("1,750");
    }

    /** Closed but for the last week of year 1, in which the crew has room for five spans: what has no place there moves or is left out. */
    @Test
    void workWithoutAPlaceInItsYearMovesOrIsLeftOut() {
        var of = new ProgramCase(star(3)).budgets(1e6, 1e6).crews(new CrewTeam("one", 1, 2, CrewTeam.Shifts.DAYS));
        for (int span = 1; span <= 3; span++) {
            of.closed("s" + span, LocalDate.of(2027, 2, 2), LocalDate.of(2028, 2, 6));
            of.closed("s" + span, LocalDate.of(2028, 2, 9), LocalDate.of(2029, 1, 31));
        }
        ProgramInputs inputs = of.inputs();

        ProgramPlanner.Planned planned = plan(inputs, new TinySolver());

        assertAgrees(inputs, planned);
        assertThat(planned.calendar().entries())
                .extracting(entry -> entry.days().get(0))
                .containsExactlyInAnyOrder(LocalDate.of(2027, 2, 1), LocalDate.of(2028, 2, 7));
        assertThat(planned.plan().value()).isLessThan(planned.yearValue());
    }

    /** A must that has no place is reported, with the reason; it does not vanish. */
    @Test
    void aMustWithoutAPlaceInTheCalendarIsReported() {
        var of = new ProgramCase(star(2)).budgets(1e6).crews(new CrewTeam("one", 1, 2, CrewTeam.Shifts.DAYS));
        for (int span = 1; span <= 2; span++) {
            of.closed("s" + span, LocalDate.of(2027, 2, 2), LocalDate.of(2028, 1, 31));
        }
        ProgramInputs inputs = of.musts("s1", "s2").inputs();

        ProgramPlanner.Planned planned = plan(inputs, new TinySolver());

        assertAgrees(inputs, planned);
        assertThat(planned.orders()).hasSize(1);
        String missing = planned.orders().containsKey(0) ? "s2" : "s1";
        assertThat(planned.shortfalls()).hasSize(1);
        assertThat(planned.shortfalls().get(0)).contains(missing).contains("must");
    }

    /** Of the work of a year that costs too much, that of the least worth for its money goes first. */
    @Test
    void trimmingLeavesOutWhatIsWorthLeast() {
        ProgramInputs inputs =
                new ProgramCase(star(3)).budgets(1_850.0).crews(SHORT_SHIFTS).inputs();
        YearProblem problem = new YearModel(inputs).problem();
        YearSolver all = (asked, effort) -> effort == YearSolver.Effort.FULL
                ? new YearSolver.Solved(
                        Optional.of(new YearPlan(
                                Collections.nCopies(3, 0), List.of(), Map.of(), 6_000, List.of(List.of(1_850.0, 5.0)))),
                        6_000,
                        List.of(),
                        true)
                : new YearSolver.Solved(Optional.empty(), 0, List.of("none"), true);

        ProgramPlanner.Planned planned =
                new ProgramPlanner(inputs, problem, all).plan(new ArrayList<>()).orElseThrow();

        assertAgrees(inputs, planned);
        assertThat(planned.orders().keySet()).containsExactly(1, 2);
        assertThat(planned.plan().value()).isEqualTo(5_000);
        assertThat(planned.yearValue()).isEqualTo(6_000);
    }

    @Test
    void withoutAPlanThereIsNoProgramAndTheReason() {
        ProgramInputs inputs =
                new ProgramCase(star(2)).budgets(100.0).musts("s1").inputs();
        var whyNot = new ArrayList<String>();

        Optional<ProgramPlanner.Planned> planned =
                new ProgramPlanner(inputs, new YearModel(inputs).problem(), new TinySolver()).plan(whyNot);

        assertThat(planned).isEmpty();
        assertThat(whyNot).containsExactly("the musts do not fit");
    }

    @Test
    void theSameInputsGiveTheSameProgram() {
        ProgramInputs inputs =
                new ProgramCase(star(4)).budgets(1_800.0, 1_800.0).inputs();

        WorkCalendar first = plan(inputs, new TinySolver()).calendar();

        assertThat(plan(inputs, new TinySolver()).calendar()).isEqualTo(first);
    }
}
