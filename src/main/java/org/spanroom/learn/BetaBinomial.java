package org.spanroom.learn;

/**
 * The chance of an event after it was looked for in some ducts: a beta distribution before, worth as much as some ducts that were
 * looked at, and a binomial count (standard textbook, from memory). The same for several outcomes with a Dirichlet distribution.
 */
final class BetaBinomial {
    private BetaBinomial() {}

    /**
     * Returns the mean of the chance after the look; the chance before where nothing was looked at.
     *
     * @param priorRatio the chance before
     * @param priorSpans how many ducts it counts as
     * @param events how many of the ducts that were looked at had the event, or the outcome
     * @param spans how many were looked at
     */
    static double meanRatio(double priorRatio, double priorSpans, int events, int spans) {
        return spans == 0 ? priorRatio : (priorSpans * priorRatio + events) / (priorSpans + spans);
    }
}
