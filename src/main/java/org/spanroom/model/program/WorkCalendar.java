package org.spanroom.model.program;

import java.time.LocalDate;
import java.util.List;

/**
 * When each work order of a program is done, and what has no place.
 *
 * @param entries in the order of their days, then of the crews
 * @param unplaced what could not be placed in its year, in the order given
 */
public record WorkCalendar(List<Entry> entries, List<Unplaced> unplaced) {
    public WorkCalendar {
        entries = List.copyOf(entries);
        unplaced = List.copyOf(unplaced);
    }

    /**
     * The work on one span.
     *
     * @param order what is done
     * @param crew name of the crew
     * @param week the Monday of the week in which it begins
     * @param group number of the run of work without a break that shares set-ups, from 1; orders of one group follow one another
     * @param place place in the week of this crew, from 1
     * @param days the days of its shifts, in order
     * @param startHours hours of the first shift that are used before it begins
     * @param siteHours hours that it takes, less what it shares with the work before it
     * @param sharedHours hours that it shares with the work before it
     * @param applyBy the last day to apply for its permits or to give notice
     * @param checkBy the last day for its field check; the first day of work where none is needed
     */
    public record Entry(
            WorkOrder order,
            String crew,
            LocalDate week,
            int group,
            int place,
            List<LocalDate> days,
            double startHours,
            double siteHours,
            double sharedHours,
            LocalDate applyBy,
            LocalDate checkBy) {
        public Entry {
            days = List.copyOf(days);
        }
    }

    /** An order that has no place, with the reason in words. */
    public record Unplaced(WorkOrder order, String why) {}
}
