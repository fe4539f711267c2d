package org.spanroom.model.bore;

import java.util.List;
import org.spanroom.model.Check;
import org.spanroom.model.network.BoreShape;

/**
 * What an earlier run found out about a set of circles in a bore, so that it need not be searched for again.
 *
 * @param shape of the bore
 * @param slackMm neighboring cells of a sleeve are no farther apart than this
 * @param diametersMm of the circles, from the largest
 * @param sleeves the number of the sleeve that each circle belongs to, 0 for none
 * @param moves how far the search went
 * @param found the arrangements that it came upon, in bores that grow narrower
 */
public record KnownPacking(
        BoreShape shape,
        double slackMm,
        List<Double> diametersMm,
        List<Integer> sleeves,
        int moves,
        List<Found> found) {
    /**
     * An arrangement.
     *
     * @param move after how many moves of the search it was found; 0 for its first starts
     * @param leastBoreMm its bore
     * @param centersMm x and y of each circle in turn
     */
    public record Found(int move, double leastBoreMm, List<Double> centersMm) {
        public Found {
            Check.notNegative("move", move);
            Check.positive("leastBoreMm", leastBoreMm);
            centersMm = List.copyOf(centersMm);
            for (double centerMm : centersMm) {
                Check.finite("centersMm", centerMm);
            }
        }
    }

    public KnownPacking {
        Check.notNegative("slackMm", slackMm);
        Check.notNegative("moves", moves);
        diametersMm = List.copyOf(diametersMm);
        sleeves = List.copyOf(sleeves);
        found = List.copyOf(found);
        for (double diameterMm : diametersMm) {
            Check.positive("diametersMm", diameterMm);
        }
        if (sleeves.size() != diametersMm.size() || diametersMm.isEmpty()) {
            throw new IllegalArgumentException(
                    "sleeves must be one for each circle, were " + sleeves.size() + " for " + diametersMm.size());
        }
        for (Found one : found) {
            if (one.centersMm().size() != 2 * diametersMm.size()) {
                throw new IllegalArgumentException("centersMm must be two for each circle, were "
                        + one.centersMm().size() + " for " + diametersMm.size());
            }
        }
    }
}
