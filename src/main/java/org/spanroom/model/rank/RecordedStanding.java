package org.spanroom.model.rank;

import java.util.OptionalInt;

/**
 * What the results of a run say of one span among all others. Numbers are rounded as the results are, and NaN where these have none:
 * for a span without a rank, a run without simulation, or one that another scoring was tried on.
 *
 * @param rank empty for an excluded span
 * @param spansRanked how many spans of the run have a rank
 * @param feasiblePercent chance that every innerduct can be pulled and that room is gained
 * @param scoreLowPoints score that it falls short of with a chance of 10 %
 * @param scoreHighPoints score that it exceeds with a chance of 10 %
 * @param topPercent chance of being among the top of the ranking
 */
public record RecordedStanding(
        OptionalInt rank,
        int spansRanked,
        double feasiblePercent,
        double scoreLowPoints,
        double scoreHighPoints,
        double topPercent) {
    /** A rank that was not simulated. */
    public RecordedStanding(OptionalInt rank, int spansRanked) {
        this(rank, spansRanked, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
    }

    /** Returns the same standing among so many ranked spans. */
    public RecordedStanding among(int ranked) {
        return new RecordedStanding(rank, ranked, feasiblePercent, scoreLowPoints, scoreHighPoints, topPercent);
    }

    public boolean isSimulated() {
        return Double.isFinite(feasiblePercent);
    }
}
