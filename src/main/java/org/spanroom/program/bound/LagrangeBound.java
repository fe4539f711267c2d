package org.spanroom.program.bound;

import java.util.Arrays;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.spanroom.program.design.Spread;

/**
 * A lower bound by prices: each demand pays a price for each slot that it passes, and each trunk takes the prices and pays its cost.
 *
 * <p>For any prices, the sum over the demands of the cheapest way or the prize, whichever is less, plus the sum over the trunks of the least
 * of cost less prices, is at most the cost of any design. Subgradient steps raise it: a price rises where a way wants to pass and
 * the trunk does not let it, and falls where it is the other way round. Directions are deflected, steps are Polyak's.
 */
final class LagrangeBound {
    private static final double DEFLECTION = 0.7;
    private static final double FIRST_STEP = 0.5;
    private static final double SHRINKING = 0.7;
    private static final int STALLS = 12;

    /** Demands times trunks: above it, the ascent takes minutes. */
    private static final long MOST_FOR_ASCENT = 500_000;

    /** Share of all amounts summed that rounding can amount to: 2^-53 for each of up to eight million sums. */
    private static final double ROUNDING_RATIO = 1e-9;

    private final TrunkNetwork network;
    private final TrunkTable[] tables;
    private final Spread spread;
    private final double[][] prices;
    private final double[][] velocities;
    private final double[] distances;
    private final int[][] ways;
    private final double[] values;
    private final double[] priceSums;
    private final int[][] chosen;
    private final boolean[][] cut;
    private double bestMoney;
    private int iterations;

    LagrangeBound(TrunkNetwork network, Spread spread) {
        this.network = network;
        this.spread = spread;
        int demands = network.demands.size();
        int trunks = network.trunks.size();
        tables = new TrunkTable[trunks];
        for (int t = 0; t < trunks; t++) {
            tables[t] = new TrunkTable(network, t);
        }
        prices = new double[demands][2 * trunks];
        velocities = new double[demands][2 * trunks];
        distances = new double[demands];
        ways = new int[demands][];
        values = new double[trunks];
        priceSums = new double[trunks];
        chosen = new int[trunks][];
        cut = new boolean[trunks][];
        Arrays.fill(ways, new int[0]);
    }

    double bestMoney() {
        return bestMoney;
    }

    int iterations() {
        return iterations;
    }

    double[][] prices() {
        return prices;
    }

    /** Finds prices to start from, unless that would take longer than steps that reach the same; returns whether it did. */
    boolean start() {
        if ((long) network.demands.size() * tables.length > MOST_FOR_ASCENT) {
            return false;
        }
        new DualAscent(network, tables, prices, spread).run();
        return true;
    }

    /**
     * Raises the bound.
     *
     * @param costMoney cost of a known design, or infinite: steps aim at it, the bound does not depend on it
     * @param most how many steps
     * @param stop asked before each step
     * @return whether it ended by itself
     */
    boolean run(double costMoney, int most, BooleanSupplier stop) {
        double step = FIRST_STEP;
        int stalls = 0;
        for (int i = 0; i < most; i++) {
            if (stop.getAsBoolean()) {
                return false;
            }
            iterations++;
            double money = evaluate();
            if (Double.isInfinite(money)) {
                bestMoney = money;
                return true;
            }
            if (money > bestMoney * (1 + 1e-6)) {
                stalls = 0;
            } else if (++stalls >= STALLS) {
                step *= SHRINKING;
                stalls = 0;
            }
            bestMoney = Math.max(bestMoney, money);
            growTables();
            double aim = Double.isInfinite(costMoney) ? bestMoney * 1.1 + 1 : costMoney;
            if (!move(step * Math.max(aim - money, 1e-4 * aim))) {
                return true;
            }
        }
        return true;
    }

    /** Returns the bound at the present prices, less what rounding can amount to; below 0 where the prices are bad. */
    double evaluate() {
        int demands = network.demands.size();
        int trunks = network.trunks.size();
        spread.over(demands, () -> new CheapestWay(network), (finder, d) -> {
            distances[d] = finder.run(d, prices[d], network.demands.get(d).prize());
            ways[d] = finder.way();
        });
        spread.over(trunks, () -> new TrunkValue(network), (value, t) -> {
            values[t] = value.run(t, tables[t], prices);
            priceSums[t] = value.priceSum();
            chosen[t] = value.chosen();
            cut[t] = value.cut();
        });
        double sum = 0;
        double amount = 0;
        for (double distance : distances) {
            sum += distance;
            amount += distance;
        }
        for (int t = 0; t < trunks; t++) {
            sum += values[t];
            amount += 2 * priceSums[t];
        }
        return Double.isInfinite(sum) ? sum : sum - ROUNDING_RATIO * amount;
    }

    private void growTables() {
        for (int t = 0; t < tables.length; t++) {
            tables[t].grow(cut[t]);
        }
    }

    /** Moves the prices; false where ways and trunks agree, so that the bound is the cost of a design. */
    private boolean move(double length) {
        for (int d = 0; d < velocities.length; d++) {
            double[] velocity = velocities[d];
            for (int s = 0; s < velocity.length; s++) {
                velocity[s] *= DEFLECTION;
            }
            for (int slot : ways[d]) {
                velocity[slot] += 1;
            }
        }
        for (int t = 0; t < chosen.length; t++) {
            for (int code : chosen[t]) {
                velocities[code >> 1][2 * t + (code & 1)] -= 1;
            }
        }
        double square = squareOfMoves();
        if (square < 1e-12) {
            return false;
        }
        double factor = length / square;
        for (int d = 0; d < prices.length; d++) {
            for (int s = 0; s < prices[d].length; s++) {
                if (velocities[d][s] != 0) {
                    prices[d][s] = Math.max(0, prices[d][s] + factor * velocities[d][s]);
                }
            }
        }
        return true;
    }

    /** A price of 0 does not fall. */
    private double squareOfMoves() {
        double square = 0;
        for (int d = 0; d < prices.length; d++) {
            for (int s = 0; s < prices[d].length; s++) {
                double velocity = velocities[d][s];
                if ((prices[d][s] == 0 && velocity < 0) || Math.abs(velocity) < 1e-4) {
                    velocities[d][s] = 0;
                } else {
                    square += velocity * velocity;
                }
            }
        }
        return square;
    }

    /** Returns the demands of a problem in their order here. */
    List<RootedDemand> demands() {
        return network.demands;
    }
}
