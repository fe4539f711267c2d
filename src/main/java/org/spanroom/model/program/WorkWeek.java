package org.spanroom.model.program;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;

/**
 * The days on which crews work and offices are open: some days of each week, without holidays.
 *
 * @param days working days of a week, from Monday on; at least one
 * @param holidays days of these that are none
 */
public record WorkWeek(List<DayOfWeek> days, Set<LocalDate> holidays) {
    /** Each day of the week is a working day, and none is a holiday. */
    public static final WorkWeek EVERY_DAY = new WorkWeek(List.of(DayOfWeek.values()), Set.of());

    public WorkWeek {
        days = days.stream().distinct().sorted().toList();
        holidays = Set.copyOf(holidays);
        if (days.isEmpty()) {
            throw new IllegalArgumentException("a week needs a working day");
        }
    }

    /** Returns whether a day is a working day. */
    public boolean holds(LocalDate day) {
        return days.contains(day.getDayOfWeek()) && !holidays.contains(day);
    }

    /** Returns whether a day is one of the first days of its week that are usually working days, holidays among them. */
    boolean isAmongFirst(LocalDate day, int count) {
        int place = days.indexOf(day.getDayOfWeek());
        return place >= 0 && place < count;
    }

    /** Returns the day, or the last working day before it. */
    LocalDate onOrBefore(LocalDate day) {
        LocalDate found = day;
        while (!holds(found)) {
            found = found.minusDays(1);
        }
        return found;
    }
}
