package org.spanroom.program.calendar;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.spanroom.model.program.WorkCalendar.Entry;
import org.spanroom.model.program.WorkOrder;

/** The entries of a calendar that has been put together. */
final class CalendarEntries {
    private final OrderBook book;
    private final CrewWeeks weeks;
    private final WorkingCalendar calendar;

    /** An order with the days of its shifts; {@code run} is the number of its run of shared set-ups among those of its crew. */
    private record Work(
            int order,
            int crew,
            int week,
            int run,
            int place,
            List<LocalDate> days,
            double startHours,
            double sharedHours) {}

    CalendarEntries(OrderBook book, CrewWeeks weeks, WorkingCalendar calendar) {
        this.book = book;
        this.weeks = weeks;
        this.calendar = calendar;
    }

    /** Returns all entries, by first day, then crew, then place in the sequence of the crew. */
    List<Entry> list() {
        var all = new ArrayList<Work>();
        for (int crew = 0; crew < weeks.crews(); crew++) {
            all.addAll(works(crew));
        }
        // The sort is stable: the sequence of a crew on one day stays.
        all.sort(Comparator.comparing((Work work) -> work.days.get(0)).thenComparingInt(Work::crew));
        Map<List<Integer>, Integer> groups = new TreeMap<>(
                Comparator.comparing((List<Integer> key) -> key.get(0)).thenComparing(key -> key.get(1)));
        var entries = new ArrayList<Entry>();
        for (Work work : all) {
            int group = groups.computeIfAbsent(List.of(work.crew, work.run), none -> groups.size() + 1);
            entries.add(entry(work, group));
        }
        return entries;
    }

    private List<Work> works(int crew) {
        var works = new ArrayList<Work>();
        int run = 0;
        for (int week = 0; week < weeks.weeks(); week++) {
            WeekPlan plan = calendar.plan(crew, week);
            int first = plan.comesIn() ? 1 : 0;
            for (int at = first; at < plan.size(); at++) {
                run += plan.sharedHours()[at] > 0 ? 0 : 1;
                works.add(new Work(
                        plan.orders()[at],
                        crew,
                        week,
                        run,
                        at - first + 1,
                        days(crew, week, at),
                        plan.startHours()[at],
                        plan.sharedHours()[at]));
            }
        }
        return works;
    }

    private List<LocalDate> days(int crew, int firstWeek, int firstPlace) {
        var days = new ArrayList<LocalDate>();
        int week = firstWeek;
        int place = firstPlace;
        boolean goesOn = true;
        while (goesOn) {
            WeekPlan plan = calendar.plan(crew, week);
            for (int shift = plan.startShift()[place]; shift <= plan.endShift()[place]; shift++) {
                days.add(LocalDate.ofEpochDay(weeks.shifts(crew, week)[shift]));
            }
            goesOn = plan.goesOn() && place == plan.size() - 1;
            week++;
            place = 0;
        }
        return days;
    }

    private Entry entry(Work work, int group) {
        WorkOrder order = book.order(work.order);
        LocalDate first = work.days.get(0);
        return new Entry(
                order,
                weeks.crew(work.crew).name(),
                weeks.monday(work.week),
                group,
                work.place,
                work.days,
                work.startHours,
                order.siteHours() - work.sharedHours,
                work.sharedHours,
                weeks.rules().deadline(first, order.leadDays()),
                weeks.rules().deadline(first, order.checkDays()));
    }
}
