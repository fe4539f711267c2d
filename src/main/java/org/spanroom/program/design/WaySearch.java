package org.spanroom.program.design;

import java.util.Arrays;
import java.util.PriorityQueue;
import org.jspecify.annotations.Nullable;

/**
 * Finds the way that costs least on top of what is there, and of those the shortest: Dijkstra's algorithm, led to its goal by the
 * length that is left. Not thread-safe; reusable.
 */
final class WaySearch {
    private static final double HASH_SCALE = 1.0 / (1L << 53);

    private final LinkNetwork network;
    private final LinkLoads loads;
    private final double[] money;
    private final double[] lengthM;
    private final int[] by;
    private final int[] run;
    private final int[] slot;
    private final int[] heap;
    private int size;
    private int runs;
    private double noise;
    private long salt;
    private int shutLink = -1;
    private int shutNode = -1;
    private double blockedMoney = Double.POSITIVE_INFINITY;

    WaySearch(LinkLoads loads) {
        network = loads.network();
        this.loads = loads;
        int nodes = network.nodes();
        money = new double[nodes];
        lengthM = new double[nodes];
        by = new int[nodes];
        run = new int[nodes];
        slot = new int[nodes];
        heap = new int[nodes];
    }

    /** Makes costs up to so much larger, differently on each link, until the next call; 0 for exact costs. */
    void disturb(double ratio, long by) {
        noise = ratio;
        salt = by;
    }

    /** Lets ways pass links without room at this price each; infinite to shut them. */
    void openFull(double priceMoney) {
        blockedMoney = priceMoney;
    }

    /** Shuts a link and a node for all ways until the next call; -1 for none. */
    void shut(int link, int node) {
        shutLink = link;
        shutNode = node;
    }

    /**
     * Returns the links from one node to another; null where there is no way at up to the limit.
     *
     * @param kind of the demand
     * @param leftM of each node a length to the goal that no way is shorter than
     */
    int @Nullable [] way(int from, int to, int kind, double limitMoney, double[] leftM) {
        if (leftM[from] == Double.POSITIVE_INFINITY) {
            return null;
        }
        runs++;
        size = 0;
        reach(from, 0, leftM[from], -1);
        while (size > 0) {
            int node = pop();
            if (money[node] > limitMoney) {
                return null;
            }
            if (node == to) {
                return traced(from, to);
            }
            expand(node, kind, leftM);
        }
        return null;
    }

    private void expand(int node, int kind, double[] leftM) {
        for (int index = network.start(node); index < network.start(node + 1); index++) {
            int link = network.linkAt(index);
            int other = network.other(link, node);
            if ((run[other] == runs && slot[other] < 0) || link == shutLink || other == shutNode) {
                continue;
            }
            double marginal = price(link, kind);
            if (marginal < Double.POSITIVE_INFINITY) {
                double toM = lengthM[node] - leftM[node] + network.lengthM(link) + leftM[other];
                reach(other, money[node] + marginal, toM, link);
            }
        }
    }

    private double price(int link, int kind) {
        double marginal = loads.marginalMoney(link, kind);
        if (marginal == Double.POSITIVE_INFINITY) {
            return blockedMoney < marginal && loads.couldTake(link, kind) ? blockedMoney : marginal;
        }
        return noise == 0 ? marginal : marginal * (1 + noise * hashed(link));
    }

    private double hashed(int link) {
        long mixed = (salt + link) * 0x9E3779B97F4A7C15L;
        mixed = (mixed ^ (mixed >>> 32)) * 0xD6E8FEB86659FD93L;
        return ((mixed ^ (mixed >>> 32)) >>> 11) * HASH_SCALE;
    }

    private void reach(int node, double atMoney, double atM, int link) {
        boolean isNew = run[node] != runs;
        if (!isNew && !isLess(atMoney, atM, money[node], lengthM[node])) {
            return;
        }
        money[node] = atMoney;
        lengthM[node] = atM;
        by[node] = link;
        if (isNew) {
            run[node] = runs;
            slot[node] = size;
            heap[size++] = node;
        }
        rise(slot[node]);
    }

    private static boolean isLess(double money, double lengthM, double otherMoney, double otherM) {
        return money != otherMoney ? money < otherMoney : lengthM < otherM;
    }

    private boolean isBefore(int node, int other) {
        if (money[node] == money[other] && lengthM[node] == lengthM[other]) {
            return node < other;
        }
        return isLess(money[node], lengthM[node], money[other], lengthM[other]);
    }

    private void rise(int from) {
        int node = heap[from];
        int at = from;
        while (at > 0 && isBefore(node, heap[(at - 1) / 2])) {
            put(heap[(at - 1) / 2], at);
            at = (at - 1) / 2;
        }
        put(node, at);
    }

    private int pop() {
        int first = heap[0];
        slot[first] = -1;
        size--;
        if (size > 0) {
            sink(heap[size]);
        }
        return first;
    }

    private void sink(int node) {
        int at = 0;
        int child = 1;
        while (child < size) {
            if (child + 1 < size && isBefore(heap[child + 1], heap[child])) {
                child++;
            }
            if (!isBefore(heap[child], node)) {
                break;
            }
            put(heap[child], at);
            at = child;
            child = 2 * at + 1;
        }
        put(node, at);
    }

    private void put(int node, int at) {
        heap[at] = node;
        slot[node] = at;
    }

    private int[] traced(int from, int to) {
        int length = 0;
        for (int node = to; node != from; node = network.other(by[node], node)) {
            length++;
        }
        var way = new int[length];
        for (int node = to; node != from; node = network.other(by[node], node)) {
            way[--length] = by[node];
        }
        return way;
    }

    /** Returns of each node the length of the shortest way to a goal, infinite where there is none. */
    static double[] lengthsM(LinkNetwork network, int goal) {
        var leftM = new double[network.nodes()];
        Arrays.fill(leftM, Double.POSITIVE_INFINITY);
        leftM[goal] = 0;
        var open = new PriorityQueue<double[]>((a, b) -> Double.compare(a[0], b[0]));
        open.add(new double[] {0, goal});
        while (!open.isEmpty()) {
            double[] next = open.remove();
            int node = (int) next[1];
            if (next[0] > leftM[node]) {
                continue;
            }
            for (int index = network.start(node); index < network.start(node + 1); index++) {
                int link = network.linkAt(index);
                int other = network.other(link, node);
                double atM = next[0] + network.lengthM(link);
                if (atM < leftM[other]) {
                    leftM[other] = atM;
                    open.add(new double[] {atM, other});
                }
            }
        }
        return leftM;
    }
}
