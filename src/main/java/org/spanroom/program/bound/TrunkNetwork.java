package org.spanroom.program.bound;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Trunks and rooted demands as arrays.
 *
 * <p>A slot is a trunk with a direction: twice the trunk's number, plus 1 from its second place to its first. A demand that ends inside a
 * trunk uses the slot of the direction in which it passes a part of it.
 */
final class TrunkNetwork {
    static final int NONE = -1;

    final List<Trunk> trunks;
    final List<RootedDemand> demands;
    final int[] sizes;
    final int places;

    /** Of each place, where its slots start in {@link #slots}. */
    final int[] firstSlot;

    final int[] slots;
    final int[] tail;
    final int[] head;

    /** Of each demand the trunk inside which its way starts, and the one inside which it ends, or none. */
    final int[] rootTrunk;

    final int[] targetTrunk;

    /** Of each demand its size, its group and its prize. */
    final int[] sizeOf;

    final int[] groupOf;
    final double[] prizeOf;

    private final boolean[][] closedFor;
    private final boolean[][] closedAtEnd;

    TrunkNetwork(ReducedNetwork network, List<RootedDemand> demands, List<Trunk> trunks) {
        this.trunks = List.copyOf(trunks);
        this.demands = List.copyOf(demands);
        this.sizes = network.sizes();
        this.places = network.places();
        sizeOf = demands.stream().mapToInt(RootedDemand::size).toArray();
        groupOf = demands.stream().mapToInt(RootedDemand::group).toArray();
        prizeOf = demands.stream().mapToDouble(RootedDemand::prize).toArray();
        tail = new int[2 * trunks.size()];
        head = new int[2 * trunks.size()];
        rootTrunk = new int[demands.size()];
        targetTrunk = new int[demands.size()];
        firstSlot = new int[places + 1];
        slots = slotsByTail();
        closedFor = new boolean[sizes.length][trunks.size()];
        closedAtEnd = new boolean[demands.size()][4];
        Arrays.fill(rootTrunk, NONE);
        Arrays.fill(targetTrunk, NONE);
        for (int t = 0; t < trunks.size(); t++) {
            close(t);
        }
    }

    private int[] slotsByTail() {
        var byTail = new ArrayList<List<Integer>>();
        for (int place = 0; place < places; place++) {
            byTail.add(new ArrayList<>());
        }
        for (int t = 0; t < trunks.size(); t++) {
            Trunk trunk = trunks.get(t);
            tail[2 * t] = trunk.from();
            head[2 * t] = trunk.to();
            tail[2 * t + 1] = trunk.to();
            head[2 * t + 1] = trunk.from();
            if (trunk.from() != trunk.to()) {
                byTail.get(trunk.from()).add(2 * t);
                byTail.get(trunk.to()).add(2 * t + 1);
            }
        }
        for (int place = 0; place < places; place++) {
            firstSlot[place + 1] = firstSlot[place] + byTail.get(place).size();
        }
        return byTail.stream().flatMap(List::stream).mapToInt(Integer::intValue).toArray();
    }

    /** Finds what no demand of a size can pass even alone, and what a demand that ends inside cannot. */
    private void close(int t) {
        Trunk trunk = trunks.get(t);
        int[] one = new int[sizes.length];
        Arrays.fill(one, 1);
        var box = new CountBox(one);
        boolean[][] closedPart = new boolean[sizes.length][trunk.parts().size()];
        for (int part = 0; part < trunk.parts().size(); part++) {
            double[] costs = trunk.parts().get(part).table(box, sizes);
            for (int k = 0; k < sizes.length; k++) {
                closedPart[k][part] = Double.isInfinite(costs[box.stride(k)]);
                closedFor[k][t] |= closedPart[k][part];
            }
        }
        for (Trunk.End end : trunk.ends()) {
            (end.isRoot() ? rootTrunk : targetTrunk)[end.demand()] = t;
            int size = demands.get(end.demand()).size();
            for (int direction = 0; direction < 2; direction++) {
                boolean forward = direction == 0;
                for (int part = trunk.firstPart(end, forward); part < trunk.afterLastPart(end, forward); part++) {
                    closedAtEnd[end.demand()][(end.isRoot() ? 0 : 2) + direction] |= closedPart[size][part];
                }
            }
        }
    }

    boolean isOpen(int demand, int slot) {
        int trunk = slot >> 1;
        if (trunk == rootTrunk[demand]) {
            return !closedAtEnd[demand][slot & 1];
        }
        if (trunk == targetTrunk[demand]) {
            return !closedAtEnd[demand][2 + (slot & 1)];
        }
        return !closedFor[sizeOf[demand]][trunk];
    }

    boolean passes(int demand, int slot) {
        int trunk = slot >> 1;
        return trunk != rootTrunk[demand] && trunk != targetTrunk[demand] && !closedFor[sizeOf[demand]][trunk];
    }
}
