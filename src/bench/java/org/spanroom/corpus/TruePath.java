package org.spanroom.corpus;

import java.util.List;

/** Straights and arcs end to end, without a kink: where a known duct runs. */
final class TruePath {
    /** A place on the path, with its heading there. */
    record Pose(double xM, double yM, double headingRad) {}

    private final List<Piece> pieces;
    private final Pose[] starts;

    TruePath(Pose start, List<Piece> pieces) {
        this.pieces = List.copyOf(pieces);
        this.starts = new Pose[pieces.size() + 1];
        starts[0] = start;
        for (int piece = 0; piece < pieces.size(); piece++) {
            starts[piece + 1] = at(piece, 1);
        }
    }

    List<Piece> pieces() {
        return pieces;
    }

    /** Returns the place at a share of a piece's length. */
    Pose at(int piece, double share) {
        Pose start = starts[piece];
        Piece shape = pieces.get(piece);
        if (!shape.isArc()) {
            double lengthM = share * shape.straightM();
            return new Pose(
                    start.xM() + lengthM * Math.cos(start.headingRad()),
                    start.yM() + lengthM * Math.sin(start.headingRad()),
                    start.headingRad());
        }
        double radiusM = Math.copySign(shape.radiusM(), shape.turnRad());
        double heading = start.headingRad() + share * shape.turnRad();
        return new Pose(
                start.xM() + radiusM * (Math.sin(heading) - Math.sin(start.headingRad())),
                start.yM() - radiusM * (Math.cos(heading) - Math.cos(start.headingRad())),
                heading);
    }

    /** Returns where the straights before and after an arc would meet. */
    Pose meetingPoint(int piece) {
        Pose start = starts[piece];
        Piece arc = pieces.get(piece);
        double tangentM = arc.radiusM() * Math.tan(Math.abs(arc.turnRad()) / 2);
        return new Pose(
                start.xM() + tangentM * Math.cos(start.headingRad()),
                start.yM() + tangentM * Math.sin(start.headingRad()),
                start.headingRad());
    }
}
