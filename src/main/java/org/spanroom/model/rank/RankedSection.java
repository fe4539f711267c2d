package org.spanroom.model.rank;

import java.util.Optional;
import java.util.OptionalInt;
import org.spanroom.model.Line;
import org.spanroom.model.network.SectionKey;

/**
 * A section with its place among the sections: the spans of one bank between the same two vaults, which one set-up of a crew serves.
 *
 * @param rank place among the sections by their best spans, 1 for the best; empty where none of its spans is ranked
 * @param counts over its spans
 * @param first the best of its spans; where none is ranked, the one whose id is smallest
 */
public record RankedSection(SectionKey key, OptionalInt rank, Counts counts, First first) {
    /**
     * What the spans of a section add up to.
     *
     * @param spans how many there are
     * @param ranked how many of them are ranked
     * @param spare how many of them are sound empty ducts
     * @param positionsNow positions now, of all spans
     * @param positionsAfter positions after the recovery of the ranked spans, of all spans
     * @param positionsGained positions that recovery gains, of the ranked spans
     * @param contentsAssumed how many of the ranked spans rest on an assumed count of innerducts or cables
     */
    public record Counts(
            int spans,
            int ranked,
            int spare,
            int positionsNow,
            int positionsAfter,
            int positionsGained,
            int contentsAssumed) {
        public static final Counts NONE = new Counts(0, 0, 0, 0, 0, 0, 0);

        public int excluded() {
            return spans - ranked;
        }

        /**
         * Returns these counts with one more span.
         *
         * @param isRanked whether it is ranked, so that it is recovered; another one keeps its positions of today
         * @param isSpare whether it is a sound empty duct
         */
        public Counts plus(boolean isRanked, boolean isSpare, int now, int after, int gained) {
            return new Counts(
                    spans + 1,
                    ranked + (isRanked ? 1 : 0),
                    spare + (isSpare ? 1 : 0),
                    positionsNow + now,
                    positionsAfter + (isRanked ? after : now),
                    positionsGained + (isRanked ? gained : 0),
                    contentsAssumed);
        }

        /** Returns these counts with this many more ranked spans of assumed contents. */
        public Counts plusAssumed(int more) {
            return new Counts(
                    spans, ranked, spare, positionsNow, positionsAfter, positionsGained, contentsAssumed + more);
        }
    }

    /**
     * The span that represents a section, and gives it its line.
     *
     * @param vaultA id of the vault where the line begins
     * @param vaultB id of the vault where it ends
     * @param rank empty for an excluded span
     * @param scorePoints out of 100
     * @param lengthM the length that counts
     * @param cautions how many it has
     * @param lonLat its line, degrees on WGS 84; empty where an earlier run wrote none
     */
    public record First(
            String spanId,
            String vaultA,
            String vaultB,
            OptionalInt rank,
            double scorePoints,
            double lengthM,
            int cautions,
            Optional<Line> lonLat) {}
}
