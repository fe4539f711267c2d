package org.spanroom.program.calendar;

import java.util.List;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.WorkCalendar;
import org.spanroom.model.program.WorkOrder;

/**
 * Puts work orders into shifts of crews, within each order's year: as much priority as has room, then as many shared set-ups as
 * possible, then as early as possible. Where two rules leave a choice:
 *
 * <ul>
 *   <li>A crew's shift on a day of a stop window is lost; it does not move to a day on which the crew does not usually work.
 *   <li>An order begins where the work before it in the shift ended, if it ends in the same shift; or at the start of a shift of which nothing is
 *       used. Work that went on overnight would have to be set up once more, and its hours do not count that.
 *   <li>Work passes over a lost day, and then goes on in the crew's next shift; a closure of the order itself must not hold any of its
 *       shifts.
 *   <li>An order longer than the crew's usual week begins in the first shift of a week and runs on; a week without any shift ends its
 *       run, so it has no place there.
 *   <li>Two orders share at most the hours that the second one takes. A vault without a name is shared with none.
 * </ul>
 *
 * <p>The same orders and settings always give the same calendar.
 */
public final class CrewScheduler {
    private CrewScheduler() {}

    /** Returns the calendar of work orders. */
    public static WorkCalendar schedule(CalendarRules rules, List<WorkOrder> orders, SchedulerSettings settings) {
        var weeks = new CrewWeeks(rules);
        var book = new OrderBook(rules, orders);
        var calendar = new WorkingCalendar(book, weeks, rules);
        new CalendarSearch(book, weeks, calendar, settings.seed()).run(settings.iterations());
        return new WorkCalendar(
                new CalendarEntries(book, weeks, calendar).list(), new UnplacedReasons(book, weeks, calendar).list());
    }
}
