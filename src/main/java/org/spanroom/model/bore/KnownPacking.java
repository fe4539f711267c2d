package org.spanroom.model.bore;

import java.util.List;
import org.spanroom.model.Check;
import org.spanroom.model.network.BoreShape;

/**
 * What an earlier run found out about circles in a bore, so that it need not be searched for again.
 *
 * @param shape of the bore
 * @param boreMm inside diameter, or side, of the bore that the search was made in
 * @param diametersMm of the circles, from the largest
 * @param outcome whether they fit, or whether that stayed undecided
 * @param leastBoreMm the least bore of the arrangement
 * @param centresMm the arrangement: x and y of each circle in turn
 */
public record KnownPacking(
        BoreShape shape,
        double boreMm,
        List<Double> diametersMm,
        PackingOutcome outcome,
        double leastBoreMm,
        List<Double> centresMm) {
    public KnownPacking {
        Check.positive("boreMm", boreMm);
        Check.positive("leastBoreMm", leastBoreMm);
        diametersMm = List.copyOf(diametersMm);
        centresMm = List.copyOf(centresMm);
        for (double diameterMm : diametersMm) {
            Check.positive("diametersMm", diameterMm);
        }
        for (double centreMm : centresMm) {
            Check.finite("centresMm", centreMm);
        }
        if (centresMm.size() != 2 * diametersMm.size() || diametersMm.isEmpty()) {
            throw new IllegalArgumentException(
                    "centresMm must be two for each circle, were " + centresMm.size() + " for " + diametersMm.size());
        }
    }
}
