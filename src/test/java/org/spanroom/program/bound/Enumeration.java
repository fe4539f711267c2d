package org.spanroom.program.bound;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.spanroom.program.design.Demand;
import org.spanroom.program.design.DesignProblem;
import org.spanroom.program.design.PieceCost;

/** Least cost of a small network, by trying every simple way of every demand, and none, with every one of the others. */
final class Enumeration {
    private final List<int[]> ends;
    private final List<Demand> demands;
    private final List<Costs> costs;
    private final List<List<List<Integer>>> ways = new ArrayList<>();
    private final List<int[]> counts = new ArrayList<>();
    private double least = Double.POSITIVE_INFINITY;

    /** Cost by counts: at each index, how many demands have so many cables. */
    interface Costs {
        double money(int... countByCables);
    }

    private Enumeration(List<int[]> ends, List<Costs> costs, List<Demand> demands) {
        this.ends = ends;
        this.costs = costs;
        this.demands = demands;
        int most = demands.stream().mapToInt(Demand::cables).max().orElse(0);
        ends.forEach(end -> counts.add(new int[most + 1]));
        for (Demand demand : demands) {
            var found = new ArrayList<List<Integer>>();
            collect(demand.from(), demand.to(), new ArrayList<>(List.of(demand.from())), new ArrayList<>(), found);
            ways.add(found);
        }
    }

    static double least(DesignProblem problem) {
        List<int[]> ends = problem.pieces().stream()
                .map(piece -> new int[] {piece.from(), piece.to()})
                .toList();
        List<Costs> costs = problem.pieces().stream()
                .map(PieceCost::new)
                .<Costs>map(cost -> cost::money)
                .toList();
        return new Enumeration(ends, costs, problem.demands()).run();
    }

    static double least(ReducedNetwork network) {
        List<int[]> ends = network.links().stream()
                .map(link -> new int[] {link.from(), link.to()})
                .toList();
        int[] most = new int[network.sizes().length];
        java.util.Arrays.fill(most, network.demands().size());
        var box = new CountBox(most);
        List<Costs> costs = network.links().stream()
                .map(link -> link.cost().table(box, network.sizes()))
                .<Costs>map(table -> counts -> {
                    int index = 0;
                    for (int k = 0; k < most.length; k++) {
                        index += counts[network.sizes()[k]] * box.stride(k);
                    }
                    return table[index];
                })
                .toList();
        return new Enumeration(ends, costs, network.demands()).run();
    }

    private double run() {
        choose(0, 0);
        return least;
    }

    private void choose(int d, double unservedMoney) {
        if (d == demands.size()) {
            double money = unservedMoney;
            for (int i = 0; i < costs.size() && money < least; i++) {
                money += money(i);
            }
            least = Math.min(least, money);
            return;
        }
        Demand demand = demands.get(d);
        choose(d + 1, unservedMoney + demand.prize());
        for (List<Integer> way : ways.get(d)) {
            way.forEach(i -> counts.get(i)[demand.cables()]++);
            choose(d + 1, unservedMoney);
            way.forEach(i -> counts.get(i)[demand.cables()]--);
        }
    }

    private final Map<List<Integer>, Double> known = new HashMap<>();

    private double money(int i) {
        var key = new ArrayList<Integer>();
        key.add(i);
        for (int count : counts.get(i)) {
            key.add(count);
        }
        return known.computeIfAbsent(
                key, unknown -> costs.get(i).money(counts.get(i).clone()));
    }

    private void collect(int place, int to, List<Integer> seen, List<Integer> way, List<List<Integer>> found) {
        if (place == to) {
            found.add(List.copyOf(way));
            return;
        }
        for (int i = 0; i < ends.size(); i++) {
            int[] end = ends.get(i);
            if (end[0] == place || end[1] == place) {
                int next = end[0] == place ? end[1] : end[0];
                if (!seen.contains(next)) {
                    seen.add(next);
                    way.add(i);
                    collect(next, to, seen, way, found);
                    seen.remove(seen.size() - 1);
                    way.remove(way.size() - 1);
                }
            }
        }
    }
}
