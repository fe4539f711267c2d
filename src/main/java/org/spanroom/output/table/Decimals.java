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

    /** Of a long. */
    private static final int MOST_DIGITS = 19;

    /** The digits of the numbers from 00 to 99. */
    private static final byte[] PAIRS = pairs();

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

    /** Returns the double that is nearest to so many units of the last decimal. */
    static double ofUnits(long units, int decimals) {
        return (double) units / POWERS_OF_TEN[decimals];
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
        return formatUnits(value < 0 ? -units : units, decimals, into, at);
    }

    /**
     * Writes a number of so many units of its last decimal, fewer than 2<sup>53</sup>.
     *
     * @return the place after the last byte written
     */
    static int formatUnits(long units, int decimals, byte[] into, int at) {
        int start = at;
        if (units < 0) {
            into[start++] = '-';
        }
        long magnitude = Math.abs(units);
        if (decimals == 0) {
            return padded(magnitude, digits(magnitude), into, start);
        }
        int wholeDigits = Math.max(1, digits(magnitude) - decimals);
        long whole = magnitude / POWERS_OF_TEN[decimals];
        int end = padded(whole, wholeDigits, into, start);
        into[end++] = '.';
        return padded(magnitude - whole * POWERS_OF_TEN[decimals], decimals, into, end);
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
        return padded(magnitude, digits(magnitude), into, start);
    }

    private static int digits(long magnitude) {
        int digits = 1;
        for (long power = 10; digits < MOST_DIGITS && power <= magnitude; power *= 10) {
            digits++;
        }
        return digits;
    }

    /** Writes two digits at a time, which takes half of the divisions. */
    private static int padded(long value, int digits, byte[] into, int at) {
        long rest = value;
        int i = at + digits;
        while (i - at >= 2) {
            long hundreds = rest / 100;
            int pair = 2 * (int) (rest - 100 * hundreds);
            into[--i] = PAIRS[pair + 1];
            into[--i] = PAIRS[pair];
            rest = hundreds;
        }
        if (i > at) {
            into[at] = (byte) ('0' + rest % 10);
        }
        return at + digits;
    }

    private static byte[] pairs() {
        byte[] pairs = new byte[200];
        for (int number = 0; number < 100; number++) {
            pairs[2 * number] = (byte) ('0' + number / 10);
            pairs[2 * number + 1] = (byte) ('0' + number % 10);
        }
        return pairs;
    }
}
