package org.spanroom.model;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/** Numbers in texts for people: a count with its noun in the right form, and decimals that never read {@code -0.00}. */
public final class Counted {
    private Counted() {}

    /** Returns a count with a noun whose plural has an s: {@code 1 zone}, {@code 1,200 zones}. */
    public static String of(long count, String noun) {
        return of(count, noun, noun + "s");
    }

    /** Returns a count with its noun: {@code 1 vertex}, {@code 3 vertices}. */
    public static String of(long count, String one, String many) {
        return String.format(Locale.ROOT, "%,d %s", count, form(count, one, many));
    }

    /** Returns the form of a verb or a noun that a count asks for: {@code is} for 1, {@code are} for the others. */
    public static String form(long count, String one, String many) {
        return count == 1 ? one : many;
    }

    /** Returns a number with the given number of decimals and commas between thousands; a number that rounds to 0 has no sign. */
    public static String fixed(double value, int decimals) {
        return String.format(Locale.ROOT, "%,." + decimals + "f", rounded(value, decimals));
    }

    /** Returns a whole number with commas between thousands. */
    public static String whole(long value) {
        return String.format(Locale.ROOT, "%,d", value);
    }

    /** Returns a change with its sign, {@code +0.25} or {@code -0.25}; one that rounds to 0 has none: {@code 0.00}. */
    public static String signed(double value, int decimals) {
        BigDecimal rounded = rounded(value, decimals);
        return (rounded.signum() > 0 ? "+" : "") + fixed(value, decimals);
    }

    private static BigDecimal rounded(double value, int decimals) {
        return new BigDecimal(Double.toString(value)).setScale(decimals, RoundingMode.HALF_UP);
    }
}
