package org.spanroom.network;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.spanroom.model.ValueSource;
import org.spanroom.model.network.NetworkSettings;

/**
 * Finds at which vault each end of an open chain is, of all those within tolerance of it.
 *
 * <p>The nearest to the end; of equally near ones the one that the records name, then the one with the smaller name. Where
 * the records count, the one that they name goes before all. Distances are compared by the millimeter: what differs by less is
 * the noise of calculation, which may not decide before the records do.
 */
final class LineEnds {
    private final VaultPlaces places;
    private final boolean recordsCount;

    LineEnds(NetworkSettings settings, VaultPlaces places) {
        this.places = places;
        recordsCount = settings.vaults() == ValueSource.RECORDED;
    }

    static long millimeters(double meters) {
        return Math.round(1000 * meters);
    }

    /** Returns the passes of an open chain in their order, those of its ends cut right there. */
    List<VaultCrossing> settle(Chain chain, List<VaultCrossing> passes) {
        List<VaultCrossing> settled = new ArrayList<>(passes);
        settleEnd(chain, settled, VaultCrossing.FIRST, 0);
        settleEnd(chain, settled, VaultCrossing.LAST, chain.lengthM());
        settled.sort(Chain.ALONG);
        return settled;
    }

    private void settleEnd(Chain chain, List<VaultCrossing> passes, int end, double placeM) {
        ChainLink piece = chain.at(placeM);
        double lonDeg = piece.lonAt(placeM);
        double latDeg = piece.latAt(placeM);
        Comparator<VaultCrossing> byRight = Comparator.comparing(
                        (VaultCrossing pass) -> recordsCount && !pass.isNamedAt(end))
                .thenComparingLong(pass -> millimeters(distanceM(pass, placeM, lonDeg, latDeg)))
                .thenComparing(pass -> !pass.isNamedAt(end))
                .thenComparingInt(VaultCrossing::vault);
        int best = -1;
        for (int i = 0; i < passes.size(); i++) {
            boolean there = passes.get(i).holds(placeM);
            if (there && (best < 0 || byRight.compare(passes.get(i), passes.get(best)) < 0)) {
                best = i;
            }
        }
        if (best >= 0) {
            VaultCrossing pass = passes.get(best);
            passes.set(best, pass.settledAt(end, placeM, distanceM(pass, placeM, lonDeg, latDeg)));
        }
    }

    private double distanceM(VaultCrossing pass, double placeM, double lonDeg, double latDeg) {
        boolean nearest = pass.nearFromM() - VaultCrossing.SAME_PLACE_M <= placeM
                && placeM <= pass.nearToM() + VaultCrossing.SAME_PLACE_M;
        return nearest ? pass.offsetM() : places.distanceM(pass.vault(), lonDeg, latDeg);
    }
}
