package org.spanroom.bend;

import org.spanroom.model.bend.BendSettings;

/**
 * What the vertices around one bend say of its radius.
 *
 * <p>Method: comparison of fits to the same vertices. A radius is treated as measured where three vertices are on the arc and
 * the arc costs less than a corner by a fixed price. A curve is treated as compound where two arcs cost less than one by
 * another, each having three vertices of its own. Vertices closer together than the drawing tolerance are treated as one: what they show
 * of a radius may be how the corner was drawn.
 */
final class RadiusReading {
    /** What an arc must save over a corner, in variances, for its radius to be treated as measured. */
    private static final double RADIUS_PRICE = 4;

    /** The same where as many vertices are on the arc as make a drawn arc of it. */
    private static final double DRAWN_ARC_PRICE = 1.5;

    private static final int DRAWN_ARC_VERTICES = 5;

    /** What two arcs must save over one: two unknowns more. */
    private static final double COMPOUND_PRICE = 12;

    private static final int FEWEST_ARC_VERTICES = 3;

    /** No duct is bent tighter; a smaller radius is a corner's rounding by the fit. */
    private static final double LEAST_RADIUS_M = 0.1;

    private final Trace trace;
    private final double sigmaM;
    private final boolean measured;
    private final double smallestRadiusM;

    RadiusReading(TangentChain chain, int arc, Fits fits, BendSettings settings) {
        this.trace = chain.trace;
        this.sigmaM = fits.noise.sigmaM;
        int from = chain.windowStart(arc);
        int to = chain.windowEnd(arc);
        double slackM = Math.max(2 * sigmaM, 0.02 * chain.radiusM[arc]);
        int onArc = chain.radiusM[arc] > LEAST_RADIUS_M ? ArcVertices.on(chain, arc, slackM) : 0;
        if (onArc < FEWEST_ARC_VERTICES
                || ArcVertices.witnessesOn(chain, arc, slackM, settings.drawingToleranceM()) < FEWEST_ARC_VERTICES) {
            this.measured = false;
            this.smallestRadiusM = chain.radiusM[arc];
            return;
        }
        var part = new Fits.Part(chain.corners.slice(arc, arc + 1), from, to);
        Fits.Fitted round = fits.fit(part);
        double corner = ChainFit.fitCorners(fits.unfitted(part), sigmaM);
        this.measured = round.chain().radiusM[0] > LEAST_RADIUS_M
                && corner - round.cost() > (onArc < DRAWN_ARC_VERTICES ? RADIUS_PRICE : DRAWN_ARC_PRICE);
        this.smallestRadiusM = measured ? readSmallest(round.chain(), round.cost()) : chain.radiusM[arc];
    }

    boolean isMeasured() {
        return measured;
    }

    double smallestRadiusM() {
        return smallestRadiusM;
    }

    private double readSmallest(TangentChain round, double costOfOne) {
        int first = -1;
        int last = -1;
        for (int vertex = round.from; vertex <= round.to; vertex++) {
            boolean on = round.station(0, trace.xM[vertex], trace.yM[vertex]) > round.leavesM[0]
                    && round.station(1, trace.xM[vertex], trace.yM[vertex]) < round.reachesM[0];
            if (on) {
                first = first < 0 ? vertex : first;
                last = vertex;
            }
        }
        if (first < 0 || last - first + 1 < 2 * FEWEST_ARC_VERTICES || costOfOne < COMPOUND_PRICE) {
            return round.radiusM[0];
        }
        int quarter = (last - first) / 4;
        int[] at = {first + quarter, last - quarter};
        TangentChain two = round.halved(new Corners(at, at.clone()));
        double costOfTwo = ChainFit.refine(two, sigmaM);
        boolean compound = costOfOne - costOfTwo > COMPOUND_PRICE
                && Math.min(two.radiusM[0], two.radiusM[1]) > LEAST_RADIUS_M
                && two.gapM(0) > -0.2 * (two.tangentM(0) + two.tangentM(1))
                && ArcVertices.on(two, 0, 0) >= FEWEST_ARC_VERTICES
                && ArcVertices.on(two, 1, 0) >= FEWEST_ARC_VERTICES;
        return compound ? Math.min(two.radiusM[0], two.radiusM[1]) : round.radiusM[0];
    }
}
