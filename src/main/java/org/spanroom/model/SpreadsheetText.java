package org.spanroom.model;

import java.util.regex.Pattern;

/**
 * Texts in a form that no spreadsheet runs as a formula: where a cell could begin with a sign of a formula, an apostrophe stands in front, and the
 * text comes back without it.
 *
 * <p>A cell begins with the text, and for a program that splits at other marks than commas behind each semicolon, tab and line break of it. Blanks of
 * any kind, quotation marks and invisible characters do not hide a sign, since some programs drop them. A plain number stays as it is. By
 * OWASP, "CSV Injection", from memory; what is more than that is our judgment.
 */
public final class SpreadsheetText {
    private static final char GUARD = '\'';

    /** Ordinary, full-width and small forms, which some spreadsheets treat as the ordinary ones. */
    private static final String SIGNS = "=+-@\uFF1D\uFF0B\uFF0D\uFF20\uFE66\uFE62\uFE63\uFE6B";

    private static final String SEPARATORS = ";\t\n\r";

    private static final int ASCII = 128;
    private static final byte PLAIN = 0;
    private static final byte SEPARATOR = 1;
    private static final byte SIGN = 2;
    private static final byte UNSEEN = 3;
    private static final byte[] KINDS = kinds();

    private static final Pattern PLAIN_NUMBER = Pattern.compile("[+-]?\\d{1,30}(\\.\\d{1,30})?");

    private SpreadsheetText() {}

    /** Returns a text as it is written. */
    public static String guarded(String text) {
        var written = new StringBuilder(text.length() + 1);
        for (int at = 0; at < text.length(); at++) {
            if (beginsCell(text, at) && isFormula(text, at, at == 0)) {
                written.append(GUARD);
            }
            written.append(text.charAt(at));
        }
        return written.length() == text.length() ? text : written.toString();
    }

    /** Returns the text that was written so: the opposite of {@link #guarded}, for every text. */
    public static String restored(String written) {
        var text = new StringBuilder(written.length());
        for (int at = 0; at < written.length(); at++) {
            boolean isGuard =
                    written.charAt(at) == GUARD && beginsCell(written, at) && isFormula(written, at + 1, at == 0);
            if (!isGuard) {
                text.append(written.charAt(at));
            }
        }
        return text.length() == written.length() ? written : text.toString();
    }

    /** Returns whether {@link #guarded} may change a text in UTF-8: a quick look at its bytes, true in case of doubt. */
    public static boolean mayBeFormula(byte[] utf8, int start, int length) {
        boolean atStart = true;
        for (int i = start; i < start + length; i++) {
            byte c = utf8[i];
            byte kind = c < 0 ? SIGN : KINDS[c];
            if (kind == PLAIN) {
                atStart = false;
            } else if (kind == SEPARATOR) {
                if (atStart && c != ';') {
                    return true;
                }
                atStart = true;
            } else if (atStart && kind == SIGN) {
                return true;
            }
        }
        return false;
    }

    /** What an ASCII character means at the beginning of a cell: a sign of a formula, the end of the cell, nothing seen, or a text. */
    private static byte[] kinds() {
        byte[] kinds = new byte[ASCII];
        for (int c = 0; c < ASCII; c++) {
            if (SEPARATORS.indexOf(c) >= 0) {
                kinds[c] = SEPARATOR;
            } else if (SIGNS.indexOf(c) >= 0) {
                kinds[c] = SIGN;
            } else if (c == GUARD || c == '"' || c <= ' ' || c == ASCII - 1) {
                kinds[c] = UNSEEN;
            }
        }
        return kinds;
    }

    private static boolean beginsCell(String text, int at) {
        return at == 0 || SEPARATORS.indexOf(text.charAt(at - 1)) >= 0;
    }

    /** @param isWhole whether the cell begins with the text, where some programs drop a tab or a line break */
    private static boolean isFormula(String text, int from, boolean isWhole) {
        int at = from;
        while (at < text.length() && text.charAt(at) == GUARD) {
            at++;
        }
        if (isWhole && at < text.length() && "\t\n\r".indexOf(text.charAt(at)) >= 0) {
            return true;
        }
        while (at < text.length() && isUnseen(text.charAt(at))) {
            at++;
        }
        if (at == text.length() || SIGNS.indexOf(text.charAt(at)) < 0) {
            return false;
        }
        int end = at;
        while (end < text.length() && SEPARATORS.indexOf(text.charAt(end)) < 0) {
            end++;
        }
        return !PLAIN_NUMBER.matcher(text.substring(at, end)).matches();
    }

    private static boolean isUnseen(char c) {
        if (SEPARATORS.indexOf(c) >= 0) {
            return false;
        }
        int type = Character.getType(c);
        return c == GUARD
                || c == '"'
                || Character.isSpaceChar(c)
                || type == Character.CONTROL
                || type == Character.FORMAT;
    }
}
