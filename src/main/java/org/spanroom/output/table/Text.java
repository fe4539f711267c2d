package org.spanroom.output.table;

/** Texts that came from outside, made fit for every format. */
public final class Text {
    private static final char REPLACEMENT = '\uFFFD';

    private Text() {}

    /**
     * Returns the text with the replacement character for what some format cannot hold: control characters other than tab
     * and line breaks, halves of surrogate pairs, and noncharacters.
     */
    public static String clean(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (!isPlain(text.charAt(i))) {
                return replaceFrom(text, i);
            }
        }
        return text;
    }

    private static boolean isPlain(char c) {
        return (c >= ' ' && c < 0x7F)
                || (c >= 0xA0 && c < Character.MIN_SURROGATE)
                || c == '\n'
                || c == '\t'
                || c == '\r';
    }

    private static String replaceFrom(String text, int from) {
        var cleaned = new StringBuilder(text.length()).append(text, 0, from);
        for (int i = from; i < text.length(); ) {
            int codePoint = text.codePointAt(i);
            cleaned.appendCodePoint(isHarmless(codePoint) ? codePoint : REPLACEMENT);
            i += Character.charCount(codePoint);
        }
        return cleaned.toString();
    }

    private static boolean isHarmless(int codePoint) {
        if (codePoint < Character.MIN_SURROGATE) {
            return isPlain((char) codePoint);
        }
        return codePoint > Character.MAX_SURROGATE && (codePoint & 0xFFFE) != 0xFFFE;
    }
}
