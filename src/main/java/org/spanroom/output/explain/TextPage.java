package org.spanroom.output.explain;

import java.util.Locale;

/**
 * Text for a terminal, line by line: no line is wider than the page, and nothing that came from someone's data acts on the
 * terminal.
 *
 * <p>What is too long goes on in the next line, indented as asked, after a blank if there is one. The width counts characters
 * (code points), so that scripts of double width run wider.
 */
final class TextPage {
    static final int WIDTH = 100;

    private static final int LABEL_WIDTH = 8;

    private final StringBuilder text = new StringBuilder();

    /** Adds an empty line. */
    void gap() {
        text.append('\n');
    }

    /** Adds a line. */
    void line(String format, Object... values) {
        String whole = String.format(Locale.ROOT, format, values);
        int indent = 0;
        while (indent < whole.length() && whole.charAt(indent) == ' ') {
            indent++;
        }
        wrap(printable(whole), indent + 4);
    }

    /** Adds a line that goes on, where it is too long, under the given column. */
    void hanging(int indent, String format, Object... values) {
        wrap(printable(String.format(Locale.ROOT, format, values)), indent);
    }

    /** Adds a label and, beside it, words, which go on below themselves where they need more than a line. */
    void item(String label, String format, Object... values) {
        String words = String.format(Locale.ROOT, format, values);
        hanging(2 + LABEL_WIDTH, "  %-" + LABEL_WIDTH + "s%s", label, words);
    }

    String text() {
        return text.toString();
    }

    /** Returns words with a question mark for each character that is not seen but acts: controls, direction marks, halves. */
    static String printable(String words) {
        var seen = new StringBuilder(words.length());
        words.codePoints().forEach(point -> seen.appendCodePoint(isSeen(point) ? point : '?'));
        return seen.toString();
    }

    private static boolean isSeen(int point) {
        return switch (Character.getType(point)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.SURROGATE,
                    Character.PRIVATE_USE,
                    Character.UNASSIGNED,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR -> false;
            default -> true;
        };
    }

    private void wrap(String line, int indent) {
        int[] points = line.codePoints().toArray();
        int from = 0;
        int room = WIDTH;
        while (points.length - from > room) {
            int end = lastBlank(points, from, from + room);
            boolean hasBlank = end > from + (from == 0 ? indent : 0);
            if (!hasBlank) {
                end = from + room;
            }
            put(points, from, end);
            from = hasBlank ? end + 1 : end;
            text.append(" ".repeat(indent));
            room = WIDTH - indent;
        }
        put(points, from, points.length);
    }

    /** Returns the place of the last blank in the range or just after it, or where the range begins. */
    private static int lastBlank(int[] points, int from, int to) {
        for (int i = to; i > from; i--) {
            if (points[i] == ' ') {
                return i;
            }
        }
        return from;
    }

    private void put(int[] points, int from, int to) {
        int end = to;
        while (end > from && points[end - 1] == ' ') {
            end--;
        }
        text.append(new String(points, from, end - from)).append('\n');
    }
}
