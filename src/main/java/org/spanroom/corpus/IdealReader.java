package org.spanroom.corpus;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.corpus.DrawnSpan.Station;
import org.spanroom.corpus.TruePath.Pose;

/**
 * What a reader could know of a drawn span at best, who was told the number of bends, the noise, and the piece that each
 * vertex belongs to, and had to find directions, places and radii.
 *
 * <p>Method: the Cramer-Rao bound (Rao 1945, from memory): the inverse of the Fisher information of all vertices' distances at
 * right angles to the path is the least covariance of an unbiased estimate. A chance to lie within a limit follows from
 * the normal distribution. Validity: small noise; where noise is as large as the arc itself the bound is optimistic.
 */
final class IdealReader {
    private static final double STEP_RATIO = 1e-5;

    /** Knows lengths to this much beforehand, so that what no vertex shows stays finite. */
    private static final double VAGUE = 1e3;

    private final DrawnSpan span;
    private final List<int[]> unknowns = new ArrayList<>();
    private final double[][] covariance;

    IdealReader(DrawnSpan span) {
        this.span = span;
        listUnknowns();
        this.covariance = SymmetricMatrix.inverse(information());
    }

    /** Returns the chance that the total deflection is right within a limit. */
    double chanceOfTotalWithin(double limitRad) {
        double variance = 0;
        for (int i = 0; i < unknowns.size(); i++) {
            for (int j = 0; j < unknowns.size(); j++) {
                variance += turnShare(i) * covariance[i][j] * turnShare(j);
            }
        }
        return chance(limitRad, Math.sqrt(variance));
    }

    /** Returns the chance that the radius of an arc is right within a share of itself. */
    double chanceOfRadiusWithin(int piece, double limitRatio) {
        for (int i = 0; i < unknowns.size(); i++) {
            if (unknowns.get(i)[0] == piece && unknowns.get(i)[1] == RADIUS) {
                double radiusM = span.path().pieces().get(piece).radiusM();
                return chance(limitRatio * radiusM, Math.sqrt(covariance[i][i]));
            }
        }
        throw new IllegalArgumentException("piece must be an arc, was " + piece);
    }

    private static final int LENGTH = 0;
    private static final int TURN = 1;
    private static final int RADIUS = 2;
    private static final int SIDEWAYS = 3;
    private static final int HEADING = 4;

    private void listUnknowns() {
        unknowns.add(new int[] {-1, SIDEWAYS});
        unknowns.add(new int[] {-1, HEADING});
        List<Piece> pieces = span.path().pieces();
        for (int piece = 0; piece < pieces.size() - 1; piece++) {
            if (pieces.get(piece).isArc()) {
                unknowns.add(new int[] {piece, TURN});
                unknowns.add(new int[] {piece, RADIUS});
            } else {
                unknowns.add(new int[] {piece, LENGTH});
            }
        }
    }

    private double turnShare(int unknown) {
        int[] which = unknowns.get(unknown);
        return which[1] == TURN ? Math.signum(span.path().pieces().get(which[0]).turnRad()) : 0;
    }

    private double[][] information() {
        int count = unknowns.size();
        double[][] information = new double[count][count];
        double[][] slopes = new double[count][];
        for (int i = 0; i < count; i++) {
            slopes[i] = slopes(unknowns.get(i));
            information[i][i] = 1 / (VAGUE * VAGUE);
        }
        // A perfectly drawn span is read as if to a tenth of a millimetre.
        double weight = 1 / Math.pow(Math.max(1e-4, span.style().noiseM()), 2);
        for (int i = 0; i < count; i++) {
            for (int j = 0; j < count; j++) {
                for (int entry = 0; entry < slopes[i].length; entry++) {
                    information[i][j] += weight * slopes[i][entry] * slopes[j][entry];
                }
            }
        }
        return information;
    }

    /**
     * Returns how far each vertex's place moves for a change of one unknown: at right angles to the path for a vertex on it;
     * in both directions for a vertex that marks where two straights meet. Two entries for each vertex.
     */
    private double[] slopes(int[] unknown) {
        TruePath more = changed(unknown, STEP_RATIO);
        TruePath less = changed(unknown, -STEP_RATIO);
        double[] slopes = new double[2 * span.vertices().size()];
        for (int vertex = 0; vertex < span.vertices().size(); vertex++) {
            Station station = span.vertices().get(vertex);
            if (vertex > 0 && station.equals(span.vertices().get(vertex - 1))) {
                continue;
            }
            Pose here = station.on(span.path());
            Pose ahead = station.on(more);
            Pose behind = station.on(less);
            double slopeX = (ahead.xM() - behind.xM()) / (2 * STEP_RATIO);
            double slopeY = (ahead.yM() - behind.yM()) / (2 * STEP_RATIO);
            double cos = Math.cos(here.headingRad());
            double sin = Math.sin(here.headingRad());
            slopes[2 * vertex] = slopeY * cos - slopeX * sin;
            slopes[2 * vertex + 1] = station.onPath() ? 0 : slopeX * cos + slopeY * sin;
        }
        return slopes;
    }

    private TruePath changed(int[] unknown, double step) {
        Pose start = span.path().at(0, 0);
        List<Piece> pieces = new ArrayList<>(span.path().pieces());
        if (unknown[1] == SIDEWAYS) {
            start = new Pose(
                    start.xM() - step * Math.sin(start.headingRad()),
                    start.yM() + step * Math.cos(start.headingRad()),
                    start.headingRad());
        } else if (unknown[1] == HEADING) {
            start = new Pose(start.xM(), start.yM(), start.headingRad() + step);
        } else {
            Piece old = pieces.get(unknown[0]);
            pieces.set(
                    unknown[0],
                    new Piece(
                            old.turnRad() + (unknown[1] == TURN ? step : 0),
                            old.radiusM() + (unknown[1] == RADIUS ? step : 0),
                            old.straightM() + (unknown[1] == LENGTH ? step : 0)));
        }
        return new TruePath(start, pieces);
    }

    /** Returns the chance that a normal deviate of a standard deviation lies within a limit. */
    static double chance(double limit, double deviation) {
        return deviation <= 0 ? 1 : errorFunction(limit / (deviation * Math.sqrt(2)));
    }

    /** Error function for x of 0 or more, after Abramowitz and Stegun 7.1.26 (from memory); error below 1.5e-7. */
    static double errorFunction(double x) {
        double t = 1 / (1 + 0.3275911 * x);
        double series =
                t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
        return 1 - series * Math.exp(-x * x);
    }
}
