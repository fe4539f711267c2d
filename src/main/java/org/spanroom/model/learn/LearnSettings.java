package org.spanroom.model.learn;

import org.spanroom.model.Check;

/**
 * How fast numbers follow what was reported.
 *
 * @param priorSpans how many spans the value that is used today counts as: with as many spans reported it moves half the way
 * @param leastSpans with fewer spans nothing is proposed
 * @param mostRatio a ratio of actual to planned above it, or below its inverse, is treated as an error of writing
 * @param seed where the resamples begin; the same seed gives the same interval
 * @param resamples of the bootstrap
 * @param intervalRatio share of the resamples whose medians the interval holds
 */
public record LearnSettings(
        int priorSpans, int leastSpans, double mostRatio, int seed, int resamples, double intervalRatio) {
    /** Our judgment; the values of rates that are shipped are illustrative, so that few spans outweigh them. */
    public static final LearnSettings STANDARD = new LearnSettings(5, 3, 20, 1, 4000, 0.9);

    public LearnSettings {
        Check.positive("priorSpans", priorSpans);
        Check.positive("leastSpans", leastSpans);
        Check.within("mostRatio", mostRatio, 1, 1e6);
        Check.within("resamples", resamples, 100, 1_000_000);
        Check.within("intervalRatio", intervalRatio, 0.5, 0.999);
    }

    /** Returns whether a ratio is believed. */
    public boolean isPlausible(double ratio) {
        return ratio <= mostRatio && ratio >= 1 / mostRatio;
    }
}
