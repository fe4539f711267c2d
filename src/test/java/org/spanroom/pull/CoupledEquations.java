package org.spanroom.pull;

import java.util.List;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.spanroom.model.pull.FrictionSet;

/**
 * The two tensions of an innerduct that is pulled off its cable, integrated step by step as the balance of forces of each
 * says: the reference that the closed forms are checked against. Shares no formula with them.
 */
final class CoupledEquations {
    private final List<Piece> way;
    private final Load load;
    private final FrictionSet friction;
    private final double wanderRadPerM;
    private final boolean dragAlongBends;

    /**
     * A stretch of the way, from the anchor on: straight, level bend, or vertical bend.
     *
     * @param turnRad turn in plan; 0 for none
     * @param fromSlopeRad slope at its beginning; at its end {@code toSlopeRad}
     */
    record Piece(double lengthM, double turnRad, double fromSlopeRad, double toSlopeRad) {
        double slopeRad(double atM) {
            return fromSlopeRad + (toSlopeRad - fromSlopeRad) * atM / lengthM;
        }

        boolean isVertical() {
            return fromSlopeRad != toSlopeRad;
        }

        boolean isBend() {
            return turnRad > 0 || isVertical();
        }
    }

    /** @param dragAlongBends true to spread neighbors' drag over a bend; false for half of it at either end */
    CoupledEquations(List<Piece> way, Load load, FrictionSet friction, double wanderRadPerM, boolean dragAlongBends) {
        this.way = way;
        this.load = load;
        this.friction = friction;
        this.wanderRadPerM = wanderRadPerM;
        this.dragAlongBends = dragAlongBends;
    }

    /** Returns the hold force: the cable alone, from the pulling end back to the anchor. */
    double holdN(double slitterDragN) {
        double cableN = slitterDragN;
        for (int i = way.size() - 1; i >= 0; i--) {
            Piece piece = way.get(i);
            double[] end = integrate(new double[] {cableN}, piece.lengthM(), (atM, tension) ->
                    new double[] {-cableSlope(piece, piece.lengthM() - atM, tension[0])});
            cableN = end[0];
        }
        return cableN;
    }

    /** Returns cable and innerduct tension at the pulling end, both walked together from the anchor. */
    double[] endN(double holdN) {
        double[] state = {holdN, 0};
        for (Piece piece : way) {
            double besideN = piece.isBend() && !dragAlongBends ? dragNPerM() * piece.lengthM() / 2 : 0;
            state[1] += besideN;
            state = integrate(state, piece.lengthM(), (atM, tension) -> {
                double cable = cableSlope(piece, atM, tension[0]);
                return new double[] {cable, innerductSlope(piece, atM, tension) - cable};
            });
            state[1] += besideN;
        }
        return state;
    }

    private double dragNPerM() {
        return friction.neighborRatio() * load.neighborNPerM();
    }

    /** Change of cable tension per meter towards the pulling end: the innerduct drags it there, so it falls. */
    private double cableSlope(Piece piece, double atM, double cableN) {
        double slope = piece.slopeRad(atM);
        return -friction.jacketRatio() * normal(piece, slope, cableN, load.cableNPerM())
                + load.cableNPerM() * Math.sin(slope);
    }

    /** Change of the sum of both tensions per meter towards the pulling end. */
    private double innerductSlope(Piece piece, double atM, double[] tension) {
        double slope = piece.slopeRad(atM);
        double onWall = normal(piece, slope, tension[0] + tension[1], load.bodyNPerM() + load.neighborNPerM());
        double riding = piece.isBend() && !dragAlongBends ? 0 : dragNPerM();
        return friction.ductRatio() * load.wedgeRatio() * onWall + load.bodyNPerM() * Math.sin(slope) + riding;
    }

    private double normal(Piece piece, double slope, double tensionN, double weightNPerM) {
        if (piece.turnRad() > 0) {
            return Math.hypot(tensionN * piece.turnRad() / piece.lengthM(), weightNPerM);
        }
        if (piece.isVertical()) {
            double upward = (piece.fromSlopeRad() - piece.toSlopeRad()) / piece.lengthM();
            return Math.abs(tensionN * upward + weightNPerM * Math.cos(slope));
        }
        return weightNPerM * Math.cos(slope) + wanderRadPerM * tensionN;
    }

    private interface Slope {
        double[] at(double s, double[] state);
    }

    private static double[] integrate(double[] start, double lengthM, Slope slope) {
        var integrator = new DormandPrince853Integrator(1e-12, lengthM, 1e-11, 1e-11);
        OrdinaryDifferentialEquation equation = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return start.length;
            }

            @Override
            public double[] computeDerivatives(double s, double[] state) {
                return slope.at(s, state);
            }
        };
        return integrator.integrate(equation, new ODEState(0, start), lengthM).getPrimaryState();
    }
}
