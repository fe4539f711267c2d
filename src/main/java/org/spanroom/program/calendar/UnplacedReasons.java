package org.spanroom.program.calendar;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.spanroom.model.Counted;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.Closure;
import org.spanroom.model.program.WorkCalendar.Unplaced;
import org.spanroom.model.program.WorkOrder;

/** Says of each order without a place which limit is decisive: dates, crews, closures, its length, its district, then hours. */
final class UnplacedReasons {
    private static final int MOST_NAMES = 3;

    private final OrderBook book;
    private final CrewWeeks weeks;
    private final CalendarRules rules;
    private final WorkingCalendar calendar;
    private final PlaceFinder alone;
    private final PlaceFinder withoutDistricts;

    UnplacedReasons(OrderBook book, CrewWeeks weeks, WorkingCalendar calendar) {
        this.book = book;
        this.weeks = weeks;
        this.calendar = calendar;
        rules = weeks.rules();
        alone = new PlaceFinder(book, weeks, new WorkingCalendar(book, weeks, rules), false);
        withoutDistricts = new PlaceFinder(book, weeks, calendar, false);
    }

    /** Returns all orders without a place, in the order given. */
    List<Unplaced> list() {
        return IntStream.range(0, book.size())
                .filter(number -> !calendar.isPlaced(number))
                .mapToObj(number -> new Unplaced(book.order(number), why(number)))
                .toList();
    }

    private String why(int number) {
        WorkOrder order = book.order(number);
        if (order.year() < 0 || order.year() >= rules.years().size()) {
            return "the program has " + Counted.of(rules.years().size(), "year") + ", and no year "
                    + (order.year() + 1);
        }
        if (book.firstDay(number) > book.lastDay(number)) {
            return start(number) + ", and " + end(order);
        }
        if (workable(number).findAny().isEmpty()) {
            return order.night() ? "no crew works nights" : "no crew works days";
        }
        if (!alone.hasPlace(number)) {
            return hasOpenShift(number)
                    ? "it takes " + hours(order) + " hours of a crew without a break, and no week " + window(number)
                            + " has so many in shifts in which it can be done" + closureNames(number)
                    : "no crew has a shift " + window(number) + closureNames(number);
        }
        if (withoutDistricts.hasPlace(number)) {
            return "district " + order.district() + " may have "
                    + Counted.of(calendar.mostInWork(book.district(number)), "span")
                    + " in work in one week, and no week "
                    + window(number) + " has both room for another one and a crew with " + hours(order) + " free hours";
        }
        return "crews have no " + hours(order) + (order.night() ? " free hours by night left " : " free hours left ")
                + window(number);
    }

    private static String hours(WorkOrder order) {
        return Counted.fixed(order.siteHours(), 1);
    }

    private IntStream workable(int number) {
        return IntStream.range(0, weeks.crews()).filter(crew -> weeks.crew(crew).works(book.isNight(number)));
    }

    private boolean hasOpenShift(int number) {
        return workable(number)
                .anyMatch(crew -> IntStream.range(0, weeks.weeks())
                        .mapToObj(week -> weeks.shifts(crew, week))
                        .flatMapToLong(LongStream::of)
                        .anyMatch(day -> book.isOpen(number, day)));
    }

    /** Names the stop windows and closures in the time in which an order could be done. */
    private String closureNames(int number) {
        List<String> names = Stream.concat(rules.stops().stream(), book.closures(number).stream())
                .filter(closure -> closure.until().toEpochDay() >= book.firstDay(number)
                        && closure.from().toEpochDay() <= book.lastDay(number))
                .map(Closure::name)
                .distinct()
                .sorted()
                .toList();
        if (names.isEmpty()) {
            return "";
        }
        String others = names.size() > MOST_NAMES ? " and " + (names.size() - MOST_NAMES) + " others" : "";
        return "; closed by " + names.stream().limit(MOST_NAMES).collect(Collectors.joining(", ")) + others;
    }

    /** Says when an order could be done: in its year, or in which part of it and why. */
    private String window(int number) {
        WorkOrder order = book.order(number);
        LocalDate yearEnd = rules.years().get(order.year()).until();
        boolean startsLate = book.firstDay(number) > book.yearStart(number);
        boolean endsEarly = order.notAfter().isBefore(yearEnd);
        String year = "in year " + (order.year() + 1);
        if (!startsLate && !endsEarly) {
            return year;
        }
        String reasons = Stream.of(startsLate ? start(number) : "", endsEarly ? end(order) : "")
                .filter(reason -> !reason.isEmpty())
                .collect(Collectors.joining(", "));
        return year + " from " + LocalDate.ofEpochDay(book.firstDay(number)) + " to "
                + LocalDate.ofEpochDay(book.lastDay(number)) + " (" + reasons + ")";
    }

    /** Says what makes the first day on which an order can be done. */
    private String start(int number) {
        WorkOrder order = book.order(number);
        long first = book.firstDay(number);
        if (order.notBefore().toEpochDay() == first) {
            return "embargo until " + order.notBefore().minusDays(1);
        }
        if (first == book.yearStart(number)) {
            return "year " + (order.year() + 1) + " begins on " + LocalDate.ofEpochDay(first);
        }
        if (order.leadDays() == 0 && order.checkDays() == 0) {
            return "no work begins before " + rules.readyOn();
        }
        return order.leadDays() >= order.checkDays()
                ? "its permits take " + Counted.of(order.leadDays(), "day") + " from " + rules.readyOn()
                : "its field check comes " + Counted.of(order.checkDays(), "day") + " before the work, and not before "
                        + rules.readyOn();
    }

    /** Says what makes the last day on which an order can be done. */
    private String end(WorkOrder order) {
        LocalDate yearEnd = rules.years().get(order.year()).until();
        return order.notAfter().isBefore(yearEnd)
                ? "it must be done by " + order.notAfter()
                : "year " + (order.year() + 1) + " ends on " + yearEnd;
    }
}
