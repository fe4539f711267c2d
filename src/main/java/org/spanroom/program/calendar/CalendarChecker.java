package org.spanroom.program.calendar;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.CrewTeam;
import org.spanroom.model.program.WorkCalendar;
import org.spanroom.model.program.WorkCalendar.Entry;
import org.spanroom.model.program.WorkOrder;

/** Verifies a calendar from scratch against every rule. Shares nothing with the scheduler. */
public final class CalendarChecker {
    private final CalendarRules rules;
    private final WorkCalendar calendar;
    private final List<String> problems = new ArrayList<>();

    private CalendarChecker(CalendarRules rules, WorkCalendar calendar) {
        this.rules = rules;
        this.calendar = calendar;
    }

    /** Returns what is wrong, a line each; empty where nothing is. */
    public static List<String> problems(CalendarRules rules, WorkCalendar calendar) {
        var checker = new CalendarChecker(rules, calendar);
        checker.checkSpans();
        checker.checkSequence();
        calendar.entries().forEach(checker::checkDates);
        checker.checkCrews();
        checker.checkDistricts();
        return checker.problems;
    }

    private void checkSpans() {
        var seen = new TreeSet<String>();
        for (Entry entry : calendar.entries()) {
            if (!seen.add(entry.order().spanId())) {
                problems.add(entry.order().spanId() + ": is in the calendar twice");
            }
        }
        for (WorkCalendar.Unplaced unplaced : calendar.unplaced()) {
            if (!seen.add(unplaced.order().spanId())) {
                problems.add(unplaced.order().spanId() + ": is placed and unplaced, or unplaced twice");
            }
            if (unplaced.why().isBlank()) {
                problems.add(unplaced.order().spanId() + ": is unplaced without a reason");
            }
        }
    }

    private void checkSequence() {
        List<Entry> entries = calendar.entries();
        for (Entry entry : entries) {
            if (entry.days().isEmpty()) {
                problems.add(entry.order().spanId() + ": has no days");
                return;
            }
        }
        List<String> crews = rules.crews().stream().map(CrewTeam::name).toList();
        Comparator<Entry> byDayAndCrew = Comparator.comparing(
                        (Entry entry) -> entry.days().get(0))
                .thenComparing(entry -> crews.indexOf(entry.crew()));
        for (int next = 1; next < entries.size(); next++) {
            if (byDayAndCrew.compare(entries.get(next - 1), entries.get(next)) > 0) {
                problems.add(entries.get(next).order().spanId() + ": is listed after later work");
            }
        }
    }

    private void checkDates(Entry entry) {
        WorkOrder order = entry.order();
        if (order.year() < 0 || order.year() >= rules.years().size()) {
            problems.add(order.spanId() + ": year " + order.year() + " is not in the program");
            return;
        }
        CalendarRules.ProgramYear year = rules.years().get(order.year());
        for (LocalDate day : entry.days()) {
            why(order, year, day).ifPresent(why -> problems.add(order.spanId() + ": works on " + day + ", " + why));
        }
        if (entry.days().isEmpty()) {
            return;
        }
        LocalDate first = entry.days().get(0);
        if (!entry.week().equals(monday(first))) {
            problems.add(order.spanId() + ": week " + entry.week() + " is not that of " + first);
        }
        checkDeadline(order, "apply by", entry.applyBy(), first, order.leadDays());
        checkDeadline(order, "check by", entry.checkBy(), first, order.checkDays());
    }

    /** Finds why an order cannot be in work on a day. */
    private Optional<String> why(WorkOrder order, CalendarRules.ProgramYear year, LocalDate day) {
        if (day.isBefore(year.from()) || day.isAfter(year.until())) {
            return Optional.of("outside of its year");
        }
        if (day.isBefore(order.notBefore()) || day.isAfter(order.notAfter())) {
            return Optional.of("outside of its dates");
        }
        if (!rules.workWeek().holds(day)) {
            return Optional.of("no working day");
        }
        if (rules.stops().stream().anyMatch(stop -> stop.holds(day))) {
            return Optional.of("in a stop window");
        }
        return order.closures().stream()
                .filter(closure -> closure.holds(day))
                .findFirst()
                .map(closure -> "closed by " + closure.name());
    }

    private void checkDeadline(WorkOrder order, String what, LocalDate stated, LocalDate first, int days) {
        LocalDate latest = first.minusDays(days);
        boolean isLast = !stated.isAfter(latest)
                && stated.plusDays(1).datesUntil(latest.plusDays(1)).noneMatch(rules.workWeek()::holds);
        if (!isLast || (!rules.workWeek().holds(stated) && !isEarly(latest))) {
            problems.add(
                    order.spanId() + ": " + what + " " + stated + ", " + days + " days before " + first + " expected");
        }
        if (stated.isBefore(rules.readyOn())) {
            problems.add(order.spanId() + ": " + what + " " + stated + ", before " + rules.readyOn());
        }
    }

    /** Returns whether no working day lies from the day of the plan to another one. */
    private boolean isEarly(LocalDate latest) {
        return rules.readyOn().isAfter(latest)
                || rules.readyOn().datesUntil(latest.plusDays(1)).noneMatch(rules.workWeek()::holds);
    }

    private void checkCrews() {
        Map<String, List<Entry>> byCrew = new TreeMap<>();
        calendar.entries()
                .forEach(entry -> byCrew.computeIfAbsent(entry.crew(), none -> new ArrayList<>())
                        .add(entry));
        var groups = new TreeSet<Integer>();
        byCrew.forEach((name, entries) -> {
            List<CrewTeam> crews = rules.crews().stream()
                    .filter(crew -> crew.name().equals(name))
                    .toList();
            if (crews.size() == 1) {
                problems.addAll(CrewWeekChecker.problems(rules, crews.get(0), entries, groups));
            } else {
                problems.add(name + ": " + crews.size() + " crews have this name");
            }
        });
    }

    private void checkDistricts() {
        Map<String, Integer> inWork = new TreeMap<>();
        for (Entry entry : calendar.entries()) {
            String district = entry.order().district();
            if (!district.isEmpty() && rules.mostInWork().containsKey(district)) {
                entry.days().stream()
                        .map(CalendarChecker::monday)
                        .distinct()
                        .forEach(week -> inWork.merge(week + " " + district, 1, Integer::sum));
            }
        }
        inWork.forEach((key, count) -> {
            int most = rules.mostInWork().getOrDefault(key.substring(key.indexOf(' ') + 1), Integer.MAX_VALUE);
            if (count > most) {
                problems.add("week " + key + ": " + count + " in work, at most " + most + " may be");
            }
        });
    }

    static LocalDate monday(LocalDate day) {
        return day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }
}
