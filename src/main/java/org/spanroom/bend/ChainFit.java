package org.spanroom.bend;

/**
 * Least-squares fit of a {@link TangentChain} to its vertices.
 *
 * <p>Method: Levenberg-Marquardt (Marquardt 1963, from memory) on distances at right angles to the path, that is, the most
 * likely path under equal normal noise. Ends when the sum of squares, in variances, falls by less than
 * {@value #SETTLED}: far below what noise decides.
 */
final class ChainFit {
    private static final int MOST_PASSES = 25;
    private static final int PATIENCE = 5;
    private static final double SETTLED = 1e-4;
    private static final double FARTHEST_TURN_RAD = 0.4;

    /**
     * What an arc must save over a sharp corner, in variances, where one vertex represents the bend: one unknown, two standard
     * deviations.
     */
    private static final double ROUND_PRICE = 4;

    /** Shares of the likely tangent length at which the radius is tried first. */
    private static final double[] TANGENT_SHARES = {0.1, 0.4, 0.7, 1, 1.5};

    private final TangentChain chain;
    private final double weight;
    private final double[] kept;
    private double squares;
    private double hopelessAbove = Double.POSITIVE_INFINITY;
    private double earlyCost = -1;

    private ChainFit(TangentChain chain, double sigmaM) {
        this.chain = chain;
        this.weight = 1 / (sigmaM * sigmaM);
        this.kept = new double[3 * chain.arcs + 2];
    }

    /** Fits all unknowns of a path, and returns it with what it costs. */
    static Fits.Fitted fit(TangentChain chain, double sigmaM) {
        return new ChainFit(chain, sigmaM).fitted();
    }

    /** Fits all unknowns, and gives up early where the sum will stay far above a limit. */
    static Fits.Fitted fitUnlessAbove(TangentChain chain, double sigmaM, double limit) {
        var fit = new ChainFit(chain, sigmaM);
        fit.hopelessAbove = hopelessAbove(limit);
        return fit.fitted();
    }

    /** Returns the cost from which a fit is given up early that is asked for only below a limit. */
    static double hopelessAbove(double limit) {
        return 5 * limit + 1000;
    }

    private Fits.Fitted fitted() {
        double cost = chooseRadii() ? run() : Double.POSITIVE_INFINITY;
        return new Fits.Fitted(chain, cost, earlyCost);
    }

    /**
     * Makes sharp corners of arcs that one vertex represents, where the fitted path gets little worse by that: such a vertex
     * marks where two straights meet, and a radius that nothing shows would only let the straights swing.
     */
    static void sharpenLone(TangentChain chain, double sigmaM) {
        var fit = new ChainFit(chain, sigmaM);
        fit.squares = chain.squares();
        fit.keep();
        double[] round = fit.kept.clone();
        int made = sharpenUnseen(chain, 2 * sigmaM);
        if (made > 0 && refine(chain, sigmaM) > fit.squares * fit.weight + made * ROUND_PRICE) {
            fit.restore(round);
            chain.settle();
        }
    }

    private static int sharpenUnseen(TangentChain chain, double slackM) {
        int made = 0;
        for (int arc = 0; arc < chain.arcs; arc++) {
            if (chain.isLone(arc) && chain.radiusM[arc] > 0 && ArcVertices.on(chain, arc, slackM) <= 2) {
                chain.sharpen(arc);
                chain.radiusM[arc] = 0;
                made++;
            }
        }
        return made;
    }

    /** Fits all unknowns from where they are. */
    static double refine(TangentChain chain, double sigmaM) {
        var fit = new ChainFit(chain, sigmaM);
        if (!chain.settle()) {
            return Double.POSITIVE_INFINITY;
        }
        fit.squares = chain.squares();
        return fit.run();
    }

    /** Fits the straights alone, which meet in corners. */
    static double fitCorners(TangentChain chain, double sigmaM) {
        chain.sharpen();
        return refine(chain, sigmaM);
    }

    /** Gives each arc the best of a few radii, the straights being as they are; none where a corner fits as well. */
    private boolean chooseRadii() {
        if (!chain.settle()) {
            return false;
        }
        squares = chain.squares();
        for (int arc = 0; arc < chain.arcs && squares * weight > SETTLED; arc++) {
            chooseRadius(arc);
        }
        squares = chain.squares();
        return true;
    }

    private void chooseRadius(int arc) {
        double tangentM = likelyTangentM(arc);
        double tangentRatio = Math.tan(chain.turnRad(arc) / 2);
        double least = chain.squaresAround(arc);
        double best = 0;
        for (double share : TANGENT_SHARES) {
            chain.setRadius(arc, share * tangentM / tangentRatio);
            double tried = chain.squaresAround(arc);
            if (tried < least) {
                least = tried;
                best = chain.radiusM[arc];
            }
        }
        chain.setRadius(arc, best);
    }

    private double likelyTangentM(int arc) {
        Trace trace = chain.trace;
        int first = chain.corners.first[arc];
        int last = chain.corners.last[arc];
        double before = first > chain.from ? trace.distanceM(first - 1, first) : 0;
        double after = last < chain.to ? trace.distanceM(last, last + 1) : 0;
        double withinM = trace.alongM[last] - trace.alongM[first];
        return 0.5 * withinM + 0.5 * Math.min(before, after) + 1 / Math.sqrt(weight);
    }

    private double run() {
        BandedSystem system = chain.system();
        double damping = 1e-3;
        for (int pass = 0; pass < MOST_PASSES && squares * weight > SETTLED; pass++) {
            chain.linearize(system);
            double before = squares;
            damping = step(system, damping);
            if (pass == PATIENCE) {
                earlyCost = squares * weight;
            }
            boolean hopeless = pass == PATIENCE && earlyCost > hopelessAbove;
            if (damping < 0 || hopeless || (before - squares) * weight < SETTLED) {
                break;
            }
        }
        return squares * weight;
    }

    /** Takes one step that lowers the sum; returns the next damping, or -1 where no step does. */
    private double step(BandedSystem system, double firstDamping) {
        double damping = firstDamping;
        keep();
        for (int attempt = 0; attempt < 8; attempt++) {
            if (solve(system, damping)) {
                move(system.solution());
                if (chain.settle()) {
                    double tried = chain.squares();
                    if (tried <= squares) {
                        squares = tried;
                        return damping / 8;
                    }
                }
                restore();
            }
            damping = 10 * damping;
        }
        chain.settle();
        return -1;
    }

    /** Solves for a step in which no sharp corner becomes sharper still: its radius stays and the others make up for it. */
    private boolean solve(BandedSystem system, double damping) {
        chain.trace.countVisits(chain.arcs);
        if (!system.solve(damping)) {
            return false;
        }
        boolean held = false;
        for (int arc = 0; arc < chain.arcs; arc++) {
            if (chain.radiusM[arc] == 0 && system.solution()[3 * arc + 2] < 0) {
                system.hold(3 * arc + 2);
                held = true;
            }
        }
        return !held || system.solve(damping);
    }

    private void keep() {
        for (int line = 0; line <= chain.arcs; line++) {
            kept[3 * line] = chain.phiRad[line];
            kept[3 * line + 1] = chain.rhoM[line];
            if (line < chain.arcs) {
                kept[3 * line + 2] = chain.radiusM[line];
            }
        }
    }

    private void restore() {
        restore(kept);
    }

    private void restore(double[] from) {
        for (int line = 0; line <= chain.arcs; line++) {
            chain.phiRad[line] = from[3 * line];
            chain.rhoM[line] = from[3 * line + 1];
            if (line < chain.arcs) {
                chain.radiusM[line] = from[3 * line + 2];
            }
        }
    }

    private void move(double[] by) {
        double scale = 1;
        for (int line = 0; line <= chain.arcs; line++) {
            scale = Math.min(scale, FARTHEST_TURN_RAD / Math.max(FARTHEST_TURN_RAD, Math.abs(by[3 * line])));
        }
        for (int line = 0; line <= chain.arcs; line++) {
            chain.phiRad[line] += scale * by[3 * line];
            chain.rhoM[line] += scale * by[3 * line + 1];
            if (line < chain.arcs) {
                chain.radiusM[line] = Math.max(0, chain.radiusM[line] + scale * by[3 * line + 2]);
            }
        }
    }
}
