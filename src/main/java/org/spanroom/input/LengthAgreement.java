package org.spanroom.input;

import java.util.Optional;
import org.spanroom.model.Line;

/**
 * Whether the recorded lengths of routes speak for longitude and latitude having been exchanged: a degree of longitude shrinks with
 * the cosine of the latitude, so that lines read at a wrong latitude come out too long or too short, each by its direction.
 *
 * <p>Lengths are taken on a sphere of the mean radius R = 6 371 008.8 m (IUGG, from memory), within 0.6 % of those on the ellipsoid. The
 * lines are treated as exchanged if most of them agree with their recorded lengths that way and few as they are; neither happens by
 * wrong units or slack, which move both equally. Where latitude and longitude are of about one size, the check has no result.
 */
final class LengthAgreement {
    private static final double M_PER_DEG = Math.toRadians(6_371_008.8);
    private static final double TOLERANCE_RATIO = 0.02;
    private static final int LEAST = 10;
    private static final int MOST = 1000;
    private static final double LARGEST_LATITUDE_DEG = 90;

    private int seen;
    private int agreeing;
    private int agreeingExchanged;

    /** Notes a route of one line that has a recorded length. */
    void see(Line line, double recordedM) {
        if (seen < MOST && recordedM > 0) {
            seen++;
            agreeing += agrees(lengthM(line, false), recordedM) ? 1 : 0;
            agreeingExchanged += agrees(lengthM(line, true), recordedM) ? 1 : 0;
        }
    }

    /** Finds what to report about the layer. */
    Optional<String> find() {
        boolean exchanged = seen >= LEAST && 2 * agreeingExchanged > seen && 4 * agreeing < seen;
        return exchanged
                ? Optional.of(
                        "most recorded lengths agree with the lines only with longitude and latitude swapped: the layer"
                                + " seems to have latitude first. " + OrdinateSuspicion.REMEDY)
                : Optional.empty();
    }

    private static boolean agrees(double drawnM, double recordedM) {
        return Math.abs(drawnM - recordedM) <= TOLERANCE_RATIO * recordedM;
    }

    private static double lengthM(Line line, boolean exchanged) {
        double degrees = 0;
        for (int vertex = 0; vertex + 1 < line.size(); vertex++) {
            double acrossDeg = Math.IEEEremainder(line.x(vertex + 1) - line.x(vertex), 360);
            double upDeg = line.y(vertex + 1) - line.y(vertex);
            double latDeg = exchanged ? line.x(vertex) : line.y(vertex);
            if (Math.abs(latDeg) > LARGEST_LATITUDE_DEG) {
                return Double.NaN;
            }
            double shrinkRatio = Math.cos(Math.toRadians(latDeg));
            degrees +=
                    exchanged ? Math.hypot(upDeg * shrinkRatio, acrossDeg) : Math.hypot(acrossDeg * shrinkRatio, upDeg);
        }
        return degrees * M_PER_DEG;
    }
}
