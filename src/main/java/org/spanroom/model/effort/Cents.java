package org.spanroom.model.effort;

/**
 * Money in whole cents, a hundredth of the currency's unit. Sums of such amounts are exact up to some 10^13 units, so that they do not
 * depend on the order, and hence not on the threads, by which they are made.
 */
public final class Cents {
    private static final double CENTS = 100;

    private Cents() {}

    public static double of(double money) {
        return Math.rint(money * CENTS);
    }

    /** Returns an amount, or a sum, of cents in units of the currency. */
    public static double money(double cents) {
        return cents / CENTS;
    }
}
