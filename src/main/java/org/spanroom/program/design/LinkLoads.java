package org.spanroom.program.design;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * How many demands pass each link, and what one more would cost there. Demands differ by kind only: those with equally
 * many cables are of one kind. Not thread-safe.
 */
final class LinkLoads {
    private final LinkNetwork network;
    private final int[] cablesOfKind;
    private final PieceCost[][] costs;
    private final List<Map<List<Integer>, Load>> known = new ArrayList<>();
    private final Load[] loads;
    private final double[][] marginal;

    /** Some demands on a link; one object for each set of counts. */
    private static final class Load {
        private final int[] counts;
        private final double money;
        private final @Nullable Load[] more;
        private final @Nullable Load[] less;

        private Load(int[] counts, double money) {
            this.counts = counts;
            this.money = money;
            more = new Load[counts.length];
            less = new Load[counts.length];
        }
    }

    LinkLoads(LinkNetwork network, List<Piece> pieces, int[] cablesOfKind) {
        this.network = network;
        this.cablesOfKind = cablesOfKind.clone();
        costs = new PieceCost[network.links()][];
        loads = new Load[network.links()];
        marginal = new double[cablesOfKind.length][network.links()];
        var alike = new HashMap<List<Object>, PieceCost>();
        for (int link = 0; link < costs.length; link++) {
            costs[link] = Arrays.stream(network.pieces(link))
                    .mapToObj(pieces::get)
                    .map(piece ->
                            alike.computeIfAbsent(List.of(piece.bins(), piece.more()), none -> new PieceCost(piece)))
                    .toArray(PieceCost[]::new);
            known.add(new HashMap<>(4));
            loads[link] = load(link, new int[cablesOfKind.length]);
        }
        for (double[] ofKind : marginal) {
            Arrays.fill(ofKind, Double.NaN);
        }
    }

    private Load load(int link, int[] counts) {
        List<Integer> key = Arrays.stream(counts).boxed().toList();
        Map<List<Integer>, Load> ofLink = known.get(link);
        Load load = ofLink.get(key);
        if (load == null) {
            load = new Load(counts, money(link, counts));
            ofLink.put(key, load);
        }
        return load;
    }

    private double money(int link, int[] counts) {
        if (counts.length == 0) {
            return 0;
        }
        // Kinds ascend
        var byCables = new int[cablesOfKind[cablesOfKind.length - 1] + 1];
        for (int kind = 0; kind < counts.length; kind++) {
            byCables[cablesOfKind[kind]] += counts[kind];
        }
        double money = 0;
        for (PieceCost cost : costs[link]) {
            money += cost.money(byCables);
        }
        return money;
    }

    private Load more(int link, int kind) {
        Load load = loads[link];
        Load more = load.more[kind];
        if (more == null) {
            more = load(link, changed(load.counts, kind, 1));
            load.more[kind] = more;
        }
        return more;
    }

    private static int[] changed(int[] counts, int kind, int by) {
        int[] changed = counts.clone();
        changed[kind] += by;
        return changed;
    }

    /** Returns what one more demand of a kind costs on a link; infinite where there is no room. */
    double marginalMoney(int link, int kind) {
        double money = marginal[kind][link];
        if (Double.isNaN(money)) {
            // Sums of the same costs in another order may differ by a rounding
            money = Math.max(0, more(link, kind).money - loads[link].money);
            marginal[kind][link] = money;
        }
        return money;
    }

    /** Returns whether a link takes a demand of a kind when nothing else passes it. */
    boolean couldTake(int link, int kind) {
        return load(link, changed(new int[cablesOfKind.length], kind, 1)).money < Double.POSITIVE_INFINITY;
    }

    /** Returns the cost of all links, summed in one order. */
    double money() {
        double money = 0;
        for (Load load : loads) {
            money += load.money;
        }
        return money;
    }

    /** Adds a demand of a kind to its links and returns what that costs. */
    double add(int[] way, int kind) {
        double money = 0;
        for (int link : way) {
            Load more = more(link, kind);
            money += more.money - loads[link].money;
            set(link, more);
        }
        return money;
    }

    /** Takes a demand of a kind from its links and returns what that saves. */
    double remove(int[] way, int kind) {
        double money = 0;
        for (int link : way) {
            Load load = loads[link];
            Load less = load.less[kind];
            if (less == null) {
                less = load(link, changed(load.counts, kind, -1));
                load.less[kind] = less;
            }
            money += load.money - less.money;
            set(link, less);
        }
        return money;
    }

    private void set(int link, Load load) {
        loads[link] = load;
        for (double[] ofKind : marginal) {
            ofKind[link] = Double.NaN;
        }
    }

    LinkNetwork network() {
        return network;
    }
}
