package org.spanroom.program.bound;

import org.spanroom.program.design.Spread;

/**
 * Prices to start from: demand by demand, prices rise on the slots that lead away from its root by what the trunks still bear.
 *
 * <p>The value of each trunk stays 0, so the bound is the sum of the distances. Rounds in which a demand takes only a share of what a trunk bears start
 * higher, but take longer than the steps that reach the same.
 */
final class DualAscent {
    private final TrunkNetwork network;
    private final TrunkTable[] tables;
    private final Prices prices;
    private final Spread spread;
    private final CheapestWay finder;
    private final double[] slacks;

    DualAscent(TrunkNetwork network, TrunkTable[] tables, Prices prices, Spread spread) {
        this.network = network;
        this.tables = tables;
        this.prices = prices;
        this.spread = spread;
        finder = new CheapestWay(network);
        slacks = new double[2 * network.trunks.size()];
    }

    /** Lets each demand in turn raise its prices. */
    void run() {
        for (int d = 0; d < network.demands.size(); d++) {
            double present =
                    finder.run(d, prices.now()[d], network.demands.get(d).prize());
            double left = network.demands.get(d).prize() - present;
            if (left > 0 && !Double.isInfinite(present)) {
                findSlacks(d);
                finder.run(d, slacks, left);
                raise(d);
            }
        }
    }

    private void findSlacks(int d) {
        IntList[] active = prices.active();
        spread.over(tables.length, () -> new TrunkValue(network), (value, t) -> {
            for (int slot = 2 * t; slot < 2 * t + 2; slot++) {
                slacks[slot] =
                        network.isOpen(d, slot) ? value.slack(t, tables[t], prices.now(), active[t], slot, d) : 0;
            }
        });
    }

    private void raise(int d) {
        double whole = finder.distance();
        for (int slot = 0; slot < slacks.length; slot++) {
            if (network.isOpen(d, slot)) {
                double before = slot >> 1 == network.rootTrunk[d] ? 0 : finder.distance(network.tail[slot]);
                double after = slot >> 1 == network.targetTrunk[d] ? whole : finder.distance(network.head[slot]);
                prices.now()[d][slot] += Math.max(0, after - before);
            }
        }
    }
}
