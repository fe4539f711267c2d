package org.spanroom.output.explain;

import java.util.Locale;

/** Round numbers for axes and scale bars: 1, 2 or 5 times a power of ten. */
public final class RoundNumbers {
    private RoundNumbers() {}

    /** Returns a round number as people write it. */
    public static String plain(double value) {
        String text = String.format(Locale.ROOT, "%.4f", value);
        return text.replaceAll("\\.?0+$", "");
    }

    /** Returns the smallest of 1, 2, 5 times a power of ten that is not below the value. */
    static double above(double value) {
        double power = Math.pow(10, Math.floor(Math.log10(value)));
        for (double factor : new double[] {1, 2, 5}) {
            if (factor * power >= value * (1 - 1e-9)) {
                return factor * power;
            }
        }
        return 10 * power;
    }

    /** Returns the largest of 1, 2, 5 times a power of ten that is not above the value. */
    public static double below(double value) {
        double power = Math.pow(10, Math.floor(Math.log10(value)));
        for (double factor : new double[] {10, 5, 2}) {
            if (factor * power <= value * (1 + 1e-9)) {
                return factor * power;
            }
        }
        return power;
    }
}
