package org.spanroom.program.bound;

import java.util.Arrays;

/**
 * Cheapest way of one demand under prices of its slots.
 *
 * <p>Not thread-safe. Reusable; results are valid until the next {@link #run}.
 */
final class CheapestWay {
    private final TrunkNetwork network;
    private final double[] distances;
    private final int[] arrivedBy;
    private final int[] heap;
    private final int[] positionInHeap;
    private final int[] touched;
    private int touchedCount;
    private int heapSize;

    private double bestDistance;
    private int lastPlace;
    private int lastSlot;

    private int[] way = new int[0];

    CheapestWay(TrunkNetwork network) {
        this.network = network;
        distances = new double[network.places];
        arrivedBy = new int[network.places];
        heap = new int[network.places];
        positionInHeap = new int[network.places];
        touched = new int[network.places];
        Arrays.fill(distances, Double.POSITIVE_INFINITY);
        Arrays.fill(positionInHeap, TrunkNetwork.NONE);
    }

    /**
     * Finds the way.
     *
     * @param prices of each slot, at least 0
     * @param most what not to go costs
     * @return the distance, or {@code most} where that is not higher
     */
    double run(int demand, double[] prices, double most) {
        clear();
        bestDistance = most;
        lastPlace = TrunkNetwork.NONE;
        lastSlot = TrunkNetwork.NONE;
        start(demand, prices);
        while (heapSize > 0) {
            int place = removeLeast();
            if (distances[place] >= bestDistance) {
                break;
            }
            arrive(demand, place, prices);
            for (int i = network.firstSlot[place]; i < network.firstSlot[place + 1]; i++) {
                int slot = network.slots[i];
                if (network.passes(demand, slot)) {
                    reach(network.head[slot], distances[place] + prices[slot], slot);
                }
            }
        }
        way = lastPlace == TrunkNetwork.NONE ? new int[0] : collect();
        return bestDistance;
    }

    /** Returns the slots of the way, in no order; none where no way is cheaper than the limit. */
    int[] way() {
        return way;
    }

    /** Returns the distance of the end, or the limit. */
    double distance() {
        return bestDistance;
    }

    /** Returns the distance of a place from the root; that of the end where the place is farther, or was not reached. */
    double distance(int place) {
        return Math.min(distances[place], bestDistance);
    }

    private void start(int demand, double[] prices) {
        int trunk = network.rootTrunk[demand];
        if (trunk == TrunkNetwork.NONE) {
            reach(network.demands.get(demand).root(), 0, TrunkNetwork.NONE);
            return;
        }
        for (int slot = 2 * trunk; slot < 2 * trunk + 2; slot++) {
            if (network.isOpen(demand, slot)) {
                reach(network.head[slot], prices[slot], startSlot(slot));
            }
        }
    }

    private void arrive(int demand, int place, double[] prices) {
        int trunk = network.targetTrunk[demand];
        if (trunk == TrunkNetwork.NONE) {
            if (place == network.demands.get(demand).target()) {
                end(place, TrunkNetwork.NONE, distances[place]);
            }
            return;
        }
        for (int slot = 2 * trunk; slot < 2 * trunk + 2; slot++) {
            if (network.tail[slot] == place && network.isOpen(demand, slot)) {
                end(place, slot, distances[place] + prices[slot]);
            }
        }
    }

    private void end(int place, int slot, double distance) {
        if (distance < bestDistance) {
            bestDistance = distance;
            lastPlace = place;
            lastSlot = slot;
        }
    }

    private int[] collect() {
        var found = new int[touchedCount + 1];
        int count = 0;
        if (lastSlot != TrunkNetwork.NONE) {
            found[count++] = lastSlot;
        }
        int place = lastPlace;
        while (arrivedBy[place] >= 0) {
            found[count++] = arrivedBy[place];
            place = network.tail[arrivedBy[place]];
        }
        if (arrivedBy[place] < TrunkNetwork.NONE) {
            found[count++] = startSlot(arrivedBy[place]);
        }
        return Arrays.copyOf(found, count);
    }

    /** A slot that starts inside its trunk is kept as a number below that of none. */
    private static int startSlot(int code) {
        return TrunkNetwork.NONE - 1 - code;
    }

    private void reach(int place, double distance, int arrival) {
        if (distance >= distances[place] || distance >= bestDistance) {
            return;
        }
        if (Double.isInfinite(distances[place])) {
            touched[touchedCount++] = place;
        }
        distances[place] = distance;
        arrivedBy[place] = arrival;
        int position = positionInHeap[place];
        rise(position == TrunkNetwork.NONE ? heapSize++ : position, place);
    }

    private void rise(int start, int place) {
        int position = start;
        while (position > 0) {
            int parent = (position - 1) / 2;
            if (!isBefore(place, heap[parent])) {
                break;
            }
            put(position, heap[parent]);
            position = parent;
        }
        put(position, place);
    }

    private int removeLeast() {
        int least = heap[0];
        positionInHeap[least] = TrunkNetwork.NONE;
        int last = heap[--heapSize];
        if (heapSize > 0) {
            sink(last);
        }
        return least;
    }

    private void sink(int place) {
        int position = 0;
        while (2 * position + 1 < heapSize) {
            int child = 2 * position + 1;
            if (child + 1 < heapSize && isBefore(heap[child + 1], heap[child])) {
                child++;
            }
            if (!isBefore(heap[child], place)) {
                break;
            }
            put(position, heap[child]);
            position = child;
        }
        put(position, place);
    }

    private void put(int position, int place) {
        heap[position] = place;
        positionInHeap[place] = position;
    }

    /** Ties go to the lower place, so that ways do not depend on chance. */
    private boolean isBefore(int place, int other) {
        return distances[place] < distances[other] || (distances[place] == distances[other] && place < other);
    }

    private void clear() {
        for (int i = 0; i < touchedCount; i++) {
            distances[touched[i]] = Double.POSITIVE_INFINITY;
        }
        for (int i = 0; i < heapSize; i++) {
            positionInHeap[heap[i]] = TrunkNetwork.NONE;
        }
        touchedCount = 0;
        heapSize = 0;
    }
}
