package org.spanroom.program.bound;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Costs of a trunk: for each choice of sides by which the demands that end inside leave, by the counts that pass the whole trunk.
 *
 * <p>A table covers counts up to some most. Above it the cost is at least that at the most, since costs never fall.
 */
final class TrunkTable {
    private static final int LARGEST = 4096;
    private static final int FIRST_MOST = 3;

    private final Trunk trunk;
    private final TrunkNetwork network;
    private final int[] demandsOfSize;

    /** Of each choice, of each end inside: 0 not served, 1 forward, 2 backward. */
    private final List<int[]> sides;

    private CountBox box;
    private TrunkStates[] states;

    TrunkTable(TrunkNetwork network, int t) {
        this.network = network;
        this.trunk = network.trunks.get(t);
        demandsOfSize = new int[network.sizes.length];
        network.demands.forEach(demand -> demandsOfSize[demand.size()]++);
        trunk.ends()
                .forEach(end -> demandsOfSize[network.demands.get(end.demand()).size()]--);
        sides = allSides();
        int[] most = new int[network.sizes.length];
        for (int k = 0; k < most.length; k++) {
            most[k] = Math.min(FIRST_MOST, demandsOfSize[k]);
        }
        box = new CountBox(most);
        states = calculate();
    }

    /** Returns the tables of all trunks. */
    static TrunkTable[] all(TrunkNetwork network) {
        var tables = new TrunkTable[network.trunks.size()];
        Arrays.setAll(tables, t -> new TrunkTable(network, t));
        return tables;
    }

    List<int[]> sides() {
        return sides;
    }

    CountBox box() {
        return box;
    }

    /** Returns what can pass at which cost where the demands that end inside leave as the numbered choice of {@link #sides} says. */
    TrunkStates states(int side) {
        return states[side];
    }

    /** Returns the least cost of any state that is above an amount; infinite where there is none. */
    double firstMoneyAbove(double money) {
        return Arrays.stream(states)
                .mapToDouble(each -> each.firstMoneyAbove(money))
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }

    /** Returns whether a table could be larger in one count. */
    boolean canGrow(int k) {
        return box.most(k) < demandsOfSize[k] && (long) box.size() * 2 <= LARGEST;
    }

    /** Doubles the table in the counts that are marked, as far as memory allows. */
    void grow(boolean[] wanted) {
        boolean larger = false;
        for (int k = 0; k < wanted.length; k++) {
            if (wanted[k] && canGrow(k)) {
                int[] most = new int[wanted.length];
                for (int j = 0; j < most.length; j++) {
                    most[j] = box.most(j);
                }
                most[k] = Math.min(2 * most[k] + 1, demandsOfSize[k]);
                box = new CountBox(most);
                larger = true;
            }
        }
        if (larger) {
            states = calculate();
        }
    }

    private List<int[]> allSides() {
        var all = new ArrayList<int[]>();
        int ends = trunk.ends().size();
        int count = (int) Math.round(Math.pow(3, ends));
        for (int number = 0; number < count; number++) {
            int[] side = new int[ends];
            int rest = number;
            for (int e = 0; e < ends; e++) {
                side[e] = rest % 3;
                rest /= 3;
            }
            if (!isOpposed(side)) {
                all.add(side);
            }
        }
        return all;
    }

    /** Two of one group that pass a part in opposite directions: never needed. */
    private boolean isOpposed(int[] side) {
        for (int a = 0; a < side.length; a++) {
            for (int b = 0; b < side.length; b++) {
                Trunk.End one = trunk.ends().get(a);
                Trunk.End other = trunk.ends().get(b);
                if (side[a] == 1
                        && side[b] == 2
                        && network.demands.get(one.demand()).group()
                                == network.demands.get(other.demand()).group()
                        && trunk.firstPart(one, true) < trunk.afterLastPart(other, false)
                        && trunk.firstPart(other, false) < trunk.afterLastPart(one, true)) {
                    return true;
                }
            }
        }
        return false;
    }

    private TrunkStates[] calculate() {
        int[] most = new int[box.classes()];
        for (int k = 0; k < most.length; k++) {
            most[k] = box.most(k);
        }
        trunk.ends().forEach(end -> most[network.demands.get(end.demand()).size()]++);
        var wider = new CountBox(most);
        double[][] tables = new double[sides.size()][box.size()];
        for (int part = 0; part < trunk.parts().size(); part++) {
            double[] partCosts = trunk.parts().get(part).table(wider, network.sizes);
            for (int s = 0; s < tables.length; s++) {
                addPart(tables[s], partCosts, wider, added(sides.get(s), part));
            }
        }
        return Arrays.stream(tables).map(costs -> TrunkStates.of(box, costs)).toArray(TrunkStates[]::new);
    }

    private int[] added(int[] side, int part) {
        int[] added = new int[box.classes()];
        for (int e = 0; e < side.length; e++) {
            Trunk.End end = trunk.ends().get(e);
            if (side[e] != 0
                    && part >= trunk.firstPart(end, side[e] == 1)
                    && part < trunk.afterLastPart(end, side[e] == 1)) {
                added[network.demands.get(end.demand()).size()]++;
            }
        }
        return added;
    }

    private void addPart(double[] table, double[] partCosts, CountBox wider, int[] added) {
        int[] counts = new int[box.classes()];
        for (int i = 0; i < table.length; i++) {
            for (int k = 0; k < counts.length; k++) {
                counts[k] = box.count(i, k) + added[k];
            }
            table[i] += partCosts[wider.index(counts)];
        }
    }
}
