package org.spanroom.model.effort;

/**
 * Which row of the rates applies for each key at one place: the standard one, or that of a kind of vault or zone. It fits any
 * draw of the rates that it was made from.
 *
 * <p>A packed array: a simulation looks up some sixty rates for each of its samples of each span.
 */
public final class RateRows {
    private final int[] rowByKey;

    RateRows(int[] rowByKey) {
        this.rowByKey = rowByKey.clone();
    }

    @SuppressWarnings("EnumOrdinal") // packed in the order of the constants, in memory only
    int row(RateKey key) {
        return rowByKey[key.ordinal()];
    }
}
