package org.spanroom.network;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntConsumer;

/**
 * Finds every coming-by of a line at a vault. For use by one thread.
 *
 * <p>Each step is tried against the vaults in the grid's cells along it, in plane meters by the scale at the vault's
 * latitude: exact near the vault, where it matters. Between its vertices a line is straight in longitude and latitude. The
 * places within tolerance of one vault, step by step, are put together where they touch; each such stretch is one pass.
 */
final class VaultCrossingFinder implements IntConsumer {
    private static final Comparator<VaultCrossing> BY_VAULT = Comparator.comparingInt(VaultCrossing::vault)
            .thenComparingDouble(VaultCrossing::reachFromM)
            .thenComparingDouble(VaultCrossing::reachToM)
            .thenComparingDouble(VaultCrossing::offsetM)
            .thenComparingDouble(VaultCrossing::nearFromM);

    private final VaultPlaces places;
    private final VaultSightings sightings;
    private final double toleranceM;
    private final double radiusM;
    private final List<VaultCrossing> hits = new ArrayList<>();
    private double lon0;
    private double lat0;
    private double dLon;
    private double dLat;
    private Track line = Track.NONE;
    private int step;
    private double skewRatio;

    VaultCrossingFinder(VaultPlaces places, VaultSightings sightings, double toleranceM, double radiusM) {
        this.places = places;
        this.sightings = sightings;
        this.toleranceM = toleranceM;
        this.radiusM = Math.max(toleranceM, radiusM);
    }

    /** Returns the passes of a line, by vault and place. */
    List<VaultCrossing> find(Track track) {
        hits.clear();
        line = track;
        for (int vertex = 0; vertex + 1 < track.size(); vertex++) {
            lon0 = track.lonDeg(vertex);
            lat0 = track.latDeg(vertex);
            dLon = GroundStep.differenceDeg(lon0, track.lonDeg(vertex + 1));
            dLat = track.latDeg(vertex + 1) - lat0;
            step = vertex;
            skewRatio = Double.NaN;
            places.visitStep(lon0, lat0, dLon, dLat, radiusM, this);
        }
        return together();
    }

    /** Tries the current step against one vault. */
    @Override
    public void accept(int vault) {
        double ax = places.eastM(vault, lon0);
        double ay = places.northM(vault, lat0);
        double bx = places.eastM(vault, lon0 + dLon);
        double by = places.northM(vault, lat0 + dLat);
        double reachM = radiusM + places.extentM(vault);
        boolean far = Math.min(ax, bx) > reachM
                || Math.max(ax, bx) < -reachM
                || Math.min(ay, by) > reachM
                || Math.max(ay, by) < -reachM;
        // a step that seems wider than it is passes the vault on the far side of the globe
        if (far || Math.abs(bx - ax) > Math.abs(dLon) * 200_000 + 1) {
            return;
        }
        if (places.isFootprint(vault)) {
            places.footprint(vault).meet(ax, ay, bx, by, toleranceM, radiusM, hitsAt(places.standsFor(vault)));
        } else {
            tryPoint(places.standsFor(vault), ax, ay, bx - ax, by - ay);
        }
    }

    private void tryPoint(int vault, double ax, double ay, double dx, double dy) {
        double squared = dx * dx + dy * dy;
        double foot = -(ax * dx + ay * dy) / squared;
        double near = Math.max(0, Math.min(1, foot));
        double offX = ax + near * dx;
        double offY = ay + near * dy;
        double offset2 = offX * offX + offY * offY;
        if (offset2 > radiusM * radiusM) {
            return;
        }
        double offsetM = Math.sqrt(offset2);
        sightings.sight(vault, offsetM);
        if (offsetM > toleranceM) {
            return;
        }
        double footX = ax + foot * dx;
        double footY = ay + foot * dy;
        double half = Math.sqrt(Math.max(0, (toleranceM * toleranceM - footX * footX - footY * footY) / squared));
        double from = Math.min(near, Math.max(0, foot - half));
        double to = Math.max(near, Math.min(1, foot + half));
        hits.add(VaultCrossing.beside(vault, place(from), place(to), place(near), offsetM));
    }

    private Footprint.Meeting hitsAt(int vault) {
        return new Footprint.Meeting() {
            @Override
            public void beside(double from, double to, double nearFrom, double nearTo, double distanceM) {
                sightings.sight(vault, distanceM);
                hits.add(
                        VaultCrossing.beside(vault, place(from), place(to), place(nearFrom), place(nearTo), distanceM));
            }

            @Override
            public void inside(double from, double to) {
                sightings.sight(vault, 0);
                hits.add(VaultCrossing.inside(vault, place(from), place(to)));
            }

            @Override
            public void misses(double distanceM) {
                sightings.sight(vault, distanceM);
            }
        };
    }

    private double place(double share) {
        if (Double.isNaN(skewRatio)) {
            skewRatio = line.skewRatio(step);
        }
        return line.placeM(step, share, skewRatio);
    }

    private List<VaultCrossing> together() {
        if (hits.size() > 1) {
            hits.sort(BY_VAULT);
        }
        List<VaultCrossing> passes = new ArrayList<>(hits.size());
        for (VaultCrossing hit : hits) {
            int last = passes.size() - 1;
            if (last >= 0
                    && passes.get(last).vault() == hit.vault()
                    && passes.get(last).touches(hit)) {
                passes.set(last, passes.get(last).with(hit));
            } else {
                passes.add(hit);
            }
        }
        return passes;
    }
}
