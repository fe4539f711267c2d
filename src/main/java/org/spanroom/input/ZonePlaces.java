package org.spanroom.input;

import java.util.List;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.Counted;
import org.spanroom.model.Surroundings;
import org.spanroom.model.network.Route;
import org.spanroom.model.permit.Zone;

/**
 * Looks for files of permit zones that can require nothing: without a usable zone, or with all zones far from the routes. A wrong
 * reference system and a filtered export look so, and without a word the permits would merely be missing.
 */
final class ZonePlaces {
    private ZonePlaces() {}

    /**
     * Reports the files.
     *
     * @param zones of all files, in their order
     */
    static void report(LayerFilesReader.Read<Zone> zones, List<Route> routes, FindingLog findings) {
        var places = new Surroundings();
        routes.forEach(route -> places.add(route.lonLat()));
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
                    && zones.items().subList(first, next).stream().noneMatch(zone -> isNear(zone, places))) {
                findings.add(Finding.of(
                        FindingCode.ZONES_FAR_FROM_ROUTES,
                        record.source(),
                        "",
                        "none of its " + Counted.of(next - first, "zone")
                                + " is " + Surroundings.NEAR + " of the routes; check its reference system, read as "
                                + file.crs().name() + ", and the order of its axes"));
            }
        }
    }

    private static boolean isNear(Zone zone, Surroundings places) {
        return zone.outlines().stream().map(Zone.Outline::shell).anyMatch(places::isNear);
    }
}
