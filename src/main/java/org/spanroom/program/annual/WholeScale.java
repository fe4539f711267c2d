package org.spanroom.program.annual;

/** By what amounts are multiplied to become whole numbers: a power of ten that makes all of them whole, or else as many bits as do no harm. */
final class WholeScale {
    private static final double[] TENS = {1, 10, 100, 1000};
    private static final double MOST = Math.scalb(1.0, 40);
    private static final int BITS = 36;
    private static final double NEAR = 1e-6;

    private double sum;
    private final boolean[] isWhole = {true, true, true, true};

    void see(double amount) {
        sum += Math.abs(amount);
        for (int i = 0; i < TENS.length; i++) {
            double scaled = amount * TENS[i];
            isWhole[i] &= Math.abs(scaled - Math.rint(scaled)) <= 1e-12 * Math.abs(scaled);
        }
    }

    double factor() {
        for (int i = 0; i < TENS.length; i++) {
            if (isWhole[i] && sum * TENS[i] < MOST) {
                return TENS[i];
            }
        }
        return Math.scalb(1.0, BITS - Math.getExponent(sum));
    }

    /** Returns the largest whole number that is not above, but for rounding. */
    static long down(double scaled) {
        double nearest = Math.rint(scaled);
        return (long) (Math.abs(nearest - scaled) <= NEAR ? nearest : Math.floor(scaled));
    }

    /** Returns the smallest whole number that is not below, but for rounding. */
    static long up(double scaled) {
        return -down(-scaled);
    }
}
