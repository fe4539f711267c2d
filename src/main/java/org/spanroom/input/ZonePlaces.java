package org.spanroom.input;

import java.util.List;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.Counted;
import org.spanroom.model.Line;
import org.spanroom.model.network.Route;
import org.spanroom.model.permit.Zone;

/**
 * Looks for files of permit zones that can require nothing: without a usable zone, or with all zones far from the routes. A wrong
 * reference system and a filtered export look so, and without a word the permits would merely be missing.
 */
final class ZonePlaces {
    /** About 5 km: a layer of one town has some zone as near as that, whatever the shape of the town. */
    private static final double NEAR_DEG = 0.05;

    private static final double FULL_TURN_DEG = 360;

    private double westDeg = Double.POSITIVE_INFINITY;
    private double southDeg = Double.POSITIVE_INFINITY;
    private double eastDeg = Double.NEGATIVE_INFINITY;
    private double northDeg = Double.NEGATIVE_INFINITY;

    private ZonePlaces(List<Route> routes) {
        routes.forEach(route -> add(route.lonLat()));
    }

    private void add(Line lonLat) {
        for (int i = 0; i < lonLat.size(); i++) {
            westDeg = Math.min(westDeg, lonLat.x(i));
            eastDeg = Math.max(eastDeg, lonLat.x(i));
            southDeg = Math.min(southDeg, lonLat.y(i));
            northDeg = Math.max(northDeg, lonLat.y(i));
        }
    }

    /**
     * Reports the files.
     *
     * @param zones of all files, in their order
     */
    static void report(LayerFilesReader.Read<Zone> zones, List<Route> routes, FindingLog findings) {
        var places = new ZonePlaces(routes);
        int next = 0;
        for (LayerFilesReader.FileRead file : zones.files()) {
            InputRecord record = file.record();
            int first = next;
            next = (int) Math.min(zones.items().size(), first + record.featuresUsed());
            if (next == first) {
                String unused = record.featuresRead() == 0
                        ? "the layer has no features; was it exported with a filter?"
                        : "none of its " + Counted.of(record.featuresRead(), "feature") + " can be used as a zone";
                findings.add(Finding.of(FindingCode.ZONES_FAR_FROM_ROUTES, record.source(), "", unused));
            } else if (!routes.isEmpty()
                    && zones.items().subList(first, next).stream().noneMatch(places::isNear)) {
                findings.add(Finding.of(
                        FindingCode.ZONES_FAR_FROM_ROUTES,
                        record.source(),
                        "",
                        "none of its " + Counted.of(next - first, "zone")
                                + " is within about 5 km of the routes; check " + "its reference system, read as "
                                + file.crs().name() + ", and the order of its axes"));
            }
        }
    }

    private boolean isNear(Zone zone) {
        return zone.outlines().stream().map(Zone.Outline::shell).anyMatch(this::isNear);
    }

    private boolean isNear(Line shell) {
        var extent = new ZonePlaces(List.of());
        extent.add(shell);
        boolean up = extent.southDeg <= northDeg + NEAR_DEG && extent.northDeg >= southDeg - NEAR_DEG;
        return up && (isAcross(extent, 0) || isAcross(extent, FULL_TURN_DEG) || isAcross(extent, -FULL_TURN_DEG));
    }

    private boolean isAcross(ZonePlaces other, double turnDeg) {
        return other.westDeg + turnDeg <= eastDeg + NEAR_DEG && other.eastDeg + turnDeg >= westDeg - NEAR_DEG;
    }
}
