package org.spanroom.output;

import org.jspecify.annotations.Nullable;
import org.spanroom.output.table.Column;

/** Cells of comma-separated values, read back as what was written. */
final class Cells {
    /** So many digits are a whole number that a double holds exactly. */
    private static final int MOST_DIGITS = 15;

    /** A double holds each exactly, so that one division gives the double nearest to the decimal fraction. */
    private static final double[] POWERS_OF_TEN = {
        1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15
    };

    private Cells() {}

    /**
     * Returns a cell's value: String, Long, Double or Boolean; null where it is empty.
     *
     * @throws NumberFormatException if it is no number and its column has numbers
     */
    static @Nullable Object value(String cell, Column.Type type) {
        if (cell.isEmpty()) {
            return null;
        }
        return switch (type) {
            case TEXT -> cell;
            case INTEGER -> Long.valueOf(cell);
            case REAL -> number(cell);
            case FLAG -> Boolean.valueOf(cell);
        };
    }

    /** Returns the number that a cell says; NaN where it says none, or none that is finite. */
    static double number(String cell) {
        int length = cell.length();
        int start = cell.charAt(0) == '-' ? 1 : 0;
        int point = length;
        long units = 0;
        for (int at = start; at < length; at++) {
            char digit = cell.charAt(at);
            if (digit >= '0' && digit <= '9' && at - start <= MOST_DIGITS) {
                units = 10 * units + (digit - '0');
            } else if (digit == '.' && point == length && at > start && at + 1 < length) {
                point = at;
            } else {
                return rare(cell);
            }
        }
        int digits = length - start - (point < length ? 1 : 0);
        if (digits == 0 || digits > MOST_DIGITS) {
            return rare(cell);
        }
        double magnitude = units / POWERS_OF_TEN[Math.max(0, length - point - 1)];
        return start == 0 ? magnitude : -magnitude;
    }

    /** Numbers of many digits, as Java writes them, e.g. 1.5E18. */
    private static double rare(String cell) {
        for (int at = 0; at < cell.length(); at++) {
            if ("0123456789.-E".indexOf(cell.charAt(at)) < 0) {
                return Double.NaN;
            }
        }
        try {
            double number = Double.parseDouble(cell);
            return Double.isFinite(number) ? number : Double.NaN;
        } catch (NumberFormatException notANumber) {
            return Double.NaN;
        }
    }
}
