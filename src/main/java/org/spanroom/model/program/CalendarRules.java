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
 */
public record CalendarRules(
        LocalDate readyOn,
        List<ProgramYear> years,
        List<CrewTeam> crews,
        List<Closure> stops,
        Map<String, Integer> mostInWork) {
    public CalendarRules {
        years = List.copyOf(years);
        crews = List.copyOf(crews);
        stops = List.copyOf(stops);
        mostInWork = Map.copyOf(mostInWork);
    }

    /** Finds the number of the year that a day is in. */
    public OptionalInt findYear(LocalDate day) {
        for (int year = 0; year < years.size(); year++) {
            if (!day.isBefore(years.get(year).from()) && !day.isAfter(years.get(year).until())) {
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
