package org.spanroom.model;

/**
 * Keeps read-ahead loops alive. Reading a little of many scattered objects in a tight loop lets the processor fetch them in parallel; later work
 * finds them in its cache.
 */
public final class Prefetch {
    /** How many objects to read ahead: few enough that all of them stay in the cache until they are used. */
    public static final int AT_ONCE = 64;

    /** Has no meaning. Threads may see any number here. */
    private static int last;

    private Prefetch() {}

    /** Uses the sum of what was read, so that the compiler does not remove the reads. */
    public static void read(int sum) {
        if (sum != last) {
            last = sum;
        }
    }
}
