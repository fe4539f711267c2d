package org.spanroom.model.network;

/**
 * What a text begins with, as a number of the same order: nine characters of seven bits. A character that these cannot hold counts as the last one, and what follows it
 * does not count, so that texts which differ there only have the same number.
 */
final class LeadingText {
    private static final int BITS = 7;
    private static final int CHARACTERS = (Long.SIZE - 1) / BITS;
    private static final int LAST = (1 << BITS) - 1;

    private LeadingText() {}

    /** Returns the number of a text, 0 or more: no larger than that of a text which comes later. */
    static long of(String text) {
        long number = 0;
        boolean ends = false;
        for (int i = 0; i < CHARACTERS; i++) {
            ends |= i >= text.length();
            int character = ends ? 0 : Math.min(LAST, text.charAt(i));
            ends |= character == LAST;
            number = number << BITS | character;
        }
        return number;
    }
}
