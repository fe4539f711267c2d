package org.spanroom.bend;

import org.spanroom.model.bend.BendSettings;

/** What a drafter may draw straight instead of a part of an arc. */
final class Chord {
    /** More than this is not treated as one arc, since its straights no longer meet in front of it. */
    static final double MOST_JOINED_RAD = 2.8;

    private Chord() {}

    /**
     * Returns how far a straight between two corners to the same side stretches what is drawn as one chord of an arc: 1 where it is as
     * long, or departs from the arc by as much, as the settings say; 0 where it departs by less than the drawing tolerance.
     */
    static double stretch(double lengthM, double oneRad, double otherRad, BendSettings settings) {
        double cutM = cutM(lengthM, oneRad, otherRad);
        return cutM <= settings.drawingToleranceM()
                ? 0
                : Math.max(lengthM / settings.longestChordM(), cutM / settings.chordCutM());
    }

    /** Returns by how much a straight departs from the arc that touches the lines beyond both its corners. */
    static double cutM(double lengthM, double oneRad, double otherRad) {
        double one = Math.abs(oneRad);
        double other = Math.abs(otherRad);
        return one + other > MOST_JOINED_RAD
                ? Double.POSITIVE_INFINITY
                : 0.25 * lengthM * Math.sin(one) * Math.sin(other) / Math.sin(one + other);
    }
}
