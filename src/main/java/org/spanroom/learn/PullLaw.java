package org.spanroom.learn;

/** The largest force of one pull as a function of friction. */
@FunctionalInterface
public interface PullLaw {
    /**
     * Returns the calculated force of breaking away; it never falls as friction grows.
     *
     * @param scaleRatio factor on all dry coefficients of friction
     */
    double largestN(double scaleRatio);
}
