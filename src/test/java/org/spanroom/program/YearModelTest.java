package org.spanroom.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanroom.program.NetworkBuilder.ON_DATE;
import static org.spanroom.program.NetworkBuilder.duct;
import static org.spanroom.program.NetworkBuilder.free;
import static org.spanroom.program.NetworkBuilder.newDuct;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.model.program.Closure;
import org.spanroom.model.program.CrewTeam;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.YearBudget;
import org.spanroom.program.annual.Connections;
import org.spanroom.program.annual.SetUp;
import org.spanroom.program.annual.Task;
import org.spanroom.program.annual.Wish;
import org.spanroom.program.annual.YearProblem;

/** Eligible spans and connections as a year problem: three years from February 1, 2027 on; the plan is of January 15, 2027. */
class YearModelTest {
    private static final LocalDate FIRST_WEEK_OF_YEAR_2 = LocalDate.of(2028, 2, 7);
    private static final Double[] THREE_YEARS = {5_000.0, 6_000.0, 7_000.0};

    private static DuctNetwork one(DuctOffer duct) {
        return new NetworkBuilder(2).section(0, 1, 50, duct).build();
    }

    private static YearProblem problem(ProgramCase of) {
        return new YearModel(of.inputs()).problem();
    }

    private static Task task(ProgramCase of) {
        return problem(of).tasks().get(0);
    }

    private static List<Boolean> possible(Task task) {
        return List.of(task.isPossibleIn(0), task.isPossibleIn(1), task.isPossibleIn(2));
    }

    /** Feb 1, 2028 is 382 days after the plan, Feb 1, 2029 is 748; the program ends on Jan 31, 2030, a Thursday, 1,112 days after it. */
    @ParameterizedTest
    @CsvSource({
        "0, true, true, true",
        "378, true, true, true",
        "382, false, true, true",
        "748, false, false, true",
        "1112, false, false, true",
        "1113, false, false, false"
    })
    void leadDaysCloseTheYearsBeforeThem(int leadDays, boolean first, boolean second, boolean third) {
        Task task = task(new ProgramCase(one(duct("a", 0, 2, 900, leadDays, 0b1111))).budgets(THREE_YEARS));

        assertThat(possible(task)).containsExactly(first, second, third);
    }

    @Test
    void anEmbargoClosesTheYearsBeforeItsEnd() {
        DuctOffer duct = duct("a", 0, 2, 900, 30, Optional.of(LocalDate.of(2028, 7, 1)), OptionalLong.of(0b1111));

        assertThat(possible(task(new ProgramCase(one(duct)).budgets(THREE_YEARS))))
                .containsExactly(false, true, true);
    }

    @Test
    void yearsThatAreClosedFromEndToEndAreNotPossible() {
        DuctNetwork network = one(duct("a", 0, 2, 900));

        assertThat(possible(task(new ProgramCase(network)
                        .budgets(THREE_YEARS)
                        .closed("a", LocalDate.of(2027, 1, 1), LocalDate.of(2027, 6, 30))
                        .closed("a", LocalDate.of(2027, 7, 1), LocalDate.of(2028, 1, 31)))))
                .containsExactly(false, true, true);
        assertThat(possible(task(new ProgramCase(network)
                        .budgets(THREE_YEARS)
                        .closed("a", LocalDate.of(2029, 2, 1), LocalDate.MAX))))
                .containsExactly(true, true, false);
        assertThat(possible(
                        task(new ProgramCase(network).budgets(THREE_YEARS).closed("a", LocalDate.MIN, LocalDate.MAX))))
                .containsExactly(false, false, false);
        assertThat(possible(task(new ProgramCase(network)
                        .budgets(THREE_YEARS)
                        .stops(new Closure("stop", LocalDate.of(2027, 1, 1), LocalDate.of(2028, 3, 1))))))
                .containsExactly(false, true, true);
    }

    @ParameterizedTest
    @CsvSource({
        "DAYS, false, true",
        "DAYS, true, false",
        "NIGHTS, false, false",
        "NIGHTS, true, true",
        "EITHER, false, true",
        "EITHER, true, true"
    })
    void workNeedsACrewOfItsShifts(CrewTeam.Shifts shifts, boolean isNight, boolean isPossible) {
        ProgramCase of = new ProgramCase(one(duct("a", 0, 2, 900)))
                .budgets(THREE_YEARS)
                .crews(new CrewTeam("only", 4, 8, shifts));

        assertThat(possible(task(isNight ? of.nights("a") : of))).containsOnly(isPossible);
    }

    @Test
    void worthFallsByTheRatioEachYear() {
        Task task = task(
                new ProgramCase(one(duct("a", 1, 4, 900))).budgets(THREE_YEARS).ratios(0.8, 1));

        assertThat(task.values().get(0)).isEqualTo(3_000);
        assertThat(task.values().get(1)).isCloseTo(2_400, within(1e-9));
        assertThat(task.values().get(2)).isCloseTo(1_920, within(1e-9));
        assertThat(task.valueNever()).isZero();
        assertThat(task.uses()).containsExactly(900.0, 2.0);
        assertThat(task.isMust()).isFalse();
    }

    @Test
    void whatIsWorthNothingByItselfHasNoValueAndAnEmbargoTakesNone() {
        DuctNetwork network = one(duct("a", 0, 2, 900));

        assertThat(task(new ProgramCase(network).excluded("a", "splice_inside")).values())
                .containsOnly(0.0);
        assertThat(task(new ProgramCase(network).excluded("a", "embargo"))
                        .values()
                        .get(0))
                .isEqualTo(2_000.0);
    }

    @Test
    void anotherYearThanThatOfTheEarlierProgramCostsTheChange() {
        Task task = task(new ProgramCase(one(duct("a", 0, 2, 900)))
                .budgets(THREE_YEARS)
                .ratios(1, 1)
                .previous("a", 1, 500));
        Task other = task(new ProgramCase(one(duct("b", 0, 2, 900)))
                .budgets(THREE_YEARS)
                .ratios(1, 1)
                .previous("a", 1, 500));

        assertThat(task.values()).containsExactly(1_500.0, 2_000.0, 1_500.0);
        assertThat(task.valueNever()).isEqualTo(-500);
        assertThat(other.values()).containsOnly(2_000.0);
        assertThat(other.valueNever()).isZero();
    }

    /** Work by day shares with work by day at the same vault only; the money of what is shared counts as the budget counts it. */
    @Test
    void setUpsAreSharedByVaultAndByDayOrNight() {
        DuctNetwork network = new NetworkBuilder(3)
                .section(0, 1, 50, duct("a", 0, 2, 900))
                .section(1, 2, 50, duct("b", 0, 2, 900), duct("night", 0, 2, 900))
                .build();
        YearProblem problem = problem(new ProgramCase(network)
                .nights("night")
                .budgetRatio(1.5)
                .crews(new CrewTeam("both", 4, 8, CrewTeam.Shifts.EITHER)));

        List<SetUp> a = problem.tasks().get(0).setUps();
        List<SetUp> b = problem.tasks().get(1).setUps();
        List<SetUp> night = problem.tasks().get(2).setUps();
        assertThat(a.get(1).place()).isEqualTo(b.get(0).place());
        assertThat(List.of(
                        a.get(0).place(),
                        a.get(1).place(),
                        b.get(1).place(),
                        night.get(0).place(),
                        night.get(1).place()))
                .doesNotHaveDuplicates()
                .allSatisfy(place -> assertThat(place).isBetween(0, problem.places() - 1));
        assertThat(a.get(0).uses()).containsExactly(0.5 * 100 * 1.5, 0.5);
        assertThat(problem.tasks().get(0).uses()).containsExactly(1_350.0, 2.0);
    }

    @ParameterizedTest
    @CsvSource({
        "'', 2, 100, 90, 81",
        "2027-01-31, -1, 0, 0, 0",
        "2027-02-01, 0, 100, 0, 0",
        "2028-01-31, 0, 100, 0, 0",
        "2028-02-01, 1, 100, 90, 0",
        "2040-01-01, 2, 100, 90, 81"
    })
    void aConnectionIsWorthItsValueUpToTheYearInWhichItIsNeeded(
            String neededBy, int lastYear, double first, double second, double third) {
        YearProblem problem = problem(new ProgramCase(one(duct("a", 0, 2, 900)))
                .budgets(THREE_YEARS)
                .ratios(0.9, 2)
                .connect("c", 0, 1, 1, 50, neededBy, true));

        Wish wish = problem.connections().orElseThrow().wishes().get(0);
        assertThat(wish.lastYear()).isEqualTo(lastYear);
        assertThat(wish.isMust()).isTrue();
        assertThat(wish.values().get(0)).isCloseTo(first, within(1e-9));
        assertThat(wish.values().get(1)).isCloseTo(second, within(1e-9));
        assertThat(wish.values().get(2)).isCloseTo(third, within(1e-9));
    }

    @Test
    void binsNameTheTasksThatRecoverThem() {
        DuctNetwork network = new NetworkBuilder(3)
                .section(0, 1, 50, free("free", 2), duct("a", 0, 2, 900))
                .section(1, 2, 50, newDuct(3, 2_000, 500, 400), duct("b", 0, 2, 900))
                .section(1, 2, 50, newDuct(3, 2_000, 500, 4_000))
                .build();
        Connections connections = problem(new ProgramCase(network)
                        .budgets(THREE_YEARS)
                        .budgetRatio(1.5)
                        .connect("c", 0, 2, 1, 50, "", false))
                .connections()
                .orElseThrow();

        assertThat(connections.taskOfBin()).containsExactly(List.of(-1, 0), List.of(1), List.of());
        assertThat(connections.firstBuildYear()).containsExactly(0, 1, 3);
        assertThat(connections.buildUses().get(1)).containsExactly(3_000.0, 0.0);
        assertThat(connections.buildUse(1, YearProblem.MONEY, false)).isCloseTo(750, within(1e-9));
    }

    @Test
    void limitsAreTheBudgetsAndAllHoursOfTheCrewsOnOpenDays() {
        ProgramInputs inputs = new ProgramCase(one(duct("a", 0, 2, 900)))
                .budgets(5_000.0, Double.POSITIVE_INFINITY)
                .crews(
                        new CrewTeam("five", 5, 8, CrewTeam.Shifts.DAYS),
                        new CrewTeam("three", 3, 10, CrewTeam.Shifts.NIGHTS))
                .stops(new Closure("stop", FIRST_WEEK_OF_YEAR_2, FIRST_WEEK_OF_YEAR_2.plusDays(6)))
                .inputs();
        int fiveDays = 0;
        int threeDays = 0;
        for (LocalDate day = LocalDate.of(2027, 2, 1); day.isBefore(LocalDate.of(2028, 2, 1)); day = day.plusDays(1)) {
            fiveDays += day.getDayOfWeek().getValue() <= 5 ? 1 : 0;
            threeDays += day.getDayOfWeek().getValue() <= 3 ? 1 : 0;
        }

        YearProblem problem = new YearModel(inputs).problem();

        assertThat(problem.connections()).isEmpty();
        assertThat(problem.limits().get(0)).containsExactly(5_000.0, fiveDays * 8.0 + threeDays * 10.0);
        assertThat(problem.limits().get(1).get(0)).isInfinite();
        assertThat(YearModel.scaled(List.of(new YearBudget(100, 7)), 1.5)).containsExactly(new YearBudget(150, 7));
        assertThat(problem.limits().get(1).get(1))
                .isLessThan(problem.limits().get(0).get(1));
        assertThat(inputs.rules().readyOn()).isEqualTo(ON_DATE);
    }
}
