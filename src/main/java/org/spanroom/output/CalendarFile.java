package org.spanroom.output;

import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.io.text.ICalWriter;
import biweekly.property.Method;
import biweekly.util.DateTimeComponents;
import biweekly.util.ICalDate;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

/**
 * Events as iCalendar (RFC 5545), for the calendars of other programs: whole days that do not block time, each with the caution on planning
 * figures as the last line of its description.
 *
 * <p>Nothing in it is of the time of writing: the stamp is given, and the name of an event follows from its content. So a file that is read
 * twice by a calendar changes nothing, and an event that is planned otherwise is another one.
 */
final class CalendarFile {
    private static final String PRODUCT = "-//Spanroom//Annual program//EN";
    private static final int LONGEST_LINE_OCTETS = 75;
    private static final String LINE_END = "\r\n";

    private CalendarFile() {}

    /**
     * Returns the text of the file.
     *
     * @param stampedOn the day on which the events were planned
     */
    static String text(List<AnnualEvent> events, LocalDate stampedOn) {
        var calendar = new ICalendar();
        calendar.setProductId(PRODUCT);
        calendar.setMethod(Method.publish());
        calendar.setName("Annual program");
        calendar.setDescription(PlanningCaution.TEXT);
        for (AnnualEvent event : events) {
            calendar.addEvent(component(event, stampedOn));
        }
        return folded(unfolded(calendar));
    }

    private static VEvent component(AnnualEvent event, LocalDate stampedOn) {
        String description = String.join("\n", event.lines()) + "\n" + PlanningCaution.TEXT;
        var component = new VEvent();
        component.setUid(name(event, description));
        component.setDateTimeStamp(new ICalDate(
                new DateTimeComponents(
                        stampedOn.getYear(), stampedOn.getMonthValue(), stampedOn.getDayOfMonth(), 0, 0, 0, true),
                true));
        component.setDateStart(day(event.from()));
        // The end of whole days is the day after them (RFC 5545, section 3.6.1).
        component.setDateEnd(day(event.until().plusDays(1)));
        component.setSummary(event.summary());
        component.setDescription(description);
        component.addCategories(event.kind().words());
        component.setTransparency(true);
        return component;
    }

    private static String name(AnnualEvent event, String description) {
        String content = String.join(
                "\n",
                event.kind().words(),
                event.from().toString(),
                event.until().toString(),
                event.summary(),
                description);
        return UUID.nameUUIDFromBytes(content.getBytes(StandardCharsets.UTF_8)).toString();
    }

    private static ICalDate day(LocalDate day) {
        return new ICalDate(new DateTimeComponents(day.getYear(), day.getMonthValue(), day.getDayOfMonth()), false);
    }

    private static String unfolded(ICalendar calendar) {
        var text = new StringWriter();
        try (var writer = new ICalWriter(text, ICalVersion.V2_0)) {
            writer.getVObjectWriter().getFoldedLineWriter().setLineLength(null);
            writer.write(calendar);
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
        return text.toString();
    }

    /** Folds lines at 75 octets (RFC 5545, section 3.1) and between characters; the library counts characters. */
    private static String folded(String text) {
        var folded = new StringBuilder(text.length());
        text.lines().forEach(line -> fold(line, folded));
        return folded.toString();
    }

    private static void fold(String line, StringBuilder folded) {
        int octets = 0;
        for (int i = 0; i < line.length(); ) {
            int codePoint = line.codePointAt(i);
            int more = octets(codePoint);
            if (octets + more > LONGEST_LINE_OCTETS) {
                folded.append(LINE_END).append(' ');
                octets = 1;
            }
            folded.appendCodePoint(codePoint);
            octets += more;
            i += Character.charCount(codePoint);
        }
        folded.append(LINE_END);
    }

    /** Returns how many bytes a character has in UTF-8 (RFC 3629, section 3). */
    private static int octets(int codePoint) {
        if (codePoint < 0x80) {
            return 1;
        }
        return codePoint < 0x800 ? 2 : codePoint < 0x10000 ? 3 : 4;
    }
}
