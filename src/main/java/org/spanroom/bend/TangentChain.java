package org.spanroom.bend;

import java.util.Arrays;

/**
 * A smooth path of straights and arcs, each arc touching the straight before and the one after it, laid through a run of
 * vertices.
 *
 * <p>Unknowns, three for each straight and arc: direction and offset of a straight, radius of the arc that follows it. The
 * center of an arc follows from the two straights and the radius. Each vertex has one residual, its signed distance to the
 * left of the path; which piece it belongs to follows from its order and from the points of contact, again in each pass.
 * Since offset and radius enter every residual continuously over a point of contact, the sum of squares has no jumps there.
 *
 * <p>Valid for deflections between {@value #LEAST_TURN_RAD} and {@value #MOST_TURN_RAD} radians.
 */
final class TangentChain {
    static final double LEAST_TURN_RAD = 2e-4;
    static final double MOST_TURN_RAD = 3.14;

    /** Neighboring unknowns that one vertex touches, and that two vertices do. */
    static final int ARC_WIDTH = 5;

    private static final int PAIR_WIDTH = 8;

    final Trace trace;
    final Corners corners;
    final int from;
    final int to;
    final int arcs;
    final double[] phiRad;
    final double[] rhoM;
    final double[] radiusM;
    final double[] side;
    final double[] centerX;
    final double[] centerY;

    /** Where arc {@code j} leaves straight {@code j} and reaches straight {@code j + 1}, along these straights. */
    final double[] leavesM;

    final double[] reachesM;

    final Noise noise;
    final double[] originX;
    final double[] originY;
    final double[] cos;
    final double[] sin;
    final boolean[] sharp;

    /** Sine of the turn of each arc, positive to the left. */
    final double[] sinTurn;

    /** Lays straights between the groups of corners; radii begin at 0. */
    TangentChain(Trace trace, Noise noise, Corners corners, int from, int to) {
        this(corners.count(), trace, noise, corners, from, to);
        layStraights();
    }

    private TangentChain(int arcs, Trace trace, Noise noise, Corners corners, int from, int to) {
        this.trace = trace;
        this.noise = noise;
        this.corners = corners;
        this.from = from;
        this.to = to;
        this.arcs = arcs;
        this.phiRad = new double[arcs + 1];
        this.rhoM = new double[arcs + 1];
        this.originX = new double[arcs + 1];
        this.originY = new double[arcs + 1];
        this.cos = new double[arcs + 1];
        this.sin = new double[arcs + 1];
        this.radiusM = new double[arcs];
        this.sharp = new boolean[arcs];
        this.sinTurn = new double[arcs];
        this.side = new double[arcs];
        this.centerX = new double[arcs];
        this.centerY = new double[arcs];
        this.leavesM = new double[arcs];
        this.reachesM = new double[arcs];
    }

    /** Returns the same path, to be changed by itself. */
    TangentChain copy() {
        var chain = new TangentChain(arcs, trace, noise, corners, from, to);
        double[][] own = arrays();
        double[][] others = chain.arrays();
        for (int i = 0; i < own.length; i++) {
            System.arraycopy(own[i], 0, others[i], 0, own[i].length);
        }
        System.arraycopy(sharp, 0, chain.sharp, 0, arcs);
        return chain;
    }

    private double[][] arrays() {
        return new double[][] {
            phiRad, rhoM, radiusM, side, centerX, centerY, leavesM, reachesM, originX, originY, cos, sin, sinTurn
        };
    }

    /** Returns the same path as this one, of a single arc, with that arc made of two halves that may go their own ways. */
    TangentChain halved(Corners halves) {
        var chain = new TangentChain(2, trace, noise, halves, from, to);
        for (int line = 0; line <= 1; line++) {
            int target = 2 * line;
            chain.phiRad[target] = phiRad[line];
            chain.rhoM[target] = rhoM[line];
            chain.originX[target] = originX[line];
            chain.originY[target] = originY[line];
            chain.radiusM[line] = radiusM[0];
            chain.side[line] = side[0];
        }
        chain.phiRad[1] = 0.5 * (phiRad[0] + phiRad[1]);
        chain.originX[1] = centerX[0] + side[0] * radiusM[0] * Math.sin(chain.phiRad[1]);
        chain.originY[1] = centerY[0] - side[0] * radiusM[0] * Math.cos(chain.phiRad[1]);
        return chain;
    }

    private void layStraights() {
        for (int line = 0; line <= arcs; line++) {
            int start = line == 0 ? from : corners.last[line - 1];
            int end = line == arcs ? to : corners.first[line];
            Straight straight = Straight.through(trace, start, end);
            originX[line] = straight.midX;
            originY[line] = straight.midY;
            phiRad[line] = straight.directionRad;
            if (line > 0) {
                double turn = Straight.turnRad(phiRad[line - 1], phiRad[line]);
                side[line - 1] = turn < 0 ? -1 : 1;
                double valid = Math.min(0.999 * MOST_TURN_RAD, Math.max(1.001 * LEAST_TURN_RAD, Math.abs(turn)));
                phiRad[line] = phiRad[line - 1] + side[line - 1] * valid;
            }
        }
    }

    /** Lets no arc be round. */
    void sharpen() {
        Arrays.fill(sharp, true);
    }

    /** Lets an arc be no more than the corner that the straights make. */
    void sharpen(int arc) {
        sharp[arc] = true;
    }

    boolean isLone(int arc) {
        return corners.first[arc] == corners.last[arc];
    }

    /** Returns how many unknowns the vertices determine: a sharp corner has no radius to be found. */
    int unknowns() {
        int round = 0;
        for (int arc = 0; arc < arcs; arc++) {
            round += radiusM[arc] > 0 ? 1 : 0;
        }
        return 2 * arcs + 2 + round;
    }

    double turnRad(int arc) {
        return (phiRad[arc + 1] - phiRad[arc]) * side[arc];
    }

    int turnsBelow(double limitRad) {
        int count = 0;
        for (int arc = 0; arc < arcs; arc++) {
            count += turnRad(arc) < limitRad ? 1 : 0;
        }
        return count;
    }

    double tangentM(int arc) {
        return radiusM[arc] * Math.tan(turnRad(arc) / 2);
    }

    double normalX(int line) {
        return -sin[line];
    }

    double normalY(int line) {
        return cos[line];
    }

    double station(int line, double placeX, double placeY) {
        return cos[line] * (placeX - originX[line]) + sin[line] * (placeY - originY[line]);
    }

    private double offset(int line, double placeX, double placeY) {
        return cos[line] * (placeY - originY[line]) - sin[line] * (placeX - originX[line]) - rhoM[line];
    }

    private double offsetFromArc(int arc, double placeX, double placeY) {
        double awayX = placeX - centerX[arc];
        double awayY = placeY - centerY[arc];
        return side[arc] * (radiusM[arc] - Math.sqrt(awayX * awayX + awayY * awayY));
    }

    /** Finds centers and points of contact; returns false where the directions leave the valid range. */
    boolean settle() {
        trace.residuals().forget(this);
        for (int line = 0; line <= arcs; line++) {
            cos[line] = Math.cos(phiRad[line]);
            sin[line] = Math.sin(phiRad[line]);
        }
        for (int arc = 0; arc < arcs; arc++) {
            double turn = turnRad(arc);
            if (turn < LEAST_TURN_RAD || turn > MOST_TURN_RAD || radiusM[arc] < 0) {
                return false;
            }
            placeCenter(arc);
        }
        return true;
    }

    /** Gives an arc another radius, the straights being as they are. */
    void setRadius(int arc, double otherM) {
        trace.residuals().forget(this);
        radiusM[arc] = otherM;
        placeRound(arc);
    }

    private void placeCenter(int arc) {
        sinTurn[arc] = side[arc] * Math.sin(turnRad(arc));
        placeRound(arc);
    }

    /** Finds the center and the points of contact of an arc whose turn is known. */
    private void placeRound(int arc) {
        int next = arc + 1;
        // Both distances from the first straight's origin: large coordinates would cost digits where the turn is small.
        double shiftX = originX[next] - originX[arc];
        double shiftY = originY[next] - originY[arc];
        double fromFirst = rhoM[arc] + side[arc] * radiusM[arc];
        double fromSecond = rhoM[next] + side[arc] * radiusM[arc] - sin[next] * shiftX + cos[next] * shiftY;
        centerX[arc] = originX[arc] + (cos[next] * fromFirst - cos[arc] * fromSecond) / sinTurn[arc];
        centerY[arc] = originY[arc] + (sin[next] * fromFirst - sin[arc] * fromSecond) / sinTurn[arc];
        leavesM[arc] = station(arc, centerX[arc], centerY[arc]);
        reachesM[arc] = station(next, centerX[arc], centerY[arc]);
    }

    /** Returns the sum of squared residuals in square meters. */
    double squares() {
        return trace.residuals().squares(this);
    }

    /** Returns the part of the sum that one arc has a say in. */
    double squaresAround(int arc) {
        return trace.residuals().squares(this, windowStart(arc), windowEnd(arc), Math.max(0, arc - 1));
    }

    /** Returns each vertex's signed distance to the left of the path. */
    double[] offsetsM() {
        return trace.residuals().offsetsM(this);
    }

    /** Returns the largest distance of a vertex from the path. */
    double farthestM() {
        double farthestM = 0;
        for (double offM : offsetsM()) {
            farthestM = Math.max(farthestM, Math.abs(offM));
        }
        return farthestM;
    }

    /** Returns an empty system of normal equations that suits this path. */
    BandedSystem system() {
        return new BandedSystem(3 * arcs + 2, noise.wanders() ? PAIR_WIDTH : ARC_WIDTH);
    }

    /** Fills the normal equations in meters. */
    void linearize(BandedSystem system) {
        trace.residuals().linearize(this, system);
    }

    /**
     * Returns by how much the arc of a corner that one vertex represents misses that vertex along the line: the line turns at
     * the vertex, so the path must turn there too, or the straights beside it could swing about their other vertices. Of a
     * gentle turn counts only as much as its straights part over that length.
     */
    double missM(int arc, double placeX, double placeY) {
        double before = leavesM[arc] - station(arc, placeX, placeY);
        double after = station(arc + 1, placeX, placeY) - reachesM[arc];
        return Math.max(0, Math.max(before, after)) * sideways(arc);
    }

    /** Returns how far the two straights part over a length, as a share of it; all of it from 60 degrees. */
    double sideways(int arc) {
        return Math.min(1, 2 * Math.sin(turnRad(arc) / 2));
    }

    /** Returns the number of values that the vertices show: a corner of one vertex shows its place in both directions. */
    int seen() {
        int lone = 0;
        for (int arc = 0; arc < arcs; arc++) {
            lone += isLone(arc) ? 1 : 0;
        }
        return to - from + 1 + lone;
    }

    /** Returns the first vertex that may belong to an arc or its straights: where the arc before it ends. */
    int windowStart(int arc) {
        return arc == 0 ? from : corners.last[arc - 1];
    }

    int windowEnd(int arc) {
        return arc == arcs - 1 ? to : corners.first[arc + 1];
    }

    /** Returns the straight between an arc and the next; negative where they overlap. */
    double gapM(int arc) {
        return leavesM[arc + 1] - reachesM[arc];
    }

    double pieceOffset(int piece, double placeX, double placeY) {
        return piece % 2 == 0 ? offset(piece / 2, placeX, placeY) : offsetFromArc(piece / 2, placeX, placeY);
    }

    /** Returns the piece that a vertex belongs to: twice its straight, or twice its arc plus 1. */
    int pieceOf(int vertex, int group) {
        double placeX = trace.xM[vertex];
        double placeY = trace.yM[vertex];
        if (group < arcs && vertex >= corners.first[group]) {
            return withinGroup(group, placeX, placeY);
        }
        double along = station(group, placeX, placeY);
        boolean before = along < startsM(group);
        return before || along > endsM(group) ? besideStraight(group, vertex, before) : 2 * group;
    }

    /** Returns where a straight begins; halfway to its end where the arcs beside it overlap. */
    double startsM(int line) {
        double startM = line > 0 ? reachesM[line - 1] : Double.NEGATIVE_INFINITY;
        double endM = line < arcs ? leavesM[line] : Double.POSITIVE_INFINITY;
        return startM > endM ? 0.5 * (startM + endM) : startM;
    }

    double endsM(int line) {
        double endM = line < arcs ? leavesM[line] : Double.POSITIVE_INFINITY;
        return Math.max(startsM(line), endM);
    }

    /** Returns the piece of a vertex that is before or after its straight. */
    int besideStraight(int line, int vertex, boolean before) {
        double placeX = trace.xM[vertex];
        double placeY = trace.yM[vertex];
        if (before) {
            return station(line - 1, placeX, placeY) < leavesM[line - 1] ? 2 * line - 2 : 2 * line - 1;
        }
        return station(line + 1, placeX, placeY) > reachesM[line] ? 2 * line + 2 : 2 * line + 1;
    }

    int withinGroup(int arc, double placeX, double placeY) {
        boolean before = station(arc, placeX, placeY) < leavesM[arc];
        boolean after = station(arc + 1, placeX, placeY) > reachesM[arc];
        if (before && after) {
            boolean nearerFirst = Math.abs(offset(arc, placeX, placeY)) <= Math.abs(offset(arc + 1, placeX, placeY));
            return nearerFirst ? 2 * arc : 2 * arc + 2;
        }
        if (before) {
            return 2 * arc;
        }
        return after ? 2 * arc + 2 : 2 * arc + 1;
    }
}
