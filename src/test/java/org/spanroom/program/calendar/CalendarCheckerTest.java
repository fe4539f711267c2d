package org.spanroom.program.calendar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.spanroom.program.calendar.Orders.START;
import static org.spanroom.program.calendar.Orders.closure;
import static org.spanroom.program.calendar.Orders.crew;
import static org.spanroom.program.calendar.Orders.rules;
import static org.spanroom.program.calendar.Orders.with;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.CrewTeam.Shifts;
import org.spanroom.model.program.WorkCalendar;
import org.spanroom.model.program.WorkCalendar.Entry;
import org.spanroom.model.program.WorkCalendar.Unplaced;
import org.spanroom.model.program.WorkOrder;

/** Breaks calendars that are made by hand, one rule at a time. Day 0 is a Monday. */
class CalendarCheckerTest {
    private static final CalendarRules RULES = rules(2, 2, crew("Crew", Shifts.EITHER));

    /** An entry of the crew that shares nothing. */
    private static Entry entry(Orders order, int group, int place, double startHours, Integer... days) {
        return entry(order.order(), group, place, startHours, 0, days);
    }

    private static Entry entry(
            WorkOrder order, int group, int place, double startHours, double sharedHours, Integer... days) {
        List<LocalDate> dates = List.of(days).stream().map(START::plusDays).toList();
        return new Entry(
                order,
                "Crew",
                START.plusWeeks(days[0] / 7),
                group,
                place,
                dates,
                startHours,
                order.siteHours() - sharedHours,
                sharedHours,
                dates.get(0).minusDays(order.leadDays()),
                dates.get(0).minusDays(order.checkDays()));
    }

    private static List<String> problems(CalendarRules rules, Entry... entries) {
        return CalendarChecker.problems(rules, new WorkCalendar(List.of(entries), List.of()));
    }

    private static void assertFound(String part, List<String> problems) {
        assertTrue(problems.stream().anyMatch(problem -> problem.contains(part)), problems.toString());
    }

    @Test
    void aCalendarThatKeepsAllRulesHasNoProblems() {
        assertEquals(
                List.of(),
                problems(
                        RULES,
                        entry(Orders.of("one").between("V1", "V2"), 1, 1, 0, 0),
                        entry(Orders.of("two").between("V2", "V3").order(), 1, 2, 4, 1, 0),
                        entry(Orders.of("three").hours(9), 2, 3, 0, 1, 2)));
    }

    @Test
    void findsWorkThatBeginsBesideOtherWorkAndGoesOn() {
        assertFound(
                "begins beside other work and goes on",
                problems(
                        RULES,
                        entry(Orders.of("one").between("V1", "V2"), 1, 1, 0, 0),
                        entry(Orders.of("two").between("V8", "V9").hours(9), 2, 2, 4, 0, 1)));
    }

    @Test
    void findsWhatIsThereTwice() {
        Orders one = Orders.of("one");
        assertFound("in the calendar twice", problems(RULES, entry(one, 1, 1, 0, 0), entry(one, 2, 1, 0, 1)));
        assertFound(
                "placed and unplaced",
                CalendarChecker.problems(
                        RULES,
                        new WorkCalendar(
                                List.of(entry(one, 1, 1, 0, 0)), List.of(new Unplaced(one.order(), "no room")))));
        assertFound(
                "without a reason",
                CalendarChecker.problems(RULES, new WorkCalendar(List.of(), List.of(new Unplaced(one.order(), " ")))));
    }

    @Test
    void findsWorkOnDaysOnWhichNoneMayBeDone() {
        assertFound("stop window", problems(with(RULES, closure("Parade", 1, 1)), entry(Orders.of("one"), 1, 1, 0, 1)));
        assertFound(
                "closed by Fair", problems(RULES, entry(Orders.of("one").closed(closure("Fair", 0, 3)), 1, 1, 0, 1)));
        assertFound("outside of its year", problems(RULES, entry(Orders.of("one"), 1, 1, 0, 14)));
        assertFound(
                "outside of its dates",
                problems(RULES, entry(Orders.of("one").dates(START.plusDays(2), LocalDate.MAX), 1, 1, 0, 1)));
        assertFound(
                "outside of its dates",
                problems(RULES, entry(Orders.of("one").dates(LocalDate.MIN, START), 1, 1, 0, 1)));
        assertFound("not a shift", problems(RULES, entry(Orders.of("one"), 1, 1, 0, 5)));
        assertFound("not in the program", problems(RULES, entry(Orders.of("one").year(2), 1, 1, 0, 0)));
    }

    @Test
    void findsDeadlinesBeforeThePlanIsReady() {
        assertFound("apply by", problems(RULES, entry(Orders.of("one").waits(2, 0), 1, 1, 0, 1)));
        assertFound("check by", problems(RULES, entry(Orders.of("one").waits(0, 2), 1, 1, 0, 1)));
    }

    @Test
    void findsABreakWithinAnOrder() {
        assertFound(
                "the shift after the one before",
                problems(RULES, entry(Orders.of("one").hours(12), 1, 1, 0, 0, 2)));
    }

    @Test
    void findsHoursThatDoNotFitTheShifts() {
        assertFound("are in no shift", problems(RULES, entry(Orders.of("one").hours(12), 1, 1, 0, 0)));
        assertFound("has no work on", problems(RULES, entry(Orders.of("one"), 1, 1, 0, 0, 1)));
        assertFound(
                "are used", problems(RULES, entry(Orders.of("one"), 1, 1, 0, 0), entry(Orders.of("two"), 2, 2, 3, 0)));
        assertFound("hours of a shift", problems(RULES, entry(Orders.of("one"), 1, 1, 8, 0)));
    }

    @Test
    void findsWorkThatRunsOverAWeekWithoutNeed() {
        assertFound(
                "over the end of a week", problems(RULES, entry(Orders.of("one").hours(12), 1, 1, 0, 4, 7)));
        assertFound(
                "longer than a week", problems(RULES, entry(Orders.of("one").hours(41), 1, 1, 0, 1, 2, 3, 4, 7, 8)));
    }

    @Test
    void findsDaysAndNightsMixed() {
        assertFound(
                "mixes days and nights",
                problems(
                        RULES,
                        entry(Orders.of("one"), 1, 1, 0, 0),
                        entry(Orders.of("two").byNight(), 2, 2, 0, 1)));
        assertFound(
                "only",
                problems(
                        rules(1, 2, crew("Crew", Shifts.DAYS)),
                        entry(Orders.of("two").byNight(), 1, 1, 0, 0)));
    }

    @Test
    void findsSharingThatIsNoneAndSharingThatIsMissed() {
        Entry one = entry(Orders.of("one").between("V1", "V2"), 1, 1, 0, 0);
        WorkOrder two = Orders.of("two").between("V2", "V3").order();
        WorkOrder far = Orders.of("far").order();

        assertFound("shares 0.5 hours, 1.0 expected", problems(RULES, one, entry(two, 1, 2, 4, 0.5, 0)));
        assertFound("shares 0.0 hours, 1.0 expected", problems(RULES, one, entry(two, 2, 2, 4, 0, 0)));
        assertFound("shares 1.0 hours, 0.0 expected", problems(RULES, one, entry(two, 1, 2, 0, 1, 1)));
        assertFound("shares 1.0 hours, 0.0 expected", problems(RULES, one, entry(far, 1, 2, 4, 1, 0)));
        assertFound("not in the group", problems(RULES, one, entry(two, 2, 2, 4, 1, 0)));
        assertFound("shares nothing", problems(RULES, one, entry(far, 1, 2, 4, 0, 0)));
    }

    @Test
    void findsWrongNumbersAndOrder() {
        Entry one = entry(Orders.of("one"), 1, 1, 0, 0);
        assertFound("place 3 in its week", problems(RULES, one, entry(Orders.of("two"), 2, 3, 4, 0)));
        assertFound("listed after later work", problems(RULES, entry(Orders.of("two"), 2, 1, 0, 1), one));
        var three = new ArrayList<>(List.of(one));
        three.add(entry(Orders.of("two"), 2, 2, 4, 0));
        three.add(entry(Orders.of("three"), 1, 3, 0, 1));
        assertFound("not in one piece", problems(RULES, three.toArray(Entry[]::new)));
    }

    @Test
    void findsTooMuchWorkInADistrict() {
        assertFound(
                "2 in work, at most 1 may be",
                problems(
                        with(RULES, Map.of("North", 1)),
                        entry(Orders.of("one").district("North"), 1, 1, 0, 0),
                        entry(Orders.of("two").district("North"), 2, 2, 4, 0)));
    }

    @Test
    void findsACrewThatThereIsNot() {
        assertFound("0 crews have this name", problems(rules(1, 2), entry(Orders.of("one"), 1, 1, 0, 0)));
    }
}
