package org.spanroom.program.calendar;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.stream.LongStream;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.CalendarRules.ProgramYear;
import org.spanroom.model.program.CrewTeam;

/**
 * The shifts of all crews in the weeks of a program. Weeks are numbered from that of the program's first day. Days are counted as
 * by {@link LocalDate#toEpochDay}.
 *
 * <p>A crew works on the first {@code shiftsPerWeek} working days of a week. A holiday and a day in a stop window are lost: they are not made up for on a day
 * on which the crew does not usually work. Unmodifiable.
 */
final class CrewWeeks {
    private static final int DAYS_OF_WEEK = 7;

    private final CalendarRules rules;
    private final LocalDate firstMonday;
    private final int weeks;
    private final long[][][] shifts;

    CrewWeeks(CalendarRules rules) {
        this.rules = rules;
        List<ProgramYear> years = rules.years();
        firstMonday = monday(years.isEmpty() ? rules.readyOn() : years.get(0).from());
        weeks = years.isEmpty() ? 0 : weekOf(years.get(years.size() - 1).until().toEpochDay()) + 1;
        shifts = new long[rules.crews().size()][weeks][];
        for (int crew = 0; crew < shifts.length; crew++) {
            for (int week = 0; week < weeks; week++) {
                shifts[crew][week] = openDays(week, crew(crew));
            }
        }
    }

    private long[] openDays(int week, CrewTeam crew) {
        long from = monday(week).toEpochDay();
        return LongStream.range(from, from + DAYS_OF_WEEK)
                .filter(day -> rules.isShift(crew, LocalDate.ofEpochDay(day)))
                .toArray();
    }

    private static LocalDate monday(LocalDate day) {
        return day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }

    LocalDate monday(int week) {
        return firstMonday.plus(week, ChronoUnit.WEEKS);
    }

    /** Returns the number of the week that a day is in; outside of the program it is negative, or {@link #weeks} or more. */
    int weekOf(long day) {
        return (int) Math.floorDiv(day - firstMonday.toEpochDay(), DAYS_OF_WEEK);
    }

    int weeks() {
        return weeks;
    }

    int crews() {
        return shifts.length;
    }

    CrewTeam crew(int crew) {
        return rules.crews().get(crew);
    }

    double shiftHours(int crew) {
        return crew(crew).shiftHours();
    }

    /** Returns the hours of a week of a crew without stop windows. */
    double usualWeekHours(int crew) {
        return rules.usualShifts(crew(crew)) * crew(crew).shiftHours();
    }

    /** Returns the days of a crew's shifts in a week, in order, without those in stop windows. Not to be changed. */
    long[] shifts(int crew, int week) {
        return shifts[crew][week];
    }

    /** Returns the hours of a crew's shifts in a week. */
    double weekHours(int crew, int week) {
        return shifts[crew][week].length * shiftHours(crew);
    }

    CalendarRules rules() {
        return rules;
    }
}
