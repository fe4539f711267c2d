package org.spanroom.program.bound;

/** Least cost of letting demands through a part of the network, by how many of each size there are. */
interface CountCost {
    /**
     * Returns the costs of all counts in a box, by their number there; infinite where they do not fit. Never falls as a count rises, and
     * is 0 for no demands.
     *
     * @param sizes cables of a demand of each size, ascending
     */
    double[] table(CountBox box, int[] sizes);
}
