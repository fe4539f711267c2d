package org.spanroom.bore;

/**
 * A proof that circles need more than the bore they are given.
 *
 * @param bound the name of the bound, with the circles that it speaks of
 * @param leastBoreMm the inside diameter, or side, below which the bound proves that they do not fit
 */
record Proof(String bound, double leastBoreMm) {}
