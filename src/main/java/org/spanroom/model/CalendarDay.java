package org.spanroom.model;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Optional;

/**
 * Days as a config or an option writes them: year, month and day, such as 2027-03-31.
 *
 * <p>The years 1900 to 2200 are our judgment: every duct and every plan is inside them, and what is outside is a slip of the keyboard,
 * from which years of calendars or dates beyond the last one would follow.
 */
public final class CalendarDay {
    private static final int FIRST_YEAR = 1900;
    private static final int LAST_YEAR = 2200;

    /** Which years, for people. */
    public static final String YEARS = "in the years " + FIRST_YEAR + " to " + LAST_YEAR;

    /** What a text must be, for people. */
    public static final String WANTED = "a date in the form 2027-03-31, " + YEARS;

    private CalendarDay() {}

    /** Returns the day of a text; empty where it is no day of those years. */
    public static Optional<LocalDate> find(String text) {
        try {
            return Optional.of(LocalDate.parse(text.strip()))
                    .filter(day -> day.getYear() >= FIRST_YEAR && day.getYear() <= LAST_YEAR);
        } catch (DateTimeException notADay) {
            return Optional.empty();
        }
    }

    /**
     * Refuses a text that is neither blank nor such a day.
     *
     * @param name of the value, for the message
     */
    public static void demandIfAny(String name, String text) {
        if (!text.isBlank() && find(text).isEmpty()) {
            throw new IllegalArgumentException(name + " must be " + WANTED + ", was '" + text + "'");
        }
    }
}
