package org.spanroom.bend;

import org.spanroom.model.bend.BendSettings;

/** How far two corners are beyond what a drafter draws as one chord of an arc. */
final class ChordStretch {
    /** How far beyond a drafter's chord corners may be apart where enough vertices show one arc. */
    static final double MOST = 2;

    /** Deviations beyond which a vertex is not where an arc would have it. */
    private static final double SURE = 5;

    private final Trace trace;
    private final BendSettings settings;
    private final double sigmaM;

    ChordStretch(Fits fits, BendSettings settings) {
        this.trace = fits.trace;
        this.settings = settings;
        this.sigmaM = fits.noise.sigmaM;
    }

    /**
     * Returns how far two corners stretch what a drafter draws as one chord of an arc: 1 where the chord is as long, or
     * departs from the arc by as much, as the settings say; 0 where it departs by less than the drawing tolerance.
     */
    double of(int one, int other, double oneRad, double otherRad) {
        double chordM = trace.distanceM(one, other);
        if (oneRad * otherRad < 0) {
            double stretch = chordM / settings.longestChordM();
            return stretch > MOST ? Double.POSITIVE_INFINITY : stretch;
        }
        double stretch = Chord.stretch(chordM, oneRad, otherRad, settings);
        if (stretch <= MOST || Double.isInfinite(stretch)) {
            return stretch;
        }
        double cutM = Chord.cutM(chordM, oneRad, otherRad);
        return isSeenStraight(one, other, oneRad < 0 ? cutM : -cutM) ? Double.POSITIVE_INFINITY : stretch;
    }

    /** Returns whether a vertex between two lies where no arc through both can pass that bulges by so much to the left. */
    private boolean isSeenStraight(int one, int other, double bulgeM) {
        double dx = trace.xM[other] - trace.xM[one];
        double dy = trace.yM[other] - trace.yM[one];
        double chordM = Math.hypot(dx, dy);
        for (int vertex = one + 1; vertex < other; vertex++) {
            double px = (trace.xM[vertex] - trace.xM[one]) / chordM;
            double py = (trace.yM[vertex] - trace.yM[one]) / chordM;
            double share = (px * dx + py * dy) / chordM;
            double onArcM = 4 * share * (1 - share) * bulgeM;
            if (Math.abs(onArcM - (dx * py - dy * px)) > SURE * sigmaM) {
                return true;
            }
        }
        return false;
    }
}
