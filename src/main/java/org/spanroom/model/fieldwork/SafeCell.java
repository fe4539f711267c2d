package org.spanroom.model.fieldwork;

import java.util.regex.Pattern;

/**
 * Texts of the field book in a form that no spreadsheet runs as a formula: one that would begin with a sign of a formula has an
 * apostrophe in front, and comes back without it.
 */
public final class SafeCell {
    private static final String SIGNS = "=+-@\t\uFF1D\uFF0B\uFF0D\uFF20";

    private static final Pattern PLAIN_NUMBER = Pattern.compile("[+-]?\\d{1,30}(\\.\\d{1,30})?");

    private SafeCell() {}

    /** Returns a text as it is written. */
    public static String written(String text) {
        boolean isFormula = begins(text, 0) && !PLAIN_NUMBER.matcher(text).matches();
        return isFormula || isWritten(text) ? "'" + text : text;
    }

    /** Returns the text that was written so. */
    public static String read(String cell) {
        return isWritten(cell) ? cell.substring(1) : cell;
    }

    private static boolean isWritten(String cell) {
        return cell.startsWith("'") && (begins(cell, 1) || cell.startsWith("''"));
    }

    private static boolean begins(String text, int at) {
        return text.length() > at && SIGNS.indexOf(text.charAt(at)) >= 0;
    }
}
