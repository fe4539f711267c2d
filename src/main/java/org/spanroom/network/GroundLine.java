package org.spanroom.network;

import java.util.OptionalDouble;
import org.spanroom.model.Line;

/**
 * A span's line on the ground: the chain of its steps in meters from (0, 0), each with its true length ({@link GroundStep}).
 *
 * <p>Heights are those of the line, above its first vertex; or, where it has none and both vaults' are known, they go evenly from
 * one to the other. The same line gives the same numbers whenever it is requested.
 */
final class GroundLine {
    private GroundLine() {}

    static Line of(Line lonLat, OptionalDouble fromElevationM, OptionalDouble toElevationM) {
        var step = new GroundStep();
        boolean hasZ = lonLat.hasZ();
        boolean between = !hasZ && fromElevationM.isPresent() && toElevationM.isPresent();
        int dimension = hasZ || between ? 3 : 2;
        double[] packed = new double[lonLat.size() * dimension];
        double lonDeg = lonLat.x(0);
        double latDeg = lonLat.y(0);
        double alongM = 0;
        for (int vertex = 1; vertex < lonLat.size(); vertex++) {
            int at = vertex * dimension;
            double nextLonDeg = lonLat.x(vertex);
            double nextLatDeg = lonLat.y(vertex);
            alongM += step.measure(lonDeg, latDeg, nextLonDeg, nextLatDeg);
            packed[at] = packed[at - dimension] + step.eastM();
            packed[at + 1] = packed[at - dimension + 1] + step.northM();
            if (dimension == 3) {
                packed[at + 2] = hasZ ? lonLat.z(vertex) - lonLat.z(0) : alongM;
            }
            lonDeg = nextLonDeg;
            latDeg = nextLatDeg;
        }
        if (between) {
            double slope = (toElevationM.getAsDouble() - fromElevationM.getAsDouble()) / alongM;
            for (int at = 2; at < packed.length; at += 3) {
                packed[at] *= slope;
            }
        }
        return Line.wrap(packed, dimension == 3);
    }
}
