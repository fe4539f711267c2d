package org.spanroom.program.design;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** A design that a search changes demand by demand. Not thread-safe. */
final class WorkingDesign {
    private final DesignTask task;
    private final LinkLoads loads;
    private final WaySearch search;
    private final int[] @Nullable [] ways;
    private double workMoney;
    private double unservedMoney;
    private int missingMusts;

    WorkingDesign(DesignTask task) {
        this.task = task;
        loads = task.emptyLoads();
        search = new WaySearch(loads);
        ways = new int[task.demands()][];
        recount();
    }

    /** Recalculates the sums, so that roundings do not add up. */
    final void recount() {
        workMoney = loads.money();
        unservedMoney = 0;
        missingMusts = 0;
        for (int demand = 0; demand < ways.length; demand++) {
            if (ways[demand] == null) {
                countUnserved(demand, 1);
            }
        }
    }

    private void countUnserved(int demand, int by) {
        if (task.isMust(demand)) {
            missingMusts += by;
        } else {
            unservedMoney += by * task.prize(demand);
        }
    }

    /** Serves a demand at least additional cost, unless that is more than a limit. */
    boolean serve(int demand, double limitMoney) {
        int[] way = way(demand, limitMoney);
        if (way == null) {
            return false;
        }
        put(demand, way);
        return true;
    }

    /** Returns the way at least additional cost; null where there is none up to the limit. */
    int @Nullable [] way(int demand, double limitMoney) {
        return search.way(task.from(demand), task.to(demand), task.kind(demand), limitMoney, task.leftM(demand));
    }

    /** Returns the way that costs least where full links count as so much each. */
    int @Nullable [] wayThroughFull(int demand, double priceMoney) {
        search.openFull(priceMoney);
        int[] way = way(demand, Double.POSITIVE_INFINITY);
        search.openFull(Double.POSITIVE_INFINITY);
        return way;
    }

    /** Returns what one more demand costs on the links of a way. */
    double marginalMoney(int demand, int[] way) {
        double money = 0;
        for (int link : way) {
            money += loads.marginalMoney(link, task.kind(demand));
        }
        return money;
    }

    /** Returns whether a link has no room for a demand. */
    boolean isFull(int link, int demand) {
        return loads.marginalMoney(link, task.kind(demand)) == Double.POSITIVE_INFINITY;
    }

    void put(int demand, int[] way) {
        workMoney += loads.add(way, task.kind(demand));
        ways[demand] = way;
        countUnserved(demand, -1);
    }

    /** Takes a demand out and returns its way; null where it had none. */
    int @Nullable [] remove(int demand) {
        int[] way = ways[demand];
        if (way != null) {
            workMoney -= loads.remove(way, task.kind(demand));
            ways[demand] = null;
            countUnserved(demand, 1);
        }
        return way;
    }

    /** Returns the served demands that pass a link. */
    List<Integer> passing(int link) {
        var passing = new ArrayList<Integer>();
        for (int demand = 0; demand < ways.length; demand++) {
            int[] way = ways[demand];
            if (way != null && contains(way, link)) {
                passing.add(demand);
            }
        }
        return passing;
    }

    /** Returns the served demands that pass a node without ending there. */
    List<Integer> passingNode(int node) {
        var passing = new TreeSet<Integer>();
        LinkNetwork network = task.network();
        for (int index = network.start(node); index < network.start(node + 1); index++) {
            passing.addAll(passing(network.linkAt(index)));
        }
        passing.removeIf(demand -> task.from(demand) == node || task.to(demand) == node);
        return new ArrayList<>(passing);
    }

    private static boolean contains(int[] way, int link) {
        for (int each : way) {
            if (each == link) {
                return true;
            }
        }
        return false;
    }

    int @Nullable [] wayOf(int demand) {
        return ways[demand];
    }

    boolean isServed(int demand) {
        return ways[demand] != null;
    }

    /** Returns cost and prizes missed, without musts. */
    double totalMoney() {
        return workMoney + unservedMoney;
    }

    double workMoney() {
        return workMoney;
    }

    int missingMusts() {
        return missingMusts;
    }

    WaySearch search() {
        return search;
    }

    /** Returns the ways as they are; ways are never changed in place. */
    int[] @Nullable [] copiedWays() {
        return ways.clone();
    }

    /** Takes over ways that {@link #copiedWays} returned. */
    void restore(int[] @Nullable [] kept) {
        for (int demand = 0; demand < ways.length; demand++) {
            if (ways[demand] != kept[demand]) {
                remove(demand);
            }
        }
        for (int demand = 0; demand < ways.length; demand++) {
            int[] way = kept[demand];
            if (ways[demand] != way && way != null) {
                put(demand, way);
            }
        }
        recount();
    }
}
