package org.spanroom.program.bound;

import java.util.Arrays;
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
    private static final double DEFLECTION = 0.9;
    private static final double SHRINKING = 0.7;
    private static final int STALLS = 12;

    /** What counts as a rise, as a share of the bound. */
    private static final double RISE_RATIO = 1e-6;

    /** Share of all amounts summed that rounding can amount to: 2^-53 for each of up to eight million sums. */
    private static final double ROUNDING_RATIO = 1e-9;

    private final TrunkNetwork network;
    private final TrunkTable[] tables;
    private final Spread spread;
    private final MoneyRange[] ranges;
    private final Prices prices;
    private final double[] distances;
    private final int[][] ways;
    private final double[] values;
    private final double[] moneys;
    private final double[] priceSums;
    private final int[][] chosen;
    private final boolean[][] cut;
    private final Swings swings;
    private double bestMoney;
    private int iterations;

    LagrangeBound(TrunkNetwork network, Spread spread) {
        this(network, TrunkTable.all(network), spread, allRanges(network.trunks.size()), new Prices(network));
    }

    /**
     * Continues from known prices.
     *
     * @param ranges of each trunk, what its cost is in; the bound holds for designs in which all are
     */
    LagrangeBound(TrunkNetwork network, TrunkTable[] tables, Spread spread, MoneyRange[] ranges, Prices prices) {
        this.network = network;
        this.tables = tables;
        this.spread = spread;
        this.ranges = ranges;
        this.prices = prices;
        int demands = network.demands.size();
        int trunks = network.trunks.size();
        distances = new double[demands];
        ways = new int[demands][];
        values = new double[trunks];
        moneys = new double[trunks];
        priceSums = new double[trunks];
        chosen = new int[trunks][];
        cut = new boolean[trunks][];
        swings = new Swings(trunks);
        Arrays.fill(ways, new int[0]);
    }

    private static MoneyRange[] allRanges(int trunks) {
        var ranges = new MoneyRange[trunks];
        Arrays.fill(ranges, MoneyRange.ALL);
        return ranges;
    }

    double bestMoney() {
        return bestMoney;
    }

    int iterations() {
        return iterations;
    }

    Prices prices() {
        return prices;
    }

    TrunkTable[] tables() {
        return tables;
    }

    MoneyRange[] ranges() {
        return ranges;
    }

    Swings swings() {
        return swings;
    }

    /** Finds prices to start from. */
    void start() {
        new DualAscent(network, tables, prices, spread).run();
        prices.keep();
    }

    /**
     * Raises the bound.
     *
     * @param costMoney cost of a known design, or infinite: steps aim at it, the bound does not depend on it
     * @param most how many steps
     * @param firstStep share of the way to that cost that the first steps go
     * @param growing whether tables grow where prices ask for it
     * @param stop asked before each step
     * @return whether it ended by itself
     */
    boolean run(double costMoney, int most, double firstStep, boolean growing, BooleanSupplier stop) {
        double step = firstStep;
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
            if (money > bestMoney * (1 + RISE_RATIO)) {
                stalls = 0;
            } else if (++stalls >= STALLS) {
                step *= SHRINKING;
                stalls = 0;
            }
            if (money > bestMoney) {
                bestMoney = money;
                prices.keep();
            }
            if (!DesignBound.isOpen(bestMoney, costMoney)) {
                return true;
            }
            if (growing) {
                growTables();
            }
            double aim = Double.isInfinite(costMoney) ? bestMoney * 1.1 + 1 : costMoney;
            double length = step * Math.max(aim - money, 1e-4 * aim);
            if (!prices.move(length, DEFLECTION, ways, chosen, spread)) {
                return true;
            }
        }
        return true;
    }

    /** Returns the bound at the present prices, less what rounding can amount to; below 0 where the prices are bad. */
    double evaluate() {
        int demands = network.demands.size();
        int trunks = network.trunks.size();
        double[][] now = prices.now();
        spread.over(demands, () -> new CheapestWay(network), (finder, d) -> {
            distances[d] = finder.run(d, now[d], network.demands.get(d).prize());
            ways[d] = finder.way();
        });
        IntList[] active = prices.active();
        spread.over(trunks, () -> new TrunkValue(network), (value, t) -> {
            values[t] = value.run(t, tables[t], now, active[t], ranges[t]);
            moneys[t] = value.money();
            priceSums[t] = value.priceSum();
            chosen[t] = value.chosen();
            cut[t] = value.cut();
        });
        swings.add(moneys);
        double sum = 0;
        double amount = 0;
        for (double distance : distances) {
            sum += distance;
            amount += distance;
        }
        for (int t = 0; t < trunks; t++) {
            sum += values[t];
            amount += 2 * priceSums[t] + moneys[t];
        }
        return Double.isInfinite(sum) ? sum : sum - ROUNDING_RATIO * amount;
    }

    private void growTables() {
        spread.over(tables.length, () -> tables, (all, t) -> all[t].grow(cut[t]));
    }
}
