package org.spanroom.program;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.Closure;
import org.spanroom.model.program.CrewTeam;
import org.spanroom.model.program.WorkWeek;

/** Open days and crew-hours, counted by hand: 2027 begins on a Friday. */
class WorkDaysTest {
    private static final LocalDate DAY = LocalDate.of(2027, 1, 4);

    private static CalendarRules rules(List<Closure> stops, CrewTeam... crews) {
        return new CalendarRules(
                DAY.minusDays(30),
                List.of(
                        new CalendarRules.ProgramYear(DAY, DAY.plusDays(27)),
                        new CalendarRules.ProgramYear(DAY.plusDays(28), DAY.plusDays(55))),
                List.of(crews),
                stops,
                Map.of());
    }

    private static CrewTeam crew(int shifts, double hours) {
        return new CrewTeam("crew " + shifts, shifts, hours, CrewTeam.Shifts.DAYS);
    }

    /** Four whole weeks: 4 x 4 shifts of 7.5 h and 4 x 5 of 8 h. */
    @Test
    void crewsHaveTheirShiftsOfEachWeek() {
        var days = new WorkDays(rules(List.of(), crew(4, 7.5), crew(5, 8)));

        assertThat(days.crewHours(0)).isEqualTo(16 * 7.5 + 20 * 8);
        assertThat(days.crewHours(1)).isEqualTo(days.crewHours(0));
    }

    /** From Thursday of the first week to Monday of the second: a crew of 4 shifts loses one and one. */
    @Test
    void shiftsOnClosedDaysAreLost() {
        var stop = new Closure("fair", DAY.plusDays(3), DAY.plusDays(7));
        var days = new WorkDays(rules(List.of(stop), crew(4, 7.5)));

        assertThat(days.crewHours(0)).isEqualTo(14 * 7.5);
        assertThat(days.crewHours(1)).isEqualTo(16 * 7.5);
    }

    /** By hand: Tuesday to Friday, and one Wednesday is a holiday. A crew of three works Tuesday to Thursday and loses it. */
    @Test
    void hoursAreThoseOfWorkingDays() {
        var week = new WorkWeek(
                List.of(DayOfWeek.FRIDAY, DayOfWeek.TUESDAY, DayOfWeek.WEDNESDAY, DayOfWeek.THURSDAY),
                Set.of(DAY.plusDays(9)));
        CalendarRules every = rules(List.of(), crew(3, 7.5), crew(4, 10));
        var rules = new CalendarRules(
                every.readyOn(), every.years(), every.crews(), every.stops(), every.mostInWork(), week);
        var days = new WorkDays(rules);

        assertThat(DAY.getDayOfWeek()).isEqualTo(DayOfWeek.MONDAY);
        assertThat(days.crewHours(0)).isEqualTo(11 * 7.5 + 15 * 10);
        assertThat(days.crewHours(1)).isEqualTo(12 * 7.5 + 16 * 10);
        assertThat(rules.isShift(crew(3, 7.5), DAY)).isFalse();
        assertThat(rules.isShift(crew(3, 7.5), DAY.plusDays(1))).isTrue();
        assertThat(rules.isShift(crew(3, 7.5), DAY.plusDays(4))).isFalse();
        assertThat(rules.isShift(crew(3, 7.5), DAY.plusDays(9))).isFalse();
        // The Monday before a Tuesday is none, so the Friday; the Wednesday before a Thursday is the holiday, so the
        // Tuesday.
        assertThat(rules.deadline(DAY.plusDays(15), 1)).isEqualTo(DAY.plusDays(11));
        assertThat(rules.deadline(DAY.plusDays(10), 1)).isEqualTo(DAY.plusDays(8));
        // The day of the plan is no working day, and before it nothing can be applied for.
        assertThat(week.holds(rules.readyOn())).isFalse();
        assertThat(rules.deadline(rules.readyOn().plusDays(1), 1)).isEqualTo(rules.readyOn());
    }

    @Test
    void workIsPossibleFromTheFirstOpenDayOn() {
        var days = new WorkDays(rules(List.of(), crew(4, 7.5)));

        assertThat(days.firstYear(LocalDate.MIN, List.of())).hasValue(0);
        assertThat(days.firstYear(DAY.plusDays(24), List.of())).hasValue(0);
        // From Friday of the fourth week on, a crew of four shifts has no day left in the first year.
        assertThat(days.firstYear(DAY.plusDays(25), List.of())).hasValue(1);
        assertThat(days.firstYear(DAY.plusDays(56), List.of())).isEmpty();
        assertThat(days.lastYear(LocalDate.MIN, List.of())).hasValue(1);
    }

    @Test
    void closuresCloseYears() {
        var days = new WorkDays(rules(List.of(), crew(4, 7.5)));
        var first = new Closure("works", LocalDate.MIN, DAY.plusDays(27));
        var second = new Closure("works", DAY.plusDays(28), LocalDate.MAX);

        assertThat(days.firstYear(LocalDate.MIN, List.of(first))).hasValue(1);
        assertThat(days.lastYear(LocalDate.MIN, List.of(second))).hasValue(0);
        assertThat(days.firstYear(LocalDate.MIN, List.of(first, second))).isEmpty();
        assertThat(days.lastYear(LocalDate.MIN, List.of(first, second))).isEmpty();
    }
}
