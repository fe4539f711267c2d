package org.spanroom.program.calendar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.spanroom.program.calendar.Orders.START;
import static org.spanroom.program.calendar.Orders.closure;
import static org.spanroom.program.calendar.Orders.crew;
import static org.spanroom.program.calendar.Orders.rules;
import static org.spanroom.program.calendar.Orders.with;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.CalendarRules.ProgramYear;
import org.spanroom.model.program.CrewTeam;
import org.spanroom.model.program.CrewTeam.Shifts;
import org.spanroom.model.program.WorkCalendar;
import org.spanroom.model.program.WorkCalendar.Entry;

/** Each rule of the calendar on a case small enough to see the answer. Day 0 is Monday, February 1, 2027. */
class CrewSchedulerTest {
    private static final CrewTeam DAY_CREW = crew("Day crew", Shifts.DAYS);
    private static final CrewTeam NIGHT_CREW = crew("Night crew", Shifts.NIGHTS);
    private static final CrewTeam EITHER_CREW = crew("Crew", Shifts.EITHER);

    private static WorkCalendar schedule(CalendarRules rules, Orders... orders) {
        WorkCalendar calendar = CrewScheduler.schedule(rules, Orders.list(orders), new SchedulerSettings(1, 300));
        assertEquals(List.of(), CalendarChecker.problems(rules, calendar));
        assertEquals(
                orders.length, calendar.entries().size() + calendar.unplaced().size());
        return calendar;
    }

    private static Entry entry(WorkCalendar calendar, String spanId) {
        return calendar.entries().stream()
                .filter(entry -> entry.order().spanId().equals(spanId))
                .findFirst()
                .orElseThrow();
    }

    private static LocalDate day(int number) {
        return START.plusDays(number);
    }

    private static String why(WorkCalendar calendar) {
        assertEquals(1, calendar.unplaced().size());
        return calendar.unplaced().get(0).why();
    }

    @Test
    void neighborsBackToBackShareTheSmallerSetUpOfTheirVault() {
        WorkCalendar calendar = schedule(
                rules(1, 4, DAY_CREW),
                Orders.of("one").between("V1", "V2").shares(2, 0.75),
                Orders.of("other").between("V2", "V3").shares(0.5, 1));

        assertEquals(0.5, calendar.entries().get(1).sharedHours());
        assertEquals(3.5, calendar.entries().get(1).siteHours());
        assertEquals(4, calendar.entries().get(1).startHours());
        assertEquals(
                List.of(1, 1), calendar.entries().stream().map(Entry::group).toList());
        assertEquals(
                List.of(1, 2), calendar.entries().stream().map(Entry::place).toList());
    }

    @Test
    void spansOfOneSectionShareBothVaultsWhicheverWayTheyAreDrawn() {
        WorkCalendar calendar = schedule(
                rules(1, 4, DAY_CREW),
                Orders.of("one").between("V1", "V2").shares(1, 0.5),
                Orders.of("other").between("V2", "V1").shares(0.5, 1));

        assertEquals(1.5, calendar.entries().get(1).sharedHours());
    }

    @Test
    void setUpsAreNotSharedOverTheEndOfAShift() {
        WorkCalendar calendar = schedule(
                rules(1, 4, DAY_CREW),
                Orders.of("one").between("V1", "V2").hours(8),
                Orders.of("other").between("V2", "V3").hours(8));

        assertEquals(
                List.of(0.0, 0.0),
                calendar.entries().stream().map(Entry::sharedHours).toList());
        assertEquals(
                List.of(1, 2), calendar.entries().stream().map(Entry::group).toList());
        assertEquals(List.of(day(1)), calendar.entries().get(1).days());
    }

    @Test
    void onlyTheOrderRightBeforeShares() {
        // Three spans of a star: the one in the middle of the sequence shares with both others, whichever it is.
        WorkCalendar calendar = schedule(
                rules(1, 4, DAY_CREW),
                Orders.of("one").between("Center", "V1").hours(2),
                Orders.of("two").between("Center", "V2").hours(2),
                Orders.of("far").between("V8", "V9").hours(2),
                Orders.of("three").between("Center", "V3").hours(2));

        assertEquals(
                2, calendar.entries().stream().mapToDouble(Entry::sharedHours).sum());
        assertEquals(2, calendar.entries().stream().map(Entry::group).distinct().count());
    }

    @Test
    void vaultsWithoutANameAreNotShared() {
        WorkCalendar calendar = schedule(
                rules(1, 4, DAY_CREW),
                Orders.of("one").between("", "V1"),
                Orders.of("other").between("", "V2"));

        assertEquals(0, calendar.entries().get(1).sharedHours());
    }

    @Test
    void anOrderRunsThroughTheFollowingShiftsOfItsCrew() {
        WorkCalendar calendar = schedule(rules(1, 4, DAY_CREW), Orders.of("one").hours(20));

        assertEquals(List.of(day(0), day(1), day(2)), calendar.entries().get(0).days());
    }

    @Test
    void anOrderEndsInTheWeekInWhichItBegins() {
        WorkCalendar calendar = schedule(
                rules(1, 4, DAY_CREW),
                Orders.of("one").hours(30),
                Orders.of("other").hours(16));

        assertNotEquals(
                calendar.entries().get(0).week(), calendar.entries().get(1).week());
        assertEquals(day(7), calendar.entries().get(1).days().get(0));
    }

    @Test
    void anOrderLongerThanAWeekBeginsOnAMondayAndOthersFollowIt() {
        WorkCalendar calendar = schedule(
                rules(1, 4, DAY_CREW),
                Orders.of("long").between("V1", "V2").hours(44).priority(5),
                Orders.of("short").between("V2", "V3").hours(4));

        assertEquals(
                List.of(day(0), day(1), day(2), day(3), day(4), day(7)),
                entry(calendar, "long").days());
        Entry shortOne = entry(calendar, "short");
        assertEquals(List.of(day(7)), shortOne.days());
        assertEquals(4, shortOne.startHours());
        assertEquals(1, shortOne.sharedHours());
        assertEquals(1, shortOne.place());
    }

    @Test
    void aDayInAStopWindowIsLostAndWorkGoesOnAfterIt() {
        WorkCalendar calendar = schedule(
                with(rules(1, 4, DAY_CREW), closure("Parade", 1, 1)),
                Orders.of("one").hours(32));

        assertEquals(
                List.of(day(0), day(2), day(3), day(4)),
                calendar.entries().get(0).days());
    }

    @Test
    void aLostDayIsNotMadeUpForOnSaturday() {
        WorkCalendar calendar = schedule(
                with(rules(1, 4, DAY_CREW), closure("Parade", 1, 1)),
                Orders.of("one").hours(33));

        assertEquals(day(7), calendar.entries().get(0).days().get(0));
    }

    @Test
    void aClosureOfTheOrderHoldsNoneOfItsShifts() {
        WorkCalendar calendar =
                schedule(rules(1, 4, DAY_CREW), Orders.of("one").hours(16).closed(closure("School fair", 1, 2)));

        assertEquals(List.of(day(3), day(4)), calendar.entries().get(0).days());
    }

    @Test
    void workBeginsAfterItsEmbargoAndEndsByItsDate() {
        WorkCalendar calendar = schedule(
                rules(1, 4, DAY_CREW),
                Orders.of("one").hours(16).dates(day(10), day(15)),
                Orders.of("other").dates(LocalDate.MIN, day(0)));

        assertEquals(List.of(day(10), day(11)), entry(calendar, "one").days());
        assertEquals(List.of(day(0)), entry(calendar, "other").days());
    }

    @Test
    void permitsOfTheFirstWorkAreAppliedForWhenThePlanIsReadyAtTheSoonest() {
        WorkCalendar calendar = schedule(rules(1, 4, DAY_CREW), Orders.of("one").waits(9, 0));

        Entry one = calendar.entries().get(0);
        assertEquals(day(9), one.days().get(0));
        assertEquals(START, one.applyBy());
        assertEquals(day(9), one.checkBy());
    }

    @Test
    void aFieldCheckComesBeforeTheWork() {
        WorkCalendar calendar = schedule(rules(1, 4, DAY_CREW), Orders.of("one").waits(1, 3));

        Entry one = calendar.entries().get(0);
        assertEquals(day(3), one.days().get(0));
        assertEquals(START, one.checkBy());
        assertEquals(day(2), one.applyBy());
    }

    @Test
    void workWaitsForANeighborThatCannotBeginYet() {
        WorkCalendar calendar = schedule(
                rules(1, 4, DAY_CREW),
                Orders.of("one").between("V1", "V2"),
                Orders.of("late").between("V2", "V3").dates(day(2), LocalDate.MAX));

        assertEquals(
                1,
                entry(calendar, "late").sharedHours() + entry(calendar, "one").sharedHours());
        assertEquals(List.of(day(2)), entry(calendar, "one").days());
    }

    @Test
    void workDoesNotWaitWhereThatTakesTheRoomOfOthers() {
        WorkCalendar calendar = schedule(
                rules(1, 1, DAY_CREW),
                Orders.of("one").between("V1", "V2"),
                Orders.of("late").between("V2", "V3").hours(20).dates(day(2), LocalDate.MAX),
                Orders.of("soon").hours(16).dates(LocalDate.MIN, day(1)));

        assertEquals(3, calendar.entries().size());
    }

    @Test
    void nightWorkGoesToCrewsThatWorkNights() {
        WorkCalendar calendar =
                schedule(rules(1, 4, DAY_CREW, NIGHT_CREW), Orders.of("dark").byNight(), Orders.of("light"));

        assertEquals("Night crew", entry(calendar, "dark").crew());
        assertEquals("Day crew", entry(calendar, "light").crew());
    }

    @Test
    void aCrewThatWorksEitherDoesNotMixThemInAWeek() {
        WorkCalendar calendar =
                schedule(rules(1, 4, EITHER_CREW), Orders.of("dark").byNight(), Orders.of("light"));

        assertNotEquals(entry(calendar, "dark").week(), entry(calendar, "light").week());
    }

    @Test
    void aDistrictHasOnlySoManyInWorkInAWeek() {
        WorkCalendar calendar = schedule(
                with(rules(1, 4, DAY_CREW, crew("Second", Shifts.DAYS)), Map.of("North", 1)),
                Orders.of("one").district("North"),
                Orders.of("two").district("North"),
                Orders.of("three").district("South"));

        assertNotEquals(entry(calendar, "one").week(), entry(calendar, "two").week());
        assertEquals(START, entry(calendar, "three").week());
    }

    @Test
    void workStaysInItsYearEvenWhereTheYearChangesWithinAWeek() {
        CalendarRules rules = new CalendarRules(
                START,
                List.of(new ProgramYear(START, day(8)), new ProgramYear(day(9), day(20))),
                List.of(DAY_CREW),
                List.of(),
                Map.of());

        WorkCalendar calendar = schedule(
                rules,
                Orders.of("one").hours(40),
                Orders.of("two").hours(16).between("V1", "V2"),
                Orders.of("three").hours(24).year(1).between("V2", "V3"));

        assertEquals(List.of(day(7), day(8)), entry(calendar, "two").days());
        assertEquals(List.of(day(9), day(10), day(11)), entry(calendar, "three").days());
    }

    @Test
    void whatHasGreaterPriorityIsPlacedWhereNotAllHasRoom() {
        WorkCalendar calendar = schedule(
                rules(1, 1, DAY_CREW),
                Orders.of("little").hours(24).priority(1),
                Orders.of("much").hours(24).priority(3));

        assertEquals("much", calendar.entries().get(0).order().spanId());
        assertEquals("crews have no 24.0 free hours left in year 1", why(calendar));
    }

    @Test
    void aYearWhoseDaysAreAllClosedTakesNothing() {
        WorkCalendar calendar =
                schedule(with(rules(1, 4, DAY_CREW), closure("Network freeze", 0, 27)), Orders.of("one"));

        assertEquals("no crew has a shift in year 1; closed by Network freeze", why(calendar));
    }

    @Test
    void reasonsNameThePermits() {
        assertEquals(
                "its permits take 60 days from 2027-02-01, and year 1 ends on 2027-02-28",
                why(schedule(rules(1, 4, DAY_CREW), Orders.of("one").waits(60, 3))));
    }

    @Test
    void reasonsNameTheFieldCheck() {
        assertEquals(
                "its field check comes 40 days before the work, and not before 2027-02-01, and it must be done by 2027-02-11",
                why(schedule(
                        rules(1, 4, DAY_CREW), Orders.of("one").waits(0, 40).dates(LocalDate.MIN, day(10)))));
    }

    @Test
    void reasonsNameTheEmbargo() {
        assertEquals(
                "embargo until 2027-03-12, and year 1 ends on 2027-02-28",
                why(schedule(rules(1, 4, DAY_CREW), Orders.of("one").dates(day(40), LocalDate.MAX))));
    }

    @Test
    void reasonsNameTheLackOfNightCrews() {
        assertEquals(
                "no crew works nights",
                why(schedule(rules(1, 4, DAY_CREW), Orders.of("one").byNight())));
        assertEquals("no crew works days", why(schedule(rules(1, 4, NIGHT_CREW), Orders.of("one"))));
        assertEquals("no crew works days", why(schedule(rules(1, 4), Orders.of("one"))));
    }

    @Test
    void reasonsNameAYearOutsideOfTheProgram() {
        assertEquals(
                "the program has 1 year, and no year 3",
                why(schedule(rules(1, 4, DAY_CREW), Orders.of("one").year(2))));
    }

    @Test
    void reasonsNameLengthAndClosures() {
        assertEquals(
                "it takes 30.0 hours of a crew without a break, and no week in year 1 has so many in shifts in which it can"
                        + " be done; closed by Festival",
                why(schedule(
                        rules(1, 2, DAY_CREW),
                        Orders.of("one").hours(30).closed(closure("Festival", 2, 2), closure("Festival", 9, 9)))));
    }

    @Test
    void reasonsNameTheDistrict() {
        WorkCalendar calendar = schedule(
                with(rules(1, 1, DAY_CREW), Map.of("North", 1)),
                Orders.of("one").district("North").priority(2),
                Orders.of("two").district("North"));

        assertEquals(
                "district North may have 1 span in work in one week, and no week in year 1 has both room for another one and a"
                        + " crew with 4.0 free hours",
                why(calendar));
    }

    @Test
    void reasonsNameHoursAndThePartOfTheYear() {
        WorkCalendar calendar = schedule(
                rules(1, 2, DAY_CREW, NIGHT_CREW),
                Orders.of("one").hours(39).waits(7, 0).priority(2),
                Orders.of("two").hours(9.5).waits(7, 0),
                Orders.of("dark").byNight());

        assertEquals(
                "crews have no 9.5 free hours left in year 1 from 2027-02-08 to 2027-02-14 (its permits take 7 days from"
                        + " 2027-02-01)",
                why(calendar));
    }

    @Test
    void noOrdersAndNoYearsMakeAnEmptyCalendar() {
        assertEquals(List.of(), schedule(rules(1, 4, DAY_CREW)).entries());
        assertTrue(why(schedule(rules(0, 4, DAY_CREW), Orders.of("one"))).startsWith("the program has 0 years"));
    }

    @Test
    void ordersOfNoPriorityArePlacedWhereThereIsRoom() {
        WorkCalendar calendar = schedule(rules(1, 1, DAY_CREW), Orders.of("one").priority(0), Orders.of("two"));

        assertEquals(2, calendar.entries().size());
    }
}
