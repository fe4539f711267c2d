package org.spanroom.program.calendar;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.CrewTeam;
import org.spanroom.model.program.WorkOrder;

/**
 * The best calendar of a few orders by trying all: every sequence of every crew, and for each order every shift in which it could begin,
 * also later than it must. Passes over only what cannot become better than the best so far. Shares nothing with the scheduler.
 */
final class CalendarEnumeration {
    private static final double ROUNDING = 1e-9;

    private final CalendarRules rules;
    private final List<WorkOrder> orders;
    private final List<List<LocalDate>> shiftsOf = new ArrayList<>();
    private final boolean[] isPlaced;
    private final Map<String, Boolean> nightOfCrewWeek = new TreeMap<>();
    private final Map<String, Integer> inWork = new TreeMap<>();
    private final double[] mostShared;
    private double bestPriority = -1;
    private double bestSharedHours;

    CalendarEnumeration(CalendarRules rules, List<WorkOrder> orders) {
        this.rules = rules;
        this.orders = orders;
        isPlaced = new boolean[orders.size()];
        mostShared = orders.stream()
                .mapToDouble(order -> order.sharedAHours() + order.sharedBHours())
                .toArray();
        LocalDate first = rules.years().get(0).from().with(DayOfWeek.MONDAY);
        LocalDate last = rules.years().get(rules.years().size() - 1).until();
        for (CrewTeam crew : rules.crews()) {
            shiftsOf.add(first.datesUntil(last.plusDays(1))
                    .filter(day -> day.getDayOfWeek().getValue() <= crew.shiftsPerWeek())
                    .filter(day -> rules.stops().stream().noneMatch(stop -> stop.holds(day)))
                    .toList());
        }
    }

    /** Returns the most priority that can be placed, and with it the most hours that can be shared. */
    double[] best() {
        goOn(0, 0, 0, -1, 0, 0);
        return new double[] {bestPriority, bestSharedHours};
    }

    /** Places another order of a crew after {@code before}, which ended in a shift of which so many hours are used. */
    private void goOn(int crew, int shift, double usedHours, int before, double priority, double sharedHours) {
        if (priority > bestPriority + ROUNDING
                || (priority > bestPriority - ROUNDING && sharedHours > bestSharedHours)) {
            bestPriority = priority;
            bestSharedHours = sharedHours;
        }
        if (crew == shiftsOf.size() || isHopeless(priority, sharedHours)) {
            return;
        }
        for (int order = 0; order < orders.size(); order++) {
            if (!isPlaced[order]
                    && rules.crews().get(crew).works(orders.get(order).night())) {
                for (int start = shift; start < shiftsOf.get(crew).size(); start++) {
                    tryStart(crew, order, start, start == shift ? usedHours : 0, before, priority, sharedHours);
                }
            }
        }
        goOn(crew + 1, 0, 0, -1, priority, sharedHours);
    }

    private boolean isHopeless(double priority, double sharedHours) {
        double mostPriority = priority;
        double mostHours = sharedHours;
        for (int order = 0; order < orders.size(); order++) {
            mostPriority += isPlaced[order] ? 0 : orders.get(order).priorityMoney();
            mostHours += isPlaced[order] ? 0 : mostShared[order];
        }
        return mostPriority < bestPriority - ROUNDING
                || (mostPriority < bestPriority + ROUNDING && mostHours <= bestSharedHours + ROUNDING);
    }

    private void tryStart(
            int crew, int number, int start, double usedHours, int before, double priority, double sharedHours) {
        WorkOrder order = orders.get(number);
        CrewTeam team = rules.crews().get(crew);
        if (usedHours > team.shiftHours() - ROUNDING) {
            return;
        }
        double shared = usedHours > 0 && before >= 0 ? shared(orders.get(before), order) : 0;
        List<LocalDate> shifts = shiftsOf.get(crew);
        double left = order.siteHours() - shared;
        double used = usedHours;
        int end = start;
        while (left > team.shiftHours() - used + ROUNDING) {
            left -= team.shiftHours() - used;
            used = 0;
            end++;
            if (end == shifts.size()) {
                return;
            }
        }
        List<LocalDate> days = shifts.subList(start, end + 1);
        // What begins beside other work ends in that shift.
        if (usedHours > 0 && end > start) {
            return;
        }
        if (!days.stream().allMatch(day -> isOpen(order, day)) || !isWithinWeek(crew, order, start, usedHours, days)) {
            return;
        }
        List<LocalDate> weeks =
                days.stream().map(day -> day.with(DayOfWeek.MONDAY)).distinct().toList();
        if (!weeks.stream().allMatch(week -> hasRoom(crew, order, week))) {
            return;
        }
        List<String> nights = weeks.stream()
                .map(week -> crew + " " + week)
                .filter(key -> nightOfCrewWeek.putIfAbsent(key, order.night()) == null)
                .toList();
        weeks.forEach(week -> inWork.merge(week + order.district(), 1, Integer::sum));
        isPlaced[number] = true;
        goOn(crew, end, used + left, number, priority + order.priorityMoney(), sharedHours + shared);
        isPlaced[number] = false;
        weeks.forEach(week -> inWork.merge(week + order.district(), -1, Integer::sum));
        nights.forEach(nightOfCrewWeek::remove);
    }

    private boolean isOpen(WorkOrder order, LocalDate day) {
        LocalDate ready = rules.readyOn().plusDays(Math.max(order.leadDays(), order.checkDays()));
        CalendarRules.ProgramYear year = rules.years().get(order.year());
        return !day.isBefore(ready)
                && !day.isBefore(year.from())
                && !day.isAfter(year.until())
                && !day.isBefore(order.notBefore())
                && !day.isAfter(order.notAfter())
                && order.closures().stream().noneMatch(closure -> closure.holds(day));
    }

    private boolean isWithinWeek(int crew, WorkOrder order, int start, double usedHours, List<LocalDate> days) {
        CrewTeam team = rules.crews().get(crew);
        LocalDate first = days.get(0);
        LocalDate week = first.with(DayOfWeek.MONDAY);
        if (order.siteHours() <= team.shiftsPerWeek() * team.shiftHours() + ROUNDING) {
            return days.get(days.size() - 1).with(DayOfWeek.MONDAY).equals(week);
        }
        boolean isFirstShift = start == 0 || shiftsOf.get(crew).get(start - 1).isBefore(week);
        boolean passesOverWeek = false;
        for (int next = 1; next < days.size(); next++) {
            passesOverWeek |= days.get(next)
                    .with(DayOfWeek.MONDAY)
                    .isAfter(days.get(next - 1).with(DayOfWeek.MONDAY).plusWeeks(1));
        }
        return usedHours == 0 && isFirstShift && !passesOverWeek;
    }

    private boolean hasRoom(int crew, WorkOrder order, LocalDate week) {
        Boolean night = nightOfCrewWeek.get(crew + " " + week);
        int most = order.district().isEmpty()
                ? Integer.MAX_VALUE
                : rules.mostInWork().getOrDefault(order.district(), Integer.MAX_VALUE);
        return (night == null || night == order.night()) && inWork.getOrDefault(week + order.district(), 0) < most;
    }

    private static double shared(WorkOrder one, WorkOrder other) {
        double sum = 0;
        for (String vault :
                one.vaultA().equals(one.vaultB()) ? List.of(one.vaultA()) : List.of(one.vaultA(), one.vaultB())) {
            double ofOne = vault.equals(one.vaultA()) ? one.sharedAHours() : one.sharedBHours();
            double ofOther = vault.equals(other.vaultA())
                    ? other.sharedAHours()
                    : vault.equals(other.vaultB()) ? other.sharedBHours() : 0;
            sum += vault.isEmpty() ? 0 : Math.min(ofOne, ofOther);
        }
        return Math.min(sum, other.siteHours());
    }
}
