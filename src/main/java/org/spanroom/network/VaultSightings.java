package org.spanroom.network;

import java.util.Arrays;
import java.util.concurrent.atomic.AtomicIntegerArray;

/**
 * How near any route has come to each vault, and how many span ends it has. Safe for several threads: least values and
 * counts do not depend on who comes first.
 */
final class VaultSightings {
    private final AtomicIntegerArray nearestBits;
    private final AtomicIntegerArray ends;

    VaultSightings(int vaultCount) {
        int[] far = new int[vaultCount];
        Arrays.fill(far, Float.floatToIntBits(Float.POSITIVE_INFINITY));
        nearestBits = new AtomicIntegerArray(far);
        ends = new AtomicIntegerArray(vaultCount);
    }

    /** Notes that a route comes so near. The bits of floats that are not negative are in the order of the floats. */
    void sight(int vault, double distanceM) {
        int bits = Float.floatToIntBits((float) distanceM);
        if (bits < nearestBits.get(vault)) {
            nearestBits.accumulateAndGet(vault, bits, Math::min);
        }
    }

    void addEnd(int vault) {
        ends.incrementAndGet(vault);
    }

    double nearestM(int vault) {
        return Float.intBitsToFloat(nearestBits.get(vault));
    }

    int endCount(int vault) {
        return ends.get(vault);
    }
}
