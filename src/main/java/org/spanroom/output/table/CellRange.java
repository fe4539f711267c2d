package org.spanroom.output.table;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * What a cell that is not empty may say, so that a cell that was changed is found when a file is read back. A range has all values that the
 * program can write, whatever its input.
 */
public sealed interface CellRange {
    /** From there a double does not hold cents exactly; no amount of one span is near it. */
    double LARGEST_AMOUNT = 1e15;

    /** Any finite number. */
    Numbers NUMBER = new Numbers(-Double.MAX_VALUE, Double.MAX_VALUE);

    /** Forces, utilizations and quotients: they grow without a limit. */
    Numbers NOT_NEGATIVE = new Numbers(0, Double.MAX_VALUE);

    /** Lengths, hours, masses, money and other amounts that cannot be below zero. */
    Numbers AMOUNT = new Numbers(0, LARGEST_AMOUNT);

    Numbers PERCENT = new Numbers(0, 100);

    Numbers WHOLE = new Numbers(Integer.MIN_VALUE, Integer.MAX_VALUE);

    Numbers COUNT = new Numbers(0, Integer.MAX_VALUE);

    /** Ranks. */
    Numbers PLACE = new Numbers(1, Integer.MAX_VALUE);

    /** What a column has that declares no range: any text, any finite number. */
    CellRange UNDECLARED = new Texts("a text", text -> true);

    Texts DAY = new Texts("a day that exists, as year-month-day", CellRange::isDay);

    /** Words of lower-case letters, digits and underscores, joined by ;. */
    Texts KEYS = new Texts("keys joined by ;", CellRange::isKeys);

    /** Unsigned, of at most 64 bits. */
    Texts HEXADECIMAL = new Texts("a hexadecimal number of 1 to 16 digits", CellRange::isHexadecimal);

    /** Returns what a good cell says, for a message. */
    String expected();

    /**
     * Numbers.
     *
     * @param lowest the smallest that may stand there
     * @param highest the largest
     */
    record Numbers(double lowest, double highest) implements CellRange {
        /** Returns whether a number may stand there; NaN may not. */
        public boolean accepts(double number) {
            return number >= lowest && number <= highest;
        }

        @Override
        public String expected() {
            if (lowest <= Integer.MIN_VALUE) {
                return "a number";
            }
            return highest > PERCENT.highest
                    ? "a number, " + (long) lowest + " or larger"
                    : "a number from " + (long) lowest + " to " + (long) highest;
        }
    }

    /**
     * Texts.
     *
     * @param expected what a good one is, for a message
     * @param accepts finds whether a text, never empty, is one
     */
    record Texts(String expected, Predicate<String> accepts) implements CellRange {}

    /** Returns the range of one key. */
    static Texts oneOf(Stream<String> keys) {
        Set<String> known = new LinkedHashSet<>(keys.toList());
        return new Texts("one of " + String.join(", ", known), known::contains);
    }

    /** Returns the range of several keys, joined by ;. */
    static Texts listOf(Stream<String> keys) {
        Set<String> known = new LinkedHashSet<>(keys.toList());
        return new Texts("keys joined by ;, of " + String.join(", ", known), text -> isListOf(text, known));
    }

    private static boolean isListOf(String text, Collection<String> known) {
        int from = 0;
        for (int end = text.indexOf(';'); end >= 0; end = text.indexOf(';', from)) {
            if (!known.contains(text.substring(from, end))) {
                return false;
            }
            from = end + 1;
        }
        return known.contains(text.substring(from));
    }

    /** Returns whether a text is a day of the calendar, as ISO 8601 writes it. */
    static boolean isDay(String text) {
        try {
            LocalDate.parse(text);
            return true;
        } catch (DateTimeParseException notADay) {
            return false;
        }
    }

    private static boolean isKeys(String text) {
        char before = ';';
        for (int at = 0; at < text.length(); at++) {
            char letter = text.charAt(at);
            boolean isWord = (letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9') || letter == '_';
            if (!isWord && (letter != ';' || before == ';')) {
                return false;
            }
            before = letter;
        }
        return before != ';';
    }

    private static boolean isHexadecimal(String text) {
        return text.length() <= 16 && text.chars().allMatch(digit -> Character.digit(digit, 16) >= 0);
    }
}
