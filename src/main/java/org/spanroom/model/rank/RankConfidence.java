package org.spanroom.model.rank;

import org.spanroom.model.Check;

/**
 * Confidence in a span's rank, from a simulation of what is assumed or uncertain.
 *
 * @param feasibleRatio chance that every innerduct can be pulled and that room is gained
 * @param scoreLowPoints score that it falls short of with a chance of 10 %
 * @param scoreHighPoints score that it exceeds with a chance of 10 %
 * @param topRatio chance of being among the top of the ranking
 */
public record RankConfidence(double feasibleRatio, double scoreLowPoints, double scoreHighPoints, double topRatio) {
    public RankConfidence {
        Check.within("feasibleRatio", feasibleRatio, 0, 1);
        Check.within("topRatio", topRatio, 0, 1);
    }
}
