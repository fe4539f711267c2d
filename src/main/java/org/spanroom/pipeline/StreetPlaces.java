package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.spanroom.model.Line;
import org.spanroom.model.network.Street;

/** Whether streets of the user's own lie where the spans are: a wrong reference system looks as if a backdrop were merely empty. */
final class StreetPlaces {
    /** About 5 km, as for permit zones. */
    private static final double NEAR_DEG = 0.05;

    private static final double FULL_TURN_DEG = 360;

    private double westDeg = Double.POSITIVE_INFINITY;
    private double southDeg = Double.POSITIVE_INFINITY;
    private double eastDeg = Double.NEGATIVE_INFINITY;
    private double northDeg = Double.NEGATIVE_INFINITY;

    private StreetPlaces() {}

    /**
     * Returns a sentence if no street is within about 5 km of the spans; empty where one is, and where no span has a line.
     *
     * @param file the layer of the streets
     * @param spans lines of the spans, where they are known
     */
    static Optional<String> farWords(Path file, List<Street> streets, List<Optional<Line>> spans) {
        var places = new StreetPlaces();
        spans.forEach(line -> line.ifPresent(places::add));
        boolean known = places.westDeg <= places.eastDeg;
        boolean near =
                streets.stream().flatMap(street -> street.lonLat().stream()).anyMatch(places::isNear);
        return near || !known || streets.isEmpty()
                ? Optional.empty()
                : Optional.of("No street of " + file.getFileName()
                        + " is within about 5 km of the spans, so the map shows none of them below; check the layer's"
                        + " reference system and the order of its axes.");
    }

    private void add(Line lonLat) {
        for (int i = 0; i < lonLat.size(); i++) {
            westDeg = Math.min(westDeg, lonLat.x(i));
            eastDeg = Math.max(eastDeg, lonLat.x(i));
            southDeg = Math.min(southDeg, lonLat.y(i));
            northDeg = Math.max(northDeg, lonLat.y(i));
        }
    }

    private boolean isNear(Line line) {
        var extent = new StreetPlaces();
        extent.add(line);
        boolean up = extent.southDeg <= northDeg + NEAR_DEG && extent.northDeg >= southDeg - NEAR_DEG;
        return up && (isAcross(extent, 0) || isAcross(extent, FULL_TURN_DEG) || isAcross(extent, -FULL_TURN_DEG));
    }

    private boolean isAcross(StreetPlaces other, double turnDeg) {
        return other.westDeg + turnDeg <= eastDeg + NEAR_DEG && other.eastDeg + turnDeg >= westDeg - NEAR_DEG;
    }
}
