package org.spanroom.bore;

/**
 * The work on one cross-section, counted in units of about a microsecond, and where it ends: crowded contents would otherwise take minutes.
 *
 * <p>What is counted follows from the sizes alone, never from the clock nor from what is remembered, so the same cross-section always ends
 * at the same place. Once the work is spent, what a bound refutes or {@link Laying} lays is still answered; the rest is undecided.
 * Not safe for use by several threads.
 */
final class Work {
    /** About two seconds; a cross-section of ten innerducts with their cables takes a tenth. */
    static final long MOST_OF_SECTION = 2_000_000;

    /** The most for one set of circles: what all moves of a search for 17 circles take. */
    static final long MOST_OF_SEARCH = 2_000_000;

    private final long most;
    private long spent;
    private boolean leftOpen;

    Work(long most) {
        this.most = most;
    }

    static Work ofSection() {
        return new Work(MOST_OF_SECTION);
    }

    static Work withoutEnd() {
        return new Work(Long.MAX_VALUE);
    }

    /** Returns whether nothing more is to be searched for. */
    boolean isSpent() {
        return spent >= most;
    }

    /** Notes that an answer was left open since the work is spent. */
    void leaveOpen() {
        leftOpen = true;
    }

    /** Adds work that was done, or that was once done for a remembered answer. */
    void add(long more) {
        spent += more;
    }

    /** Adds the work on a part of the cross-section, which may have left an answer open by itself. */
    void add(Work part) {
        spent += part.spent;
        leftOpen |= part.leftOpen;
    }

    long spent() {
        return spent;
    }

    /** Returns whether an answer was left open since the work was spent. */
    boolean hasLeftOpen() {
        return leftOpen;
    }
}
