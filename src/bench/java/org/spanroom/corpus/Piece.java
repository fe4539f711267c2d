package org.spanroom.corpus;

/**
 * A straight or an arc of a true path.
 *
 * @param turnRad change of direction, positive to the left; 0 for a straight
 * @param radiusM radius of an arc; 0 for a straight
 * @param straightM length of a straight; 0 for an arc
 */
record Piece(double turnRad, double radiusM, double straightM) {
    static Piece straight(double lengthM) {
        return new Piece(0, 0, lengthM);
    }

    static Piece arc(double turnRad, double radiusM) {
        return new Piece(turnRad, radiusM, 0);
    }

    boolean isArc() {
        return radiusM > 0;
    }

    double lengthM() {
        return isArc() ? radiusM * Math.abs(turnRad) : straightM;
    }
}
