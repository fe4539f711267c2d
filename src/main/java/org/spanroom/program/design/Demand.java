package org.spanroom.program.design;

/**
 * A connection: its cables go together, in one duct of every piece on its way.
 *
 * @param from a place
 * @param to another place
 * @param cables how many positions it takes in one duct
 * @param prize what serving it is worth; infinite where it must be served
 */
public record Demand(int from, int to, int cables, double prize) {
    public Demand {
        if (from == to || cables < 1 || !(prize >= 0)) {
            throw new IllegalArgumentException(
                    "from " + from + " to " + to + ", " + cables + " cables, prize " + prize);
        }
    }

    /** Returns whether it is served at any cost, if it can be. */
    public boolean isMust() {
        return Double.isInfinite(prize);
    }
}
