package org.spanroom.program.bound;

/**
 * What joins two places of a reduced network: a piece, pieces one after the other, or both side by side.
 *
 * @param from a place
 * @param to another place, or the same one where a chain returns
 * @param cost its least cost by counts
 */
record Link(int from, int to, CountCost cost) {
    int other(int place) {
        return place == from ? to : from;
    }
}
