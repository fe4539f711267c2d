package org.spanroom.bend;

/**
 * A path and the noise that together explain a drawn line.
 *
 * @param fits what was fitted on the way, under that noise
 * @param cost twice the negative logarithm of how likely they are, but for a constant; see {@link PathChoice}
 */
record Explanation(TangentChain chain, Fits fits, double cost) {
    Noise noise() {
        return fits.noise;
    }
}
