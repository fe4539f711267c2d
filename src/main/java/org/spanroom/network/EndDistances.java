package org.spanroom.network;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.Line;
import org.spanroom.model.network.EndDistanceCounts;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.Vault;

/** Counts how many ends of routes have a vault near, so that a snap tolerance can be chosen. */
public final class EndDistances {
    private static final double[] BANDS_M = {0.1, 0.5, 1, 2, 5};

    private EndDistances() {}

    /** Returns the counts of line ends with a vault within 0.1, 0.5, 1, 2 and 5 m. */
    public static EndDistanceCounts count(List<Route> routes, List<Vault> vaults) {
        var places = new VaultPlaces(vaults, 0);
        int[] counts = new int[BANDS_M.length];
        for (Route route : routes) {
            Line line = route.lonLat();
            countEnd(places, line.x(0), line.y(0), counts);
            countEnd(places, line.x(line.size() - 1), line.y(line.size() - 1), counts);
        }
        List<EndDistanceCounts.Band> bands = new ArrayList<>();
        for (int band = 0; band < BANDS_M.length; band++) {
            bands.add(new EndDistanceCounts.Band(BANDS_M[band], counts[band]));
        }
        return new EndDistanceCounts(2 * routes.size(), bands);
    }

    private static void countEnd(VaultPlaces places, double lonDeg, double latDeg, int[] counts) {
        int nearest = places.nearest(lonDeg, latDeg, BANDS_M[BANDS_M.length - 1]);
        if (nearest < 0) {
            return;
        }
        double meters = places.distanceM(nearest, lonDeg, latDeg);
        for (int band = 0; band < BANDS_M.length; band++) {
            counts[band] += meters <= BANDS_M[band] ? 1 : 0;
        }
    }
}
