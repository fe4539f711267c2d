package org.spanroom.program.annual;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Finds the way of least price between two places, and of those of one price about the shortest. Not thread-safe; reusable. */
final class PricedWay {
    /** A way longer by all of the network counts as dearer by this share of the limit: it decides between ways of one price only. */
    private static final double TIE_RATIO = 1e-6;

    private final WishNetwork network;
    private final double totalM;
    private final double[] price;
    private final int[] by;
    private final int[] run;
    private final boolean[] isDone;
    private double[] keys = new double[64];
    private int[] nodes = new int[64];
    private int size;
    private int runs;
    private double foundPrice;

    /** What passing a link costs; infinite where it cannot be passed. */
    interface LinkPrice {
        double of(int link);
    }

    PricedWay(WishNetwork network) {
        this.network = network;
        double sum = 0;
        for (int link = 0; link < network.links(); link++) {
            sum += network.link(link).lengthM();
        }
        totalM = Math.max(1, sum);
        price = new double[network.places()];
        by = new int[network.places()];
        run = new int[network.places()];
        isDone = new boolean[network.places()];
    }

    /** Returns the links from one place to another; null where no way has at most a price. */
    int @Nullable [] find(int from, int to, double limit, LinkPrice prices) {
        runs++;
        size = 0;
        double ofMeter = TIE_RATIO * (Double.isFinite(limit) ? limit : 1) / totalM;
        reach(from, 0, -1);
        while (size > 0) {
            int place = pop();
            if (isDone[place]) {
                continue;
            }
            isDone[place] = true;
            if (price[place] > limit * (1 + TIE_RATIO)) {
                return null;
            }
            if (place == to) {
                foundPrice = price[place];
                return traced(from, to);
            }
            for (int number : network.linksAt(place)) {
                WishNetwork.Link link = network.link(number);
                double passing = prices.of(number);
                if (passing < Double.POSITIVE_INFINITY) {
                    reach(link.other(place), price[place] + passing + ofMeter * link.lengthM(), number);
                }
            }
        }
        return null;
    }

    /** Returns the price of the way that was found last. */
    double foundPrice() {
        return foundPrice;
    }

    private int[] traced(int from, int to) {
        int length = 0;
        for (int place = to; place != from; place = network.link(by[place]).other(place)) {
            length++;
        }
        int[] way = new int[length];
        for (int place = to; place != from; place = network.link(by[place]).other(place)) {
            way[--length] = by[place];
        }
        return way;
    }

    private void reach(int place, double at, int link) {
        if (run[place] == runs && (isDone[place] || price[place] <= at)) {
            return;
        }
        run[place] = runs;
        isDone[place] = false;
        price[place] = at;
        by[place] = link;
        push(at, place);
    }

    private void push(double key, int place) {
        if (size == keys.length) {
            keys = Arrays.copyOf(keys, 2 * size);
            nodes = Arrays.copyOf(nodes, 2 * size);
        }
        int at = size++;
        while (at > 0 && isBefore(key, place, (at - 1) / 2)) {
            keys[at] = keys[(at - 1) / 2];
            nodes[at] = nodes[(at - 1) / 2];
            at = (at - 1) / 2;
        }
        keys[at] = key;
        nodes[at] = place;
    }

    private boolean isBefore(double key, int place, int other) {
        return key != keys[other] ? key < keys[other] : place < nodes[other];
    }

    private int pop() {
        int first = nodes[0];
        size--;
        double key = keys[size];
        int place = nodes[size];
        int at = 0;
        int child = 1;
        while (child < size) {
            if (child + 1 < size && isBefore(keys[child + 1], nodes[child + 1], child)) {
                child++;
            }
            if (isBefore(key, place, child)) {
                break;
            }
            keys[at] = keys[child];
            nodes[at] = nodes[child];
            at = child;
            child = 2 * at + 1;
        }
        keys[at] = key;
        nodes[at] = place;
        return first;
    }
}
