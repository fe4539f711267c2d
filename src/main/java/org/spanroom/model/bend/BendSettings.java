package org.spanroom.model.bend;

import org.spanroom.model.Check;

/**
 * Numbers by which bends are distinguished from the noise of drawing.
 *
 * @param drawingToleranceM largest distance off the true line at which a vertex is treated as drawn right; turning that moves
 *     the line by less is no bend, unless the line itself shows that it is drawn more accurately
 * @param minimumDeflectionDeg smallest turn that is reported
 * @param sweepRadiusLargeBoreM radius assumed for a bend whose line shows none, in bores from {@code largeBoreFromMm}
 * @param sweepRadiusSmallBoreM the same in smaller bores
 * @param largeBoreFromMm smallest inside diameter of the ducts that trade calls 3 inch
 * @param endStubM a turn within this distance of a span's end belongs to the vault, not to the span
 * @param joinStraightM turning to the same side with a shorter straight between is one bend
 * @param longestChordM longest chord by which a drafter cuts off a bend noticeably
 * @param chordCutM largest distance by which such a chord may depart from the bend
 */
public record BendSettings(
        double drawingToleranceM,
        double minimumDeflectionDeg,
        double sweepRadiusLargeBoreM,
        double sweepRadiusSmallBoreM,
        double largeBoreFromMm,
        double endStubM,
        double joinStraightM,
        double longestChordM,
        double chordCutM) {
    public BendSettings {
        Check.positive("drawingToleranceM", drawingToleranceM);
        Check.within("minimumDeflectionDeg", minimumDeflectionDeg, 0.5, 45);
        Check.positive("sweepRadiusLargeBoreM", sweepRadiusLargeBoreM);
        Check.positive("sweepRadiusSmallBoreM", sweepRadiusSmallBoreM);
        Check.positive("largeBoreFromMm", largeBoreFromMm);
        Check.notNegative("endStubM", endStubM);
        Check.notNegative("joinStraightM", joinStraightM);
        Check.notNegative("longestChordM", longestChordM);
        Check.notNegative("chordCutM", chordCutM);
    }

    /** Returns the radius that is assumed for a bend whose line shows none. */
    public double sweepRadiusM(double insideDiameterMm) {
        return insideDiameterMm >= largeBoreFromMm ? sweepRadiusLargeBoreM : sweepRadiusSmallBoreM;
    }
}
