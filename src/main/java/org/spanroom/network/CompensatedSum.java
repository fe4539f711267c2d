package org.spanroom.network;

/**
 * A sum of many lengths that loses nothing to rounding that matters: Neumaier's compensated summation (ZAMM 54, 1974).
 * The error is a few units in the last place of the sum, whatever the number of summands.
 */
final class CompensatedSum {
    private double sum;
    private double lost;

    void add(double value) {
        double next = sum + value;
        lost += Math.abs(sum) >= Math.abs(value) ? (sum - next) + value : (value - next) + sum;
        sum = next;
    }

    double value() {
        return sum + lost;
    }
}
