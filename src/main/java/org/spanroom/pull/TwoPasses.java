package org.spanroom.pull;

import org.spanroom.model.pull.FrictionSet;
import org.spanroom.model.pull.PullForces;

/**
 * The two passes over one way: the cables' tension from the pulling end back to the anchor, then that of the whole body,
 * innerduct and cables, from the anchor to the pulling end.
 *
 * <p>The drag of the innerduct on its cables pulls them towards the pulling end, so their tension C grows towards the anchor,
 * where it is the hold force. In the sum S of both tensions that drag cancels: S obeys the equations of one body that weighs
 * as much as both. The pull is S less C at the pulling end.
 *
 * <p>Where a downhill would make a tension negative it is 0: the cable hangs slack, or the innerduct slides by itself.
 * Neighbors' drag and the rise of a plan bend count half before and half after the turn, all of it after where the simple
 * capstan form is requested.
 *
 * <p>An object serves many runs over one way, one at a time; its arrays are what the last run left.
 */
final class TwoPasses {
    /** Far beyond any machine: a line drawn absurdly ends here instead of at infinity. */
    private static final double LARGEST_TENSION_N = 1e12;

    private final PullSegments way;
    private final Passing passing;
    private final double[] cableN;
    private final double[] bodyN;

    /** What the way is walked with, beside its sections. */
    record Passing(double wanderRadPerM, boolean simpleCapstan, double slitterDragN) {}

    /** What moves in the pass under way: its friction, its pressing and its pulling weight, and what rides on it. */
    private double frictionRatio;

    private double pressNPerM;
    private double alongNPerM;
    private double ridingNPerM;

    TwoPasses(PullSegments way, Passing passing) {
        this.way = way;
        this.passing = passing;
        this.cableN = new double[way.count + 1];
        this.bodyN = new double[way.count + 1];
    }

    void run(Load load, FrictionSet friction) {
        cablePass(load, friction);
        bodyPass(load, friction);
    }

    /** Returns the cables' tension at a boundary, 0 being the anchor. */
    double cableN(int boundary) {
        return cableN[boundary];
    }

    /** Returns the sum of both tensions at a boundary. */
    double bodyN(int boundary) {
        return bodyN[boundary];
    }

    double holdN() {
        return cableN[0];
    }

    double pullN() {
        return bodyN[way.count] - cableN[way.count];
    }

    PullForces forces() {
        return new PullForces(pullN(), holdN());
    }

    private void cablePass(Load load, FrictionSet friction) {
        double tensionN = load.hasCable() ? passing.slitterDragN() : 0;
        cableN[way.count] = tensionN;
        frictionRatio = friction.jacketRatio();
        pressNPerM = load.cableNPerM();
        alongNPerM = load.cableNPerM();
        ridingNPerM = 0;
        for (int i = way.count - 1; i >= 0; i--) {
            tensionN = load.hasCable() ? within(0, after(i, -1, tensionN)) : 0;
            cableN[i] = tensionN;
        }
    }

    private void bodyPass(Load load, FrictionSet friction) {
        double tensionN = cableN[0];
        bodyN[0] = tensionN;
        frictionRatio = friction.ductRatio() * load.wedgeRatio();
        pressNPerM = load.pressNPerM();
        alongNPerM = load.bodyNPerM();
        ridingNPerM = friction.neighborRatio() * load.neighborNPerM();
        for (int i = 0; i < way.count; i++) {
            tensionN = within(cableN[i + 1], after(i, 1, tensionN));
            bodyN[i + 1] = tensionN;
        }
    }

    /** Returns the tension after a section that is walked towards the pulling end (1) or towards the anchor (-1). */
    private double after(int i, int towards, double tensionN) {
        if (way.isStraight(i)) {
            double sine = towards * way.sineRatio[i];
            double loadNPerM = PullFormulas.slopeLoad(frictionRatio, pressNPerM, alongNPerM, sine) + ridingNPerM;
            double growth = frictionRatio * passing.wanderRadPerM() * way.lengthM[i];
            return PullFormulas.afterStraight(tensionN, loadNPerM, way.lengthM[i], growth);
        }
        double besideN = way.lengthM[i] * ridingNPerM;
        if (way.vertical[i] != 0) {
            return afterVertical(i, towards, tensionN + besideN / 2) + besideN / 2;
        }
        besideN += way.lengthM[i] * towards * way.sineRatio[i] * alongNPerM;
        double turnRad = way.turnRad[i];
        if (passing.simpleCapstan()) {
            return PullFormulas.afterBend(tensionN, frictionRatio, turnRad) + besideN;
        }
        double pressN = pressNPerM * way.lengthM[i] / turnRad;
        double halfN = besideN / 2;
        return PullFormulas.afterLevelBend(Math.max(0, tensionN + halfN), frictionRatio, turnRad, pressN) + halfN;
    }

    private double afterVertical(int i, int towards, double tensionN) {
        double fromRad = towards > 0 ? way.fromSlopeRad[i] : -way.toSlopeRad[i];
        double toRad = towards > 0 ? way.toSlopeRad[i] : -way.fromSlopeRad[i];
        double radiusM = way.radiusM[i];
        return PullFormulas.afterVerticalBend(
                tensionN, frictionRatio, fromRad, toRad, radiusM * pressNPerM, radiusM * alongNPerM);
    }

    private static double within(double leastN, double tensionN) {
        return Math.min(LARGEST_TENSION_N, Math.max(leastN, tensionN));
    }
}
