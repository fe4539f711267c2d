package org.spanroom.model.program;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.CalendarDay;

/**
 * Days from one to another, every year or once.
 *
 * @param name what they are, for people
 * @param from the first day: a month and day (12-15) for every year, or a date (2027-05-09) for once
 * @param until the last day, in the same form; where it is earlier in the year, it is in the next year
 */
public record YearlyDays(String name, String from, String until) {
    /** Returns whether a text is a day in either form. */
    public static boolean isDay(String text) {
        return isDate(text) || isMonthDay(text);
    }

    /** Returns whether a text is a date of the years that a {@link CalendarDay} has. */
    public static boolean isDate(String text) {
        return CalendarDay.find(text).isPresent();
    }

    private static boolean isMonthDay(String text) {
        try {
            monthDay(text);
            return true;
        } catch (DateTimeException notADay) {
            return false;
        }
    }

    private static MonthDay monthDay(String text) {
        return MonthDay.parse("--" + text);
    }

    /** Returns all of these days that touch a range of days, in order. */
    public List<Closure> within(LocalDate first, LocalDate last) {
        var closures = new ArrayList<Closure>();
        if (isDate(from)) {
            closures.add(new Closure(name, LocalDate.parse(from), LocalDate.parse(until)));
        } else {
            MonthDay begins = monthDay(from);
            MonthDay ends = monthDay(until);
            for (int year = first.getYear() - 1; year <= last.getYear(); year++) {
                int endYear = ends.isBefore(begins) ? year + 1 : year;
                closures.add(new Closure(name, begins.atYear(year), ends.atYear(endYear)));
            }
        }
        closures.removeIf(days -> days.until().isBefore(first) || days.from().isAfter(last));
        return closures;
    }
}
