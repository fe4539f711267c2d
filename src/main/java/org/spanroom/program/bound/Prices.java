package org.spanroom.program.bound;

import java.util.Arrays;
import org.spanroom.program.design.Spread;

/** Of each demand and each slot its price, and how fast it moves. */
final class Prices {
    /** A speed below it ends, so that what no way passes any longer costs no time. */
    private static final double LEAST_SPEED = 1e-4;

    private static final double LEAST_SQUARE = 1e-12;

    private final double[][] now;
    private final double[][] best;
    private final double[][] velocities;
    private final double[] squares;
    private final IntList[] active;

    Prices(TrunkNetwork network) {
        this(new double[network.demands.size()][2 * network.trunks.size()]);
    }

    private Prices(double[][] now) {
        this.now = now;
        int slots = now.length == 0 ? 0 : now[0].length;
        best = new double[now.length][];
        velocities = new double[now.length][slots];
        squares = new double[now.length];
        active = new IntList[slots / 2];
        Arrays.setAll(active, t -> new IntList());
        keep();
    }

    /** Returns new prices at the best ones of these, at rest. */
    Prices fromBest() {
        return new Prices(copy(best));
    }

    private static double[][] copy(double[][] rows) {
        return Arrays.stream(rows).map(double[]::clone).toArray(double[][]::new);
    }

    double[][] now() {
        return now;
    }

    double[][] best() {
        return best;
    }

    /** Keeps the present prices as the best ones. */
    void keep() {
        for (int d = 0; d < now.length; d++) {
            best[d] = best[d] == null ? now[d].clone() : best[d];
            System.arraycopy(now[d], 0, best[d], 0, now[d].length);
        }
    }

    /** Returns for each trunk the demands that pay a price there, ascending. */
    IntList[] active() {
        for (IntList list : active) {
            list.clear();
        }
        for (int d = 0; d < now.length; d++) {
            double[] row = now[d];
            for (int t = 0; t < active.length; t++) {
                if (row[2 * t] > 0 || row[2 * t + 1] > 0) {
                    active[t].add(d);
                }
            }
        }
        return active;
    }

    /**
     * Moves the prices: up where ways pass, down where trunks let demands pass.
     *
     * @param length how far, in money
     * @param deflection share of the last move that goes into this one
     * @param ways of each demand the slots that it passes
     * @param chosen of each trunk twice the number of each demand that it lets pass, plus 1 for backward
     * @return false where ways and trunks agree, so that the bound is the cost of a design
     */
    boolean move(double length, double deflection, int[][] ways, int[][] chosen, Spread spread) {
        spread.over(now.length, () -> velocities, (all, d) -> {
            for (int s = 0; s < all[d].length; s++) {
                all[d][s] *= deflection;
            }
            for (int slot : ways[d]) {
                all[d][slot] += 1;
            }
        });
        for (int t = 0; t < chosen.length; t++) {
            for (int code : chosen[t]) {
                velocities[code >> 1][2 * t + (code & 1)] -= 1;
            }
        }
        spread.over(now.length, () -> squares, (all, d) -> all[d] = squareOfMoves(now[d], velocities[d]));
        double square = Arrays.stream(squares).sum();
        if (square < LEAST_SQUARE) {
            return false;
        }
        double factor = length / square;
        spread.over(now.length, () -> now, (all, d) -> {
            for (int s = 0; s < all[d].length; s++) {
                if (velocities[d][s] != 0) {
                    all[d][s] = Math.max(0, all[d][s] + factor * velocities[d][s]);
                }
            }
        });
        return true;
    }

    /** A price of 0 does not fall. */
    private static double squareOfMoves(double[] prices, double[] velocities) {
        double square = 0;
        for (int s = 0; s < prices.length; s++) {
            double velocity = velocities[s];
            if ((prices[s] == 0 && velocity < 0) || Math.abs(velocity) < LEAST_SPEED) {
                velocities[s] = 0;
            } else {
                square += velocity * velocity;
            }
        }
        return square;
    }
}
