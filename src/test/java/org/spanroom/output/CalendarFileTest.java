package org.spanroom.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import biweekly.Biweekly;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.util.DateTimeComponents;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TimeZone;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.model.program.ProgramItem;
import org.spanroom.model.program.ProgramResults;

/** What a general library for iCalendar reads from the file of a program, and the rules of RFC 5545 for its lines. */
class CalendarFileTest {
    private static final String CAUTION = "\nPlanning figures only; they do not authorize vault entry or pulling.";

    @Test
    void theWorkOfACrewInAWeekIsOneEventFromItsFirstToItsLastShift() {
        List<VEvent> work = events(AnnualSample.results(), "work");

        assertEquals(
                List.of(
                        "2027-03-01 to 2027-03-03: crew 1: 2 spans, B1, B2",
                        "2027-03-12 to 2027-03-16: crew 2: 1 span, B3",
                        "2028-03-06 to 2028-03-07: crew 1: 1 span, B1"),
                work.stream().map(CalendarFileTest::headline).toList());
        assertEquals("""
                1. S1 in B1, V1 to V2, 6.5 h, 2027-03-01; permits: lane closure, street cut; the crew issues on the day: vault entry
                2. S2 in B2, V2 to V3, 6.0 h, 2027-03-01 to 2027-03-02
                Hours on site: 12.5""" + CAUTION, description(work.get(0)));
        assertEquals(
                "1. S3 in B3, V3 to V4, 6.5 h, 2027-03-12 to 2027-03-15, by night\nHours on site: 6.5" + CAUTION,
                description(work.get(1)));
    }

    @Test
    void spansOfAWeekAreListedByTheirPlaces() {
        List<ProgramItem> items = List.of(
                new AnnualSample.Item("S2", "B2").by("crew 1", 2, "2027-03-02").build(),
                new AnnualSample.Item("S1", "B1").by("crew 1", 1, "2027-03-02").build());

        VEvent work = events(AnnualSample.results(items, List.of()), "work").get(0);

        assertEquals("2027-03-02 to 2027-03-03: crew 1: 2 spans, B1, B2", headline(work));
        assertTrue(description(work).startsWith("1. S1 in B1, "), description(work));
    }

    @Test
    void permitsOfADayAreOneEvent() {
        List<VEvent> permits = events(AnnualSample.results(), "permits");

        assertEquals(
                List.of(
                        "2027-01-30 to 2027-01-31: Apply for permits: S1, S2, 2 new ducts in B2",
                        "2027-02-10 to 2027-02-11: Apply for permits: S3",
                        "2028-02-05 to 2028-02-06: Apply for permits: S4"),
                permits.stream().map(CalendarFileTest::headline).toList());
        assertEquals("S1 (lane closure, street cut); S2; 2 new ducts in B2" + CAUTION, description(permits.get(0)));
    }

    @Test
    void manySpansOfADayAreCountedInTheSummaryAndListedThreeALine() {
        List<ProgramItem> items = IntStream.rangeClosed(1, 8)
                .mapToObj(number -> new AnnualSample.Item("S" + number, "B1").build())
                .toList();

        VEvent first = events(AnnualSample.results(items, List.of()), "permits").get(0);

        assertEquals(
                "Apply for permits: S1, S2, S3 and 6 more", first.getSummary().getValue());
        assertEquals("S1; S2; S3\nS4; S5; S6\nS7; S8; 2 new ducts in B2" + CAUTION, description(first));
    }

    @Test
    void checksOfADayAreOneEvent() {
        List<VEvent> checks = events(AnnualSample.results(), "field check");

        assertEquals(
                List.of("2027-02-15 to 2027-02-16: Field check: S2"),
                checks.stream().map(CalendarFileTest::headline).toList());
        assertEquals("S2: count the innerducts; V2 to V3, work from 2027-03-01" + CAUTION, description(checks.get(0)));
    }

    /** Every span of the program is in exactly one event of work, every one is applied for, and no event is there twice. */
    @ParameterizedTest
    @MethodSource("seeds")
    void everySpanIsInTheCalendarOnce(long seed) {
        var random = new Random(seed);
        List<ProgramItem> items = IntStream.range(0, 60)
                .mapToObj(number -> new AnnualSample.Item("Span" + number + ".", "B" + random.nextInt(9))
                        .by(
                                "crew " + random.nextInt(3),
                                number,
                                LocalDate.of(2027, 1, 4)
                                        .plusDays(random.nextInt(700))
                                        .toString())
                        .check(random.nextBoolean() ? "look" : "")
                        .build())
                .toList();
        ProgramResults results = AnnualSample.results(items, List.of());

        List<VEvent> all = parsed(CalendarFile.text(AnnualEvents.of(results), AnnualSample.READY_ON))
                .getEvents();

        for (ProgramItem item : items) {
            String name = item.span().facts().spanId();
            assertEquals(1, count(events(results, "work"), name), name);
            assertEquals(1, count(events(results, "permits"), name), name);
            int checks = item.span().facts().fieldCheck().isEmpty() ? 0 : 1;
            assertEquals(checks, count(events(results, "field check"), name), name);
        }
        Set<String> names = new TreeSet<>(
                all.stream().map(event -> event.getUid().getValue()).toList());
        assertEquals(all.size(), names.size());
        List<String> starts = all.stream()
                .map(event -> day(event.getDateStart().getValue().getRawComponents()))
                .toList();
        assertEquals(starts.stream().sorted().toList(), starts);
    }

    @Test
    void theFileFollowsTheRulesOfItsFormat() {
        ICalendar calendar = parsed(text());

        assertEquals(List.of(), calendar.validate(ICalVersion.V2_0).getWarnings());
        assertEquals("PUBLISH", calendar.getMethod().getValue());
        assertTrue(text().startsWith("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:"), text());
        assertTrue(text().endsWith("END:VEVENT\r\nEND:VCALENDAR\r\n"), text());
        assertFalse(text().replace("\r\n", "").matches("(?s).*[\r\n].*"), "a line ends otherwise");
        assertEquals(7, text().split("TRANSP:TRANSPARENT\r\n", -1).length - 1);
        assertEquals(7, text().split("DTSTAMP:20270115T000000Z\r\n", -1).length - 1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTC", "Pacific/Kiritimati", "America/Los_Angeles", "America/Sao_Paulo", "Asia/Kathmandu"})
    void theZoneOfTheMachineDoesNotShowInTheFile(String zone) {
        String here = text();
        TimeZone before = TimeZone.getDefault();
        try {
            TimeZone.setDefault(TimeZone.getTimeZone(zone));
            assertEquals(here, text());
        } finally {
            TimeZone.setDefault(before);
        }
    }

    @Test
    void noLineIsLongerThanTheFormatAllowsAndNoCharacterIsCut() {
        var item = new AnnualSample.Item("span " + "\u00e9\u6771\uD83D\uDEA7x".repeat(40), "B1")
                .permits("p".repeat(300))
                .build();
        String text = text(item);

        boolean isFolded = false;
        for (String line : text.split("\r\n", -1)) {
            assertTrue(line.getBytes(StandardCharsets.UTF_8).length <= 75, line);
            assertTrue(StandardCharsets.UTF_8.newEncoder().canEncode(line), line);
            isFolded |= line.startsWith(" ");
        }
        assertTrue(isFolded);
        String work = description(
                events(AnnualSample.results(List.of(item), List.of()), "work").get(0));
        assertTrue(work.startsWith("1. " + item.span().facts().spanId() + " in B1, "), work);
        assertTrue(
                work.contains("; permits: " + "p".repeat(300) + "; the crew issues on the day: vault entry\n"), work);
    }

    /** Names from outside cannot end an event, add a property or a line of their own, nor lose their commas. */
    @Test
    void hostileNamesStayText() {
        var item = new AnnualSample.Item("a,b;c\\n\"d\u0007", "x\r\nEND:VCALENDAR\r\nB,1;")
                .by("crew\nX-OWN:1\r\nEND:VEVENT", 1, "2027-03-01")
                .check("BEGIN:VALARM\rTRIGGER:-P1D")
                .permits("=1+1", "p\u2028q")
                .build();
        ProgramResults results = AnnualSample.results(List.of(item), List.of());

        ICalendar calendar = parsed(CalendarFile.text(AnnualEvents.of(results), AnnualSample.READY_ON));

        assertEquals(3, calendar.getEvents().size());
        assertTrue(calendar.getEvents().stream()
                .allMatch(event -> event.getExperimentalProperties().isEmpty()
                        && event.getAlarms().isEmpty()));
        VEvent work = events(results, "work").get(0);
        assertEquals(
                "crew X-OWN:1 END:VEVENT: 1 span, x END:VCALENDAR B,1;",
                work.getSummary().getValue());
        assertTrue(
                description(work).startsWith("1. a,b;c\\n\"d\uFFFD in x END:VCALENDAR B,1;, V1 to V2, 6.5 h, "),
                description(work));
        assertEquals(3, description(work).lines().count());
        VEvent permits = events(results, "permits").get(0);
        assertTrue(
                description(permits).startsWith("a,b;c\\n\"d\uFFFD (=1+1, p q); 2 new ducts in B2\n"),
                description(permits));
        VEvent check = events(results, "field check").get(0);
        assertTrue(description(check).contains(": BEGIN:VALARM TRIGGER:-P1D; V1"), description(check));
    }

    /** A calendar that is read again changes nothing; what is planned otherwise is another event. */
    @Test
    void theNameOfAnEventFollowsFromItsContent() {
        ProgramItem plain = new AnnualSample.Item("S1", "B1").build();
        ProgramItem night = new AnnualSample.Item("S1", "B1").night().build();

        assertEquals(uid(plain), uid(plain));
        assertFalse(uid(plain).equals(uid(night)));
        assertTrue(uid(plain).matches("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}"), uid(plain));
    }

    @Test
    void aProgramWithoutWorkHasACalendarWithoutEvents() {
        assertEquals(
                List.of(),
                parsed(CalendarFile.text(List.of(), AnnualSample.READY_ON)).getEvents());
    }

    static Stream<Long> seeds() {
        return Stream.iterate(1L, seed -> seed + 1).limit(10);
    }

    private static String text() {
        return CalendarFile.text(AnnualEvents.of(AnnualSample.results()), AnnualSample.READY_ON);
    }

    private static String text(ProgramItem item) {
        return CalendarFile.text(
                AnnualEvents.of(AnnualSample.results(List.of(item), List.of())), AnnualSample.READY_ON);
    }

    private static String uid(ProgramItem item) {
        return events(AnnualSample.results(List.of(item), List.of()), "work")
                .get(0)
                .getUid()
                .getValue();
    }

    private static ICalendar parsed(String text) {
        List<ICalendar> calendars = Biweekly.parse(text).all();
        assertEquals(1, calendars.size());
        return calendars.get(0);
    }

    /** Returns the events of a category. */
    private static List<VEvent> events(ProgramResults results, String category) {
        return parsed(CalendarFile.text(AnnualEvents.of(results), AnnualSample.READY_ON)).getEvents().stream()
                .filter(event -> event.getCategories().get(0).getValues().equals(List.of(category)))
                .toList();
    }

    private static long count(List<VEvent> events, String name) {
        return events.stream()
                .map(CalendarFileTest::description)
                .filter(description -> description.contains(name))
                .count();
    }

    private static String description(VEvent event) {
        return event.getDescription().getValue();
    }

    private static String headline(VEvent event) {
        return day(event.getDateStart().getValue().getRawComponents()) + " to "
                + day(event.getDateEnd().getValue().getRawComponents()) + ": "
                + event.getSummary().getValue();
    }

    private static String day(DateTimeComponents date) {
        assertFalse(date.hasTime());
        return LocalDate.of(date.getYear(), date.getMonth(), date.getDate()).toString();
    }
}
