package org.spanroom.output.table;

import java.nio.charset.StandardCharsets;

/**
 * Decimal numbers as text, the same in every format and locale.
 *
 * <p>A number is rounded half away from zero at the last digit asked for. Beyond 2<sup>53</sup> units of that digit a double
 * has no such digit any more; it is then written in Java's scientific notation, which every format's readers know.
 */
public final class Decimals {
    /** Enough for any number that {@link #format} writes. */
    static final int MOST_BYTES = 40;

    private static final long[] POWERS_OF_TEN = {
        1, 10, 100, 1_000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000, 1_000_000_000
    };
    private static final double MOST_UNITS = 9_007_199_254_740_992.0;

    private Decimals() {}

    /** Returns the double that is nearest to the number with so many decimals; never minus zero. */
    public static double round(double value, int decimals) {
        double units = Math.abs(value) * POWERS_OF_TEN[decimals];
        if (!(units < MOST_UNITS)) {
            return value;
        }
        double rounded = (double) Math.round(units) / POWERS_OF_TEN[decimals];
        return value < 0 ? 0.0 - rounded : rounded;
    }

    /**
     * Writes a finite number with so many decimals.
     *
     * @return the place after the last byte written
     */
    static int format(double value, int decimals, byte[] into, int at) {
        double magnitude = Math.abs(value) * POWERS_OF_TEN[decimals];
        if (!(magnitude < MOST_UNITS)) {
            byte[] scientific = Double.toString(value).getBytes(StandardCharsets.US_ASCII);
            System.arraycopy(scientific, 0, into, at, scientific.length);
            return at + scientific.length;
        }
        long units = Math.round(magnitude);
        int end = at;
        if (value < 0 && units != 0) {
            into[end++] = '-';
        }
        end = format(units / POWERS_OF_TEN[decimals], into, end);
        if (decimals > 0) {
            into[end++] = '.';
            end = padded(units % POWERS_OF_TEN[decimals], decimals, into, end);
        }
        return end;
    }

    /** As {@link #format(double, int, byte[], int)}, without zeros at the end of the fraction. */
    static int formatShort(double value, int decimals, byte[] into, int at) {
        int end = format(value, decimals, into, at);
        if (decimals == 0 || !(Math.abs(value) * POWERS_OF_TEN[decimals] < MOST_UNITS)) {
            return end;
        }
        while (into[end - 1] == '0') {
            end--;
        }
        return into[end - 1] == '.' ? end - 1 : end;
    }

    /**
     * Writes a whole number.
     *
     * @return the place after the last byte written
     */
    static int format(long value, byte[] into, int at) {
        if (value == Long.MIN_VALUE) {
            byte[] least = Long.toString(value).getBytes(StandardCharsets.US_ASCII);
            System.arraycopy(least, 0, into, at, least.length);
            return at + least.length;
        }
        int start = at;
        if (value < 0) {
            into[start++] = '-';
        }
        long magnitude = Math.abs(value);
        int digits = 1;
        for (long rest = magnitude / 10; rest != 0; rest /= 10) {
            digits++;
        }
        return padded(magnitude, digits, into, start);
    }

    private static int padded(long value, int digits, byte[] into, int at) {
        long rest = value;
        for (int i = at + digits - 1; i >= at; i--) {
            into[i] = (byte) ('0' + rest % 10);
            rest /= 10;
        }
        return at + digits;
    }
}
