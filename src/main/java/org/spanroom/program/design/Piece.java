package org.spanroom.program.design;

import java.util.List;

/**
 * What joins two places: a section with its ducts side by side.
 *
 * @param from a place, by its number
 * @param to another place; a piece may be passed both ways
 * @param lengthM breaks ties between ways of one cost
 * @param bins its ducts
 * @param more what could be built
 */
public record Piece(int from, int to, double lengthM, List<Bin> bins, NewDucts more) {
    public Piece {
        if (from < 0 || to < 0 || from == to || !(lengthM >= 0)) {
            throw new IllegalArgumentException("from " + from + " to " + to + ", " + lengthM + " m");
        }
        bins = List.copyOf(bins);
    }

    /** Returns the other place. */
    public int other(int place) {
        return place == from ? to : from;
    }
}
