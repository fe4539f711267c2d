package org.spanroom.input.proposal;

import java.util.Optional;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.input.layer.SourceGeometry;

/**
 * Where a line begins and ends, and how long it is drawn. Places are degrees on WGS 84, or ordinates of the layer where its reference system
 * is not known; then lengths on the ground are NaN.
 *
 * @param drawnM length on the ground, good to 0.1 %
 * @param plane length in the layer's own ordinates
 */
record LineEnds(Place first, Place last, double drawnM, double plane) {
    /** Semi-major axis and first eccentricity squared of WGS 84 (NIMA TR8350.2, from memory). */
    private static final double AXIS_M = 6_378_137;

    private static final double ECCENTRICITY_SQUARED = 0.006694379990;
    private static final double NEAR_M = 15;
    private static final double NEAR_RATIO = 0.2;

    /** A point in degrees, or in the layer's own ordinates. */
    record Place(double x, double y) {
        static final Place NOWHERE = new Place(Double.NaN, Double.NaN);
    }

    static Optional<LineEnds> of(SourceGeometry geometry, Optional<ReferenceSystem> crs) {
        if (geometry.kind() != SourceGeometry.Kind.LINES || geometry.parts().isEmpty()) {
            return Optional.empty();
        }
        int step = geometry.hasZ() ? 3 : 2;
        double drawnM = 0;
        double plane = 0;
        Place first = Place.NOWHERE;
        Place last = Place.NOWHERE;
        boolean begun = false;
        for (double[] part : geometry.parts()) {
            double[] line = inDegrees(part, step, crs);
            plane += length(part, step, false);
            drawnM += crs.isPresent() ? length(line, step, true) : Double.NaN;
            first = begun ? first : new Place(line[0], line[1]);
            begun = true;
            last = new Place(line[line.length - step], line[line.length - step + 1]);
        }
        return Optional.of(new LineEnds(first, last, drawnM, plane));
    }

    /** Returns the middle of a point's or outline's vertices. */
    static Place place(SourceGeometry geometry, Optional<ReferenceSystem> crs) {
        if (geometry.parts().isEmpty()) {
            return Place.NOWHERE;
        }
        int step = geometry.hasZ() ? 3 : 2;
        double[] part = geometry.parts().get(0);
        double x = 0;
        double y = 0;
        for (int at = 0; at < part.length; at += step) {
            x += part[at];
            y += part[at + 1];
        }
        int count = part.length / step;
        double[] middle = inDegrees(new double[] {x / count, y / count}, 2, crs);
        return new Place(middle[0], middle[1]);
    }

    private static double[] inDegrees(double[] part, int step, Optional<ReferenceSystem> crs) {
        if (crs.isEmpty()) {
            return part;
        }
        double[] degrees = part.clone();
        crs.get().toLonLat(degrees, step);
        return degrees;
    }

    private static double length(double[] line, int step, boolean degrees) {
        double length = 0;
        for (int at = 0; at + step < line.length; at += step) {
            length += degrees
                    ? metres(line[at], line[at + 1], line[at + step], line[at + step + 1])
                    : Math.hypot(line[at + step] - line[at], line[at + step + 1] - line[at + 1]);
        }
        return length;
    }

    /** Returns the length of a short step between two places on the ellipsoid, by the radii of curvature at its middle. */
    static double metres(double lonDeg, double latDeg, double otherLonDeg, double otherLatDeg) {
        double latRad = Math.toRadians((latDeg + otherLatDeg) / 2);
        double sin = Math.sin(latRad);
        double root = Math.sqrt(1 - ECCENTRICITY_SQUARED * sin * sin);
        double eastM = Math.toRadians(Math.IEEEremainder(otherLonDeg - lonDeg, 360)) * AXIS_M / root * Math.cos(latRad);
        double northM =
                Math.toRadians(otherLatDeg - latDeg) * AXIS_M * (1 - ECCENTRICITY_SQUARED) / (root * root * root);
        return Math.hypot(eastM, northM);
    }

    boolean isOnGround() {
        return !Double.isNaN(drawnM);
    }

    /** Returns whether a place is at one of the ends: within a few meters, or without meters by the line's own size. */
    boolean isNear(Place place) {
        double near = Math.min(distance(place, first), distance(place, last));
        return near <= (isOnGround() ? NEAR_M : NEAR_RATIO * plane);
    }

    boolean isNearerFirst(Place place) {
        return distance(place, first) < distance(place, last);
    }

    private double distance(Place a, Place b) {
        return isOnGround() ? metres(a.x, a.y, b.x, b.y) : Math.hypot(a.x - b.x, a.y - b.y);
    }
}
