package org.spanroom.model;

/**
 * For reading ahead: what is asked for out of order lies all over the memory, where work on one thing after another waits for each. A tight loop
 * that reads a little of many waits for many at once, and leaves them near the processor for the work.
 */
public final class NearMemory {
    /** Without meaning. Threads may see any number here. */
    private static int last;

    private NearMemory() {}

    /** Takes a sum over what was read, without meaning: what leads to nothing, Java does not read. */
    public static void read(int sum) {
        if (sum != last) {
            last = sum;
        }
    }
}
