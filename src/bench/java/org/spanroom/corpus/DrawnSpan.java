package org.spanroom.corpus;

import java.util.List;
import org.spanroom.model.Line;

/**
 * A span whose bends are known, as a draughtsman may have drawn it.
 *
 * @param drawn what the finder sees
 * @param vertices where each vertex of {@code drawn} truly belongs
 */
record DrawnSpan(TruePath path, Style style, Line drawn, List<Station> vertices, List<KnownBend> bends) {
    /** What sort of bends a span has. */
    enum Shape {
        /** Bends between straights of 40 to 300 m. */
        PLAIN(1),
        /** One bend is followed by its reverse after a straight of 0 to 10 m. */
        REVERSE(2),
        /** One bend consists of two arcs of different radius. */
        COMPOUND(3),
        /** Two opposite corners of 60 to 90 degrees, each one vertex, 2 to 40 m apart, with up to three vertices between. */
        OPPOSITE_CORNERS(4),
        /** One sweep of 200 to 400 m radius, drawn by chords of 5 to 30 m. */
        GENTLE_SWEEP(5),
        /** As plain, but the noise wanders: neighboring vertices are off to the same side, as a satellite receiver draws. */
        WANDERING(6),
        /** One reverse curve of small bends, 0 to 5 m apart, drawn without noise. */
        EXACT_REVERSE(7);

        /** What keeps the draws of one class apart from those of another. */
        final int number;

        Shape(int number) {
            this.number = number;
        }
    }

    /**
     * How a span is drawn.
     *
     * @param noiseM standard deviation of a vertex in each of the two directions
     * @param wanderM distance along the path over which the noise's correlation falls to 1/e; 0 where vertices are
     *     independent
     * @param chordM longest chord on arcs
     * @param spacingM mean distance of the vertices on straights
     * @param dropRatio share of the inner vertices that are lost
     * @param leastRadiusM lower end of the band of radii
     * @param mostRadiusM upper end of the band of radii
     */
    record Style(
            Shape shape,
            double noiseM,
            double wanderM,
            double chordM,
            double spacingM,
            double dropRatio,
            double leastRadiusM,
            double mostRadiusM) {}

    /**
     * Where a vertex truly belongs.
     *
     * @param onPath false for a vertex where two straights meet, off the arc that it stands for
     */
    record Station(int piece, double shareRatio, boolean onPath) {
        TruePath.Pose on(TruePath path) {
            return onPath ? path.at(piece, shareRatio) : path.meetingPoint(piece);
        }
    }

    /**
     * A bend as it truly is.
     *
     * @param turnRad positive to the left
     * @param firstPiece the path's piece where it begins
     * @param lastPiece the path's piece where it ends
     * @param tightestPiece the arc of the smallest radius
     * @param middleAlongM place of its middle along the drawn line
     * @param arcVertices how many drawn vertices lie on the arc of the smallest radius
     */
    record KnownBend(
            double turnRad,
            double radiusM,
            int firstPiece,
            int lastPiece,
            int tightestPiece,
            double middleAlongM,
            int arcVertices) {}

    double totalDeg() {
        return Math.toDegrees(
                bends.stream().mapToDouble(bend -> Math.abs(bend.turnRad())).sum());
    }
}
