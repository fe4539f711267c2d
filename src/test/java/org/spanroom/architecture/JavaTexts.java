package org.spanroom.architecture;

/** The comments and string literals of a Java source; everything else is blank, so that lines keep their numbers. */
final class JavaTexts {
    private final String source;
    private final StringBuilder texts = new StringBuilder();
    private int at;

    private JavaTexts(String source) {
        this.source = source;
    }

    static String of(String source) {
        var scan = new JavaTexts(source);
        while (scan.at < source.length()) {
            scan.step();
        }
        return scan.texts.toString();
    }

    private void step() {
        if (source.startsWith("//", at)) {
            keepTo(endOf("\n", at));
        } else if (source.startsWith("/*", at)) {
            keepTo(endOf("*/", at + 2));
        } else if (source.startsWith("\"\"\"", at)) {
            keepTo(closing("\"\"\"", at + 3));
        } else if (source.charAt(at) == '"') {
            keepTo(closing("\"", at + 1));
        } else if (source.charAt(at) == '\'') {
            int end = closing("'", at + 1);
            texts.append(" ".repeat(end - at));
            at = end;
        } else {
            texts.append(source.charAt(at) == '\n' ? '\n' : ' ');
            at++;
        }
    }

    private void keepTo(int end) {
        texts.append(source, at, end);
        at = end;
    }

    private int endOf(String mark, int from) {
        int found = source.indexOf(mark, from);
        return found < 0 ? source.length() : found + mark.length();
    }

    /** Returns the end of a literal, past its closing mark; what follows a backslash closes nothing. */
    private int closing(String mark, int from) {
        int place = from;
        while (place < source.length() && !source.startsWith(mark, place)) {
            place += source.charAt(place) == '\\' ? 2 : 1;
        }
        return Math.min(source.length(), place + mark.length());
    }
}
