package org.spanroom.program.bound;

import java.util.Arrays;
import java.util.Comparator;
import java.util.PriorityQueue;

/**
 * Finds slots that a demand does not pass in any design cheaper than a known one: by the prices, each design in which it does costs more.
 *
 * <p>For networks without ends of demands inside trunks.
 */
final class FarSlots {
    /** What rounding may amount to, as a share of the known cost. */
    private static final double ROUNDING_RATIO = 1e-7;

    private final TrunkNetwork network;
    private final int[][] slotsByHead;

    FarSlots(TrunkNetwork network) {
        this.network = network;
        var byHead = new IntList[network.places];
        Arrays.setAll(byHead, place -> new IntList());
        for (int slot = 0; slot < network.head.length; slot++) {
            byHead[network.head[slot]].add(slot);
        }
        slotsByHead = Arrays.stream(byHead).map(IntList::toArray).toArray(int[][]::new);
    }

    /**
     * Returns for each demand and slot whether the demand need not pass it.
     *
     * @param boundMoney the bound at the prices
     * @param costMoney cost of a known design
     */
    boolean[][] find(double[][] prices, double boundMoney, double costMoney) {
        double spareMoney = costMoney * (1 + ROUNDING_RATIO) - boundMoney;
        var far = new boolean[prices.length][network.head.length];
        for (int d = 0; d < prices.length; d++) {
            RootedDemand demand = network.demands.get(d);
            double[] fromRoot = distances(d, demand.root(), prices[d], true);
            double[] toTarget = distances(d, demand.target(), prices[d], false);
            double present = Math.min(demand.prize(), fromRoot[demand.target()]);
            for (int slot = 0; slot < far[d].length; slot++) {
                double by = fromRoot[network.tail[slot]] + prices[d][slot] + toTarget[network.head[slot]];
                far[d][slot] = !network.passes(d, slot) || by - present > spareMoney;
            }
        }
        return far;
    }

    /** A place, and how far it is from the start. */
    private record Reached(int place, double distance) {}

    private double[] distances(int d, int start, double[] prices, boolean forward) {
        var distances = new double[network.places];
        Arrays.fill(distances, Double.POSITIVE_INFINITY);
        distances[start] = 0;
        var open = new PriorityQueue<Reached>(
                Comparator.comparingDouble(Reached::distance).thenComparingInt(Reached::place));
        open.add(new Reached(start, 0));
        while (!open.isEmpty()) {
            Reached least = open.remove();
            if (least.distance() > distances[least.place()]) {
                continue;
            }
            for (int slot : forward ? slotsFrom(least.place()) : slotsByHead[least.place()]) {
                int next = forward ? network.head[slot] : network.tail[slot];
                double distance = least.distance() + prices[slot];
                if (network.passes(d, slot) && distance < distances[next]) {
                    distances[next] = distance;
                    open.add(new Reached(next, distance));
                }
            }
        }
        return distances;
    }

    private int[] slotsFrom(int place) {
        return Arrays.copyOfRange(network.slots, network.firstSlot[place], network.firstSlot[place + 1]);
    }
}
