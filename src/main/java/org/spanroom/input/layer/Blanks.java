package org.spanroom.input.layer;

/** Blanks at the ends of a text, those included that web pages and spreadsheets bring along and that cannot be seen. */
public final class Blanks {
    /** Blanks at which no line may break, one without a width, and a byte-order mark in the middle of a file. */
    private static final String UNSEEN = "\u00a0\u2007\u202f\u200b\ufeff";

    private Blanks() {}

    /** Returns a text without the blanks at its ends. */
    public static String strip(String text) {
        int from = 0;
        int to = text.length();
        while (from < to && isBlank(text.charAt(from))) {
            from++;
        }
        while (to > from && isBlank(text.charAt(to - 1))) {
            to--;
        }
        return text.substring(from, to);
    }

    private static boolean isBlank(char c) {
        return Character.isWhitespace(c) || (c >= UNSEEN.charAt(0) && UNSEEN.indexOf(c) >= 0);
    }
}
