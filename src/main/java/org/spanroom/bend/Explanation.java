package org.spanroom.bend;

/**
 * A path and the noise that together explain a drawn line.
 *
 * @param cost twice the negative logarithm of how likely they are, but for a constant; see {@link PathChoice}
 */
record Explanation(TangentChain chain, Noise noise, double cost) {}
