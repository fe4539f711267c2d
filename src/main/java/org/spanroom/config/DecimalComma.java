package org.spanroom.config;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A number with a decimal comma, which a config does not take: a comma may also group digits, and separates items of a list. */
final class DecimalComma {
    private static final int DIGITS_OF_A_GROUP = 3;
    private static final Pattern WITH_COMMA = Pattern.compile("[-+]?\\d+,(\\d+)(\\s*[^\\d\\s,.][^,]*)?");

    private DecimalComma() {}

    /** Returns whether a text is a number with a comma, with or without a unit. */
    static boolean isIn(String text) {
        return WITH_COMMA.matcher(text.strip()).matches();
    }

    /** Returns what to write instead, as a sentence; "" where the text is no number with a comma. */
    static String remedy(String text) {
        Matcher number = WITH_COMMA.matcher(text.strip());
        if (!number.matches()) {
            return "";
        }
        // The comma of 1,000 may be either.
        return number.group(1).length() == DIGITS_OF_A_GROUP
                ? "A decimal point is expected, as in 4.5, and no comma between digits."
                : "A decimal point is expected, as in " + text.strip().replace(',', '.') + ".";
    }
}
