package org.spanroom.model.program;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * What holds for the whole calendar of a program.
 *
 * @param readyOn the day from which permits can be applied for and field checks done: the day of the plan
 * @param years the first and the last day of each year of the program; they follow one another
 * @param crews the crews, in the order in which they are used
 * @param stops stop windows of all work
 * @param mostInWork of a district, how many spans may be in work in one week
 * @param workWeek working days
 */
public record CalendarRules(
        LocalDate readyOn,
        List<ProgramYear> years,
        List<CrewTeam> crews,
        List<Closure> stops,
        Map<String, Integer> mostInWork,
        WorkWeek workWeek) {
    public CalendarRules {
        years = List.copyOf(years);
        crews = List.copyOf(crews);
        stops = List.copyOf(stops);
        mostInWork = Map.copyOf(mostInWork);
    }

    /** Rules by which each day of the week is a working day. */
    public CalendarRules(
            LocalDate readyOn,
            List<ProgramYear> years,
            List<CrewTeam> crews,
            List<Closure> stops,
            Map<String, Integer> mostInWork) {
        this(readyOn, years, crews, stops, mostInWork, WorkWeek.EVERY_DAY);
    }

    /** Returns how many shifts a crew has in a week without holidays and stop windows. */
    public int usualShifts(CrewTeam crew) {
        return Math.min(crew.shiftsPerWeek(), workWeek.days().size());
    }

    /** Returns whether a crew has a shift on a day, if no stop window holds: it works the first working days of a week, and loses holidays. */
    public boolean isUsualShift(CrewTeam crew, LocalDate day) {
        return workWeek.isAmongFirst(day, crew.shiftsPerWeek()) && workWeek.holds(day);
    }

    /** Returns whether a crew has a shift on a day. */
    public boolean isShift(CrewTeam crew, LocalDate day) {
        return isUsualShift(crew, day) && stops.stream().noneMatch(stop -> stop.holds(day));
    }

    /**
     * Returns the last working day that is so many days before another one, or earlier; where that is before the day of the plan, the day
     * itself, whether it is a working day or not.
     */
    public LocalDate deadline(LocalDate first, int days) {
        LocalDate latest = first.minusDays(days);
        LocalDate workday = workWeek.onOrBefore(latest);
        return workday.isBefore(readyOn) ? latest : workday;
    }

    /** Finds the number of the year that a day is in. */
    public OptionalInt findYear(LocalDate day) {
        for (int year = 0; year < years.size(); year++) {
            if (!day.isBefore(years.get(year).from())
                    && !day.isAfter(years.get(year).until())) {
                return OptionalInt.of(year);
            }
        }
        return OptionalInt.empty();
    }

    /** The first and the last day of a year of the program. */
    public record ProgramYear(LocalDate from, LocalDate until) {
        public ProgramYear {
            if (until.isBefore(from)) {
                throw new IllegalArgumentException("from " + from + " until " + until);
            }
        }
    }
}
