package org.spanroom.cli;

import java.util.regex.Pattern;

/** Keeps what stands in somebody's data from steering the terminal that it is shown on. */
final class Printable {
    private static final Pattern CONTROL = Pattern.compile(
            "[\\p{Cntrl}&&[^\\n]]|[\\u0080-\\u009f\\u061c\\u200e\\u200f\\u2028-\\u202e\\u2066-\\u2069]");

    /** The same of a whole output, where tabs and line ends have their place. */
    private static final Pattern UNEXPECTED = Pattern.compile("(?![\\t\\n]|\\r\\n)(?:" + CONTROL.pattern() + ")");

    private Printable() {}

    /**
     * Returns an output in which each control or direction-changing character is written as JSON writes it, such as {@code \\u202e}: so JSON
     * keeps its meaning, and other texts show what is in them.
     */
    static String escaped(String output) {
        return UNEXPECTED
                .matcher(output)
                .replaceAll(
                        found -> String.format("\\\\u%04x", (int) found.group().charAt(0)));
    }

    /** Returns the text as {@link #of} does and on one line. */
    static String line(String text) {
        return of(text).replace('\n', ' ');
    }

    /** Returns the text with control and direction-changing characters, line ends apart, replaced by '?'. */
    static String of(String text) {
        return CONTROL.matcher(text).replaceAll("?");
    }
}
