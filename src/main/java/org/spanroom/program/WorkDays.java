package org.spanroom.program;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalInt;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.Closure;
import org.spanroom.model.program.CrewTeam;

/** Which days of a program's years are open for work, and how many hours its crews have. */
final class WorkDays {
    private final CalendarRules rules;

    WorkDays(CalendarRules rules) {
        this.rules = rules;
    }

    /** Returns the hours on site that all crews have in a year; a crew works the first working days of a week, and loses those that are closed. */
    double crewHours(int year) {
        CalendarRules.ProgramYear days = rules.years().get(year);
        double hours = 0;
        for (LocalDate day = days.from(); !day.isAfter(days.until()); day = day.plusDays(1)) {
            for (CrewTeam crew : rules.crews()) {
                hours += rules.isShift(crew, day) ? crew.shiftHours() : 0;
            }
        }
        return hours;
    }

    /** Returns the first year with a day on which work can be done that is not before a day and not closed. */
    OptionalInt firstYear(LocalDate notBefore, List<Closure> closures) {
        for (int year = 0; year < rules.years().size(); year++) {
            if (hasDay(year, notBefore, closures)) {
                return OptionalInt.of(year);
            }
        }
        return OptionalInt.empty();
    }

    /** Returns the last such year. */
    OptionalInt lastYear(LocalDate notBefore, List<Closure> closures) {
        for (int year = rules.years().size() - 1; year >= 0; year--) {
            if (hasDay(year, notBefore, closures)) {
                return OptionalInt.of(year);
            }
        }
        return OptionalInt.empty();
    }

    /** Returns whether a year has a day on which work can be done that is not before a day and not closed. */
    boolean hasDay(int year, LocalDate notBefore, List<Closure> closures) {
        CalendarRules.ProgramYear days = rules.years().get(year);
        LocalDate day = days.from().isBefore(notBefore) ? notBefore : days.from();
        while (!day.isAfter(days.until())) {
            if (!isUsualShift(day)) {
                day = day.plusDays(1);
                continue;
            }
            LocalDate open = after(after(day, rules.stops()), closures);
            if (open.equals(day)) {
                return true;
            }
            day = open;
        }
        return false;
    }

    /** Returns the day, or the first one after the closures that hold on it. */
    private static LocalDate after(LocalDate day, List<Closure> closures) {
        LocalDate open = day;
        for (Closure closure : closures) {
            if (closure.holds(open)) {
                open = closure.until().isEqual(LocalDate.MAX)
                        ? LocalDate.MAX.minusDays(8)
                        : closure.until().plusDays(1);
            }
        }
        return open;
    }

    private boolean isUsualShift(LocalDate day) {
        return rules.crews().stream().anyMatch(crew -> rules.isUsualShift(crew, day));
    }
}
