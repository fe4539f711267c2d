package org.spanroom.program.bound;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.function.BooleanSupplier;
import org.spanroom.program.design.Spread;

/**
 * Raises a bound by cases: a trunk costs less than some amount or at least as much, and each design is in one of the two.
 *
 * <p>The lowest case is split again and again, at the trunk whose cost swings most; the bound is that of the lowest case left. Cases are
 * worked on in batches of fixed size, so that the bound does not depend on the threads.
 */
final class Branching {
    private static final int BATCH = 8;
    private static final int STEPS = 60;
    private static final double FIRST_STEP = 0.3;

    /** Trunks up to which the first steps go so far: a case raises the bound of a larger network by a smaller share. */
    private static final double TRUNKS_OF_STEP = 50;

    private final TrunkNetwork network;
    private final TrunkTable[] tables;
    private final double costMoney;
    private final PriorityQueue<Case> open =
            new PriorityQueue<>(Comparator.comparingDouble(Case::money).thenComparingInt(Case::number));
    private int made;

    /**
     * Designs in which the cost of each trunk is in a range.
     *
     * @param money what none of them costs less than
     * @param prices that show it
     * @param trunk where to split; none where no trunk's cost swings
     * @param splitMoney the amount to split at
     */
    @SuppressWarnings("ArrayRecordComponent") // Inside the search only; never changed or compared.
    private record Case(int number, double money, MoneyRange[] ranges, Prices prices, int trunk, double splitMoney) {}

    /**
     * Starts with one case of all designs.
     *
     * @param root a bound whose steps are done
     * @param costMoney cost of a known design, or infinite
     */
    Branching(TrunkNetwork network, LagrangeBound root, double costMoney) {
        this.network = network;
        this.costMoney = costMoney;
        tables = root.tables();
        open.add(made(root, root.bestMoney()));
    }

    /** Returns what no design costs less than. */
    double money() {
        return open.isEmpty() ? Double.POSITIVE_INFINITY : open.element().money();
    }

    /**
     * Splits cases.
     *
     * @param mostCases after so many it ends
     * @return whether it ended by itself
     */
    boolean run(int mostCases, Spread spread, BooleanSupplier stop) {
        while (made < mostCases && isWorthwhile()) {
            if (stop.getAsBoolean()) {
                return false;
            }
            var batch = new ArrayList<Case>();
            while (batch.size() < BATCH && isWorthwhile()) {
                batch.add(open.remove());
            }
            split(batch, spread);
        }
        return true;
    }

    /** A case that costs as much as a known design needs no more work, nor does one that is settled. */
    private boolean isWorthwhile() {
        return !open.isEmpty()
                && DesignBound.isOpen(open.element().money(), costMoney)
                && open.element().trunk() != TrunkNetwork.NONE;
    }

    private void split(List<Case> batch, Spread spread) {
        var halves = new LagrangeBound[2 * batch.size()];
        spread.over(halves.length, () -> batch, (cases, i) -> halves[i] = half(cases.get(i / 2), i % 2 == 0));
        for (int i = 0; i < halves.length; i++) {
            double money = Math.max(batch.get(i / 2).money(), halves[i].bestMoney());
            if (!Double.isInfinite(money)) {
                open.add(made(halves[i], money));
            }
        }
    }

    private LagrangeBound half(Case whole, boolean isLow) {
        MoneyRange[] ranges = whole.ranges().clone();
        MoneyRange range = ranges[whole.trunk()];
        ranges[whole.trunk()] = isLow
                ? new MoneyRange(range.fromMoney(), whole.splitMoney())
                : new MoneyRange(whole.splitMoney(), range.belowMoney());
        var bound = new LagrangeBound(
                network, tables, Spread.ON_ONE_THREAD, ranges, whole.prices().fromBest());
        double firstStep = FIRST_STEP * Math.min(1, TRUNKS_OF_STEP / tables.length);
        bound.run(costMoney, STEPS, firstStep, false, () -> false);
        return bound;
    }

    private Case made(LagrangeBound bound, double money) {
        int trunk = TrunkNetwork.NONE;
        double most = 0;
        double splitMoney = 0;
        for (int t = 0; t < tables.length; t++) {
            double variance = bound.swings().variance(t);
            if (variance > most) {
                double split = tables[t].firstMoneyAbove(bound.swings().mean(t));
                MoneyRange range = bound.ranges()[t];
                if (split > range.fromMoney() && split < range.belowMoney()) {
                    trunk = t;
                    most = variance;
                    splitMoney = split;
                }
            }
        }
        return new Case(made++, money, bound.ranges(), bound.prices(), trunk, splitMoney);
    }
}
