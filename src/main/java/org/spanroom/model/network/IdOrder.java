package org.spanroom.model.network;

/** The order of the ids of spans, as texts. Safe for use by several threads. */
public interface IdOrder {
    /**
     * Returns a number that grows with what the id of a span begins with: 0 or more, and never larger than that of a span whose id comes
     * later. Different ids may have the same number.
     */
    long leadingOfId(int number);

    /** Compares the ids of two spans as texts. */
    int compareIds(int number, int other);
}
