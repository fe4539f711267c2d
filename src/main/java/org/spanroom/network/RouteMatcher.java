package org.spanroom.network;

import java.util.List;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Counted;
import org.spanroom.model.Term;
import org.spanroom.model.ValueSource;
import org.spanroom.model.network.NetworkSettings;
import org.spanroom.model.network.Route;

/** Measures one route, finds where it comes by vaults, and reports what is wrong with it alone. For use by one thread. */
final class RouteMatcher {
    private final CuttingContext context;
    private final VaultCrossingFinder finder;
    private final GroundStep step = new GroundStep();

    RouteMatcher(CuttingContext context) {
        this.context = context;
        NetworkSettings settings = context.settings();
        finder = new VaultCrossingFinder(
                context.places(), context.sightings(), settings.snapToleranceM(), settings.gapWarningM());
    }

    /** Returns the route as a piece that is a chain by itself, as drawn; of length 0 where it has none. */
    ChainLink match(int number, Route route) {
        Track track = Track.of(route.lonLat(), step);
        if (track.size() < 2) {
            context.findings()
                    .route(
                            FindingCode.ZERO_LENGTH_PART,
                            route,
                            "all " + Counted.of(route.lonLat().size(), "vertex", "vertices")
                                    + " are at the same location",
                            track.lonDeg(0),
                            track.latDeg(0));
            return new ChainLink(number, route, track, List.of(), false, 0);
        }
        reportDuplicates(route, track);
        compareLength(route, track);
        List<VaultCrossing> passes = context.recorded().decide(route, track, finder.find(track));
        return new ChainLink(number, route, track, passes, false, 0);
    }

    /** Returns the route as a piece again, without looking for its vault crossings or reporting again. */
    ChainLink again(int number, Route route, List<VaultCrossing> passes, boolean reversed) {
        return new ChainLink(number, route, Track.of(route.lonLat(), step), passes, reversed, 0);
    }

    private void reportDuplicates(Route route, Track track) {
        int leftOut = route.lonLat().size() - track.size();
        if (leftOut > 0) {
            int first = track.firstLeftOut();
            context.findings()
                    .route(
                            FindingCode.DUPLICATE_VERTEX,
                            route,
                            leftOut == 1
                                    ? "vertex " + (first + 1) + " repeats the one before it"
                                    : leftOut + " vertices repeat the one before them; the first is vertex "
                                            + (first + 1),
                            route.lonLat().x(first),
                            route.lonLat().y(first));
        }
    }

    private void compareLength(Route route, Track track) {
        double recordedM = route.recordedLengthM().orElse(0);
        double differenceM = Math.abs(recordedM - track.lengthM());
        NetworkSettings settings = context.settings();
        if (recordedM > 0
                && differenceM > settings.lengthDifferenceM()
                && differenceM > settings.lengthDifferenceRatio() * track.lengthM()) {
            context.findings()
                    .field(
                            FindingCode.RECORDED_LENGTH_DIFFERS,
                            route,
                            Term.RECORDED_LENGTH.key(),
                            "recorded " + NetworkFindings.meters(recordedM) + ", drawn "
                                    + NetworkFindings.meters(track.lengthM()) + "; the "
                                    + (settings.lengths() == ValueSource.DRAWN ? "drawn" : "recorded")
                                    + " length was used",
                            track.lonDeg(0),
                            track.latDeg(0));
        }
    }
}
