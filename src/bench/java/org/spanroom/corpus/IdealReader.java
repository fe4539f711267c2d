package org.spanroom.corpus;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.special.Erf;
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

    /** A trace on the diagonal, once that is scaled to 1, keeps what the vertices do not show finite. */
    private static final double TRACE = 1e-13;

    private static final int LENGTH = 0;
    private static final int TURN = 1;
    private static final int RADIUS = 2;
    private static final int SIDEWAYS = 3;
    private static final int HEADING = 4;

    private final DrawnSpan span;
    private final List<int[]> unknowns = new ArrayList<>();
    private final RealMatrix covariance;

    IdealReader(DrawnSpan span) {
        this.span = span;
        listUnknowns();
        this.covariance = inverse(information());
    }

    /** Returns the chance that the total deflection is right within a limit. */
    double chanceOfTotalWithin(double limitRad) {
        RealVector shares = MatrixUtils.createRealVector(
                unknowns.stream().mapToDouble(this::turnShare).toArray());
        return chance(limitRad, Math.sqrt(shares.dotProduct(covariance.operate(shares))));
    }

    /** Returns the chance that the radius of an arc is right within a share of itself. */
    double chanceOfRadiusWithin(int piece, double limitRatio) {
        for (int i = 0; i < unknowns.size(); i++) {
            if (unknowns.get(i)[0] == piece && unknowns.get(i)[1] == RADIUS) {
                double radiusM = span.path().pieces().get(piece).radiusM();
                return chance(limitRatio * radiusM, Math.sqrt(covariance.getEntry(i, i)));
            }
        }
        throw new IllegalArgumentException("piece must be an arc, was " + piece);
    }

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

    private double turnShare(int[] unknown) {
        return unknown[1] == TURN
                ? Math.signum(span.path().pieces().get(unknown[0]).turnRad())
                : 0;
    }

    private RealMatrix information() {
        var noise = new VertexNoise(span);
        RealMatrix slopes = MatrixUtils.createRealMatrix(unknowns.stream()
                .map(unknown -> noise.whitened(slopes(unknown)))
                .toArray(double[][]::new));
        return slopes.multiplyTransposed(slopes)
                .add(MatrixUtils.createRealIdentityMatrix(unknowns.size()).scalarMultiply(1 / (VAGUE * VAGUE)));
    }

    /** Returns the inverse of a symmetric positive matrix whose unknowns differ by orders of magnitude. */
    private static RealMatrix inverse(RealMatrix matrix) {
        double[] scale = new double[matrix.getRowDimension()];
        for (int i = 0; i < scale.length; i++) {
            scale[i] = 1 / Math.sqrt(matrix.getEntry(i, i));
        }
        RealMatrix diagonal = MatrixUtils.createRealDiagonalMatrix(scale);
        RealMatrix scaled = diagonal.multiply(matrix)
                .multiply(diagonal)
                .add(MatrixUtils.createRealIdentityMatrix(scale.length).scalarMultiply(TRACE));
        RealMatrix inverse = new LUDecomposition(scaled, 0).getSolver().getInverse();
        return diagonal.multiply(inverse).multiply(diagonal);
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
    private static double chance(double limit, double deviation) {
        return deviation <= 0 ? 1 : Erf.erf(limit / (deviation * Math.sqrt(2)));
    }
}
