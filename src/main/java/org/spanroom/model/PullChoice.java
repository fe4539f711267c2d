package org.spanroom.model;

/**
 * One way of recovering room: so many innerducts come out, the empty ones first, and sleeves go in beside the rest.
 *
 * @param innerductsOut how many pulls it takes
 * @param emptyOut how many of them hold no cable
 * @param innerductsLeft how many stay in the duct
 * @param positionsLeft how many of those that stay are empty and wide enough for the design cable
 * @param newCables design cables that go into the sleeves
 */
public record PullChoice(
        int innerductsOut, int emptyOut, int innerductsLeft, int positionsLeft, int sleeves, int newCables) {
    /** Returns how many cables there is then a place for. */
    public int positionsAfter() {
        return positionsLeft + newCables;
    }
}
