package org.spanroom.network;

import java.util.List;
import java.util.OptionalInt;
import java.util.function.IntPredicate;

/** The cuts of a chain in the order in which they begin, to be asked what comes next at a place, without looking at all of them. */
final class CutOrder {
    private final List<Cut> cuts;

    /** How far the cuts up to each reach. One that drove out another may reach beyond the next. */
    private final double[] reachedM;

    CutOrder(List<Cut> cuts) {
        this.cuts = cuts;
        reachedM = new double[cuts.size()];
        double farthestM = Double.NEGATIVE_INFINITY;
        for (int cut = 0; cut < reachedM.length; cut++) {
            farthestM = Math.max(farthestM, cuts.get(cut).toM());
            reachedM[cut] = farthestM;
        }
    }

    /** Returns the vault of the first cut that does not end before a place, in the round before, this one or the one after. */
    OptionalInt next(double placeM, double roundM) {
        for (double addM = -roundM; addM <= roundM; addM += Math.max(roundM, 1)) {
            double leastM = placeM - VaultCrossing.SAME_PLACE_M;
            double shiftM = addM;
            int first = firstWhere(cut -> reachedM[cut] + shiftM >= leastM);
            if (first < cuts.size()) {
                return OptionalInt.of(cuts.get(first).vault());
            }
        }
        return OptionalInt.empty();
    }

    /** Returns the vault of the last cut that does not begin beyond a place, in the round after, this one or the one before. */
    OptionalInt last(double placeM, double roundM) {
        for (double addM = roundM; addM >= -roundM; addM -= Math.max(roundM, 1)) {
            double mostM = placeM + VaultCrossing.SAME_PLACE_M;
            double shiftM = addM;
            int beyond = firstWhere(cut -> cuts.get(cut).fromM() + shiftM > mostM);
            if (beyond > 0) {
                return OptionalInt.of(cuts.get(beyond - 1).vault());
            }
        }
        return OptionalInt.empty();
    }

    /** Returns the first cut of which it is so, as it then is of all after it; their count where it is of none. */
    private int firstWhere(IntPredicate so) {
        int low = 0;
        int high = cuts.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (so.test(middle)) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }
}
