package org.spanroom.program.bound;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.spanroom.program.design.Demand;

/**
 * A demand whose way has a direction, from its root to its target.
 *
 * @param size number of its size
 * @param group number of the demands of one root and one size: there is a least design in which they do not pass a link in opposite
 *     directions, since two that do can exchange the rest of their ways
 */
record RootedDemand(int root, int target, int size, int group, double prize, int number) {
    /** Gives demands their roots, the end at which more demands of the same size end, and sorts them by size and root. */
    static List<RootedDemand> of(ReducedNetwork network) {
        Map<List<Integer>, Integer> endsAt = new TreeMap<>(
                Comparator.<List<Integer>>comparingInt(key -> key.get(0)).thenComparingInt(key -> key.get(1)));
        for (Demand demand : network.demands()) {
            endsAt.merge(List.of(demand.cables(), demand.from()), 1, Integer::sum);
            endsAt.merge(List.of(demand.cables(), demand.to()), 1, Integer::sum);
        }
        var rooted = new ArrayList<RootedDemand>();
        for (Demand demand : network.demands()) {
            int low = Math.min(demand.from(), demand.to());
            int high = Math.max(demand.from(), demand.to());
            boolean lowIsRoot = endsAt.getOrDefault(List.of(demand.cables(), low), 0)
                    >= endsAt.getOrDefault(List.of(demand.cables(), high), 0);
            int number = rooted.size();
            rooted.add(new RootedDemand(
                    lowIsRoot ? low : high, lowIsRoot ? high : low, network.sizeOf(demand), 0, demand.prize(), number));
        }
        rooted.sort(Comparator.comparingInt(RootedDemand::size)
                .thenComparingInt(RootedDemand::root)
                .thenComparingInt(RootedDemand::target)
                .thenComparingDouble(RootedDemand::prize)
                .thenComparingInt(RootedDemand::number));
        return numbered(rooted);
    }

    private static List<RootedDemand> numbered(List<RootedDemand> sorted) {
        var numbered = new ArrayList<RootedDemand>();
        int group = -1;
        for (int i = 0; i < sorted.size(); i++) {
            RootedDemand demand = sorted.get(i);
            boolean same = i > 0
                    && sorted.get(i - 1).size() == demand.size()
                    && sorted.get(i - 1).root() == demand.root();
            group += same ? 0 : 1;
            numbered.add(new RootedDemand(demand.root, demand.target, demand.size, group, demand.prize, demand.number));
        }
        return numbered;
    }
}
