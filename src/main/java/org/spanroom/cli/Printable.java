package org.spanroom.cli;

import java.util.regex.Pattern;

/** Keeps what stands in somebody's data from steering the terminal that it is shown on. */
final class Printable {
    private static final Pattern CONTROL = Pattern.compile(
            "[\\p{Cntrl}&&[^\\n]]|[\\u0080-\\u009f\\u061c\\u200e\\u200f\\u2028-\\u202e\\u2066-\\u2069]");

    private Printable() {}

    /** Returns the text as {@link #of} does and on one line. */
    static String line(String text) {
        return of(text).replace('\n', ' ');
    }

    /** Returns the text with control and direction-changing characters, line ends apart, replaced by '?'. */
    static String of(String text) {
        return CONTROL.matcher(text).replaceAll("?");
    }
}
