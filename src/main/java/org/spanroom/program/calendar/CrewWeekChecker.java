package org.spanroom.program.calendar;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.CrewTeam;
import org.spanroom.model.program.WorkCalendar.Entry;
import org.spanroom.model.program.WorkOrder;

/** Verifies the work of one crew: its shifts, one thing at a time, and the set-ups that are shared. */
final class CrewWeekChecker {
    private static final double ROUNDING_HOURS = 1e-6;

    private final CalendarRules rules;
    private final CrewTeam crew;
    private final Set<Integer> groups;
    private final List<String> problems = new ArrayList<>();
    private final Map<LocalDate, Double> usedHours = new TreeMap<>();
    private final Map<LocalDate, Boolean> nightOfWeek = new TreeMap<>();
    private final Map<LocalDate, Integer> beginInWeek = new TreeMap<>();

    private CrewWeekChecker(CalendarRules rules, CrewTeam crew, Set<Integer> groups) {
        this.rules = rules;
        this.crew = crew;
        this.groups = groups;
    }

    /**
     * Returns what is wrong, a line each.
     *
     * @param entries those of the crew, in sequence
     * @param groups numbers of groups that are taken; those of this crew are added
     */
    static List<String> problems(CalendarRules rules, CrewTeam crew, List<Entry> entries, Set<Integer> groups) {
        var checker = new CrewWeekChecker(rules, crew, groups);
        Entry before = null;
        for (Entry entry : entries) {
            if (!entry.days().isEmpty()) {
                checker.checkShifts(entry);
                checker.checkWeek(entry);
                checker.checkHours(entry);
                checker.checkShared(before, entry);
                before = entry;
            }
        }
        return checker.problems;
    }

    private void report(Entry entry, String what) {
        problems.add(entry.order().spanId() + ", crew " + crew.name() + ": " + what);
    }

    /** Its days are shifts of the crew that follow one another. */
    private void checkShifts(Entry entry) {
        LocalDate day = entry.days().get(0);
        for (LocalDate each : entry.days()) {
            if (!isShift(each)) {
                report(entry, each + " is not a shift of the crew");
                return;
            }
        }
        for (LocalDate each : entry.days().subList(1, entry.days().size())) {
            day = day.plusDays(1);
            while (day.isBefore(each) && !isShift(day)) {
                day = day.plusDays(1);
            }
            if (!day.equals(each)) {
                report(entry, "the shift after the one before is on " + day + ", not on " + each);
                return;
            }
        }
        if (!crew.works(entry.order().night())) {
            report(entry, "works " + crew.shifts() + " only");
        }
    }

    private boolean isShift(LocalDate day) {
        LocalDate monday = day.with(DayOfWeek.MONDAY);
        long before = monday.datesUntil(day)
                .filter(each -> rules.workWeek().days().contains(each.getDayOfWeek()))
                .count();
        return rules.workWeek().holds(day)
                && before < crew.shiftsPerWeek()
                && rules.stops().stream().noneMatch(stop -> stop.holds(day));
    }

    /** Days and nights are not mixed, and only work of more than a week runs over weeks, from the start of one on. */
    private void checkWeek(Entry entry) {
        WorkOrder order = entry.order();
        List<LocalDate> weeks =
                entry.days().stream().map(CalendarChecker::monday).distinct().toList();
        for (LocalDate week : weeks) {
            Boolean other = nightOfWeek.put(week, order.night());
            if (other != null && other != order.night()) {
                report(entry, "mixes days and nights in week " + week);
            }
        }
        LocalDate first = entry.days().get(0);
        boolean isLong = order.siteHours()
                > Math.min(crew.shiftsPerWeek(), rules.workWeek().days().size()) * crew.shiftHours() + ROUNDING_HOURS;
        if (isLong) {
            LocalDate day = first.with(DayOfWeek.MONDAY);
            while (day.isBefore(first) && !isShift(day)) {
                day = day.plusDays(1);
            }
            if (!day.equals(first) || entry.startHours() > ROUNDING_HOURS) {
                report(entry, "is longer than a week and begins within one");
            }
        } else if (weeks.size() > 1) {
            report(entry, "runs over the end of a week");
        }
        for (int next = 1; next < weeks.size(); next++) {
            if (!weeks.get(next).equals(weeks.get(next - 1).plusWeeks(1))) {
                report(entry, "passes over a week");
            }
        }
        int place = beginInWeek.merge(entry.week(), 1, Integer::sum);
        if (place != entry.place()) {
            report(entry, "has place " + entry.place() + " in its week, " + place + " expected");
        }
    }

    /** It begins where the work before ended, fills its shifts, and no shift has more hours than it has. */
    private void checkHours(Entry entry) {
        LocalDate first = entry.days().get(0);
        double before = usedHours.getOrDefault(first, 0.0);
        if (Math.abs(before - entry.startHours()) > ROUNDING_HOURS) {
            report(
                    entry,
                    "begins after " + entry.startHours() + " hours of the shift, of which " + before + " are used");
        }
        if (entry.startHours() < 0 || entry.startHours() >= crew.shiftHours()) {
            report(entry, "begins after " + entry.startHours() + " hours of a shift of " + crew.shiftHours());
        }
        if (entry.startHours() > ROUNDING_HOURS && entry.days().size() > 1) {
            report(entry, "begins beside other work and goes on in the next shift");
        }
        double left = entry.siteHours();
        for (LocalDate day : entry.days()) {
            double used = usedHours.getOrDefault(day, 0.0);
            if (!day.equals(first) && (left <= ROUNDING_HOURS / 2 || used > 0)) {
                report(entry, "has no work on " + day + ", or the crew has other work then");
            }
            double here = Math.min(left, crew.shiftHours() - used);
            usedHours.put(day, used + here);
            left -= here;
        }
        if (left > ROUNDING_HOURS) {
            report(entry, left + " of its hours are in no shift");
        }
    }

    private void checkShared(@Nullable Entry before, Entry entry) {
        double expected = before != null && meets(before, entry) ? savedHours(before.order(), entry.order()) : 0;
        if (Math.abs(expected - entry.sharedHours()) > ROUNDING_HOURS) {
            report(entry, "shares " + entry.sharedHours() + " hours, " + expected + " expected");
        }
        if (Math.abs(entry.siteHours() + entry.sharedHours() - entry.order().siteHours()) > ROUNDING_HOURS) {
            report(
                    entry,
                    "takes " + entry.siteHours() + " hours and shares " + entry.sharedHours() + ", together not "
                            + entry.order().siteHours());
        }
        boolean continues = before != null && before.group() == entry.group();
        if (continues != entry.sharedHours() > 0) {
            report(
                    entry,
                    continues
                            ? "is in a group with which it shares nothing"
                            : "is not in the group of the work before");
        }
        if (!continues && !groups.add(entry.group())) {
            report(entry, "group " + entry.group() + " is not in one piece");
        }
    }

    private boolean meets(Entry before, Entry entry) {
        return before.days().get(before.days().size() - 1).equals(entry.days().get(0));
    }

    /** The smaller of the shared hours of both at each vault that both have. */
    private static double savedHours(WorkOrder before, WorkOrder after) {
        Map<String, Double> ofBefore = hoursByVault(before);
        double sum = 0;
        for (Map.Entry<String, Double> vault : hoursByVault(after).entrySet()) {
            sum += Optional.ofNullable(ofBefore.get(vault.getKey()))
                    .map(hours -> Math.min(hours, vault.getValue()))
                    .orElse(0.0);
        }
        return Math.min(sum, after.siteHours());
    }

    private static Map<String, Double> hoursByVault(WorkOrder order) {
        Map<String, Double> hours = new TreeMap<>();
        hours.put(order.vaultB(), order.sharedBHours());
        hours.put(order.vaultA(), order.sharedAHours());
        hours.remove("");
        return hours;
    }
}
