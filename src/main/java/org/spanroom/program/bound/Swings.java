package org.spanroom.program.bound;

/** How much the cost of each trunk swings from step to step: where it does, the bound takes it in parts. */
final class Swings {
    private static final double KEPT = 0.95;

    private final double[] means;
    private final double[] squares;
    private double weight;

    Swings(int trunks) {
        means = new double[trunks];
        squares = new double[trunks];
    }

    /** Adds the costs of a step; earlier ones fade. */
    void add(double[] moneys) {
        weight = KEPT * weight + 1;
        for (int t = 0; t < means.length; t++) {
            means[t] = KEPT * means[t] + moneys[t];
            squares[t] = KEPT * squares[t] + moneys[t] * moneys[t];
        }
    }

    double mean(int t) {
        return means[t] / weight;
    }

    double variance(int t) {
        return squares[t] / weight - mean(t) * mean(t);
    }
}
