package org.spanroom.corpus;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.corpus.DrawnSpan.Station;
import org.spanroom.corpus.TruePath.Pose;

/**
 * What the noise of drawing lets an observer see of a span: the offsets of its vertices at right angles to the path and, for
 * a vertex that marks where two straights meet, along the path too; made independent of each other and of unit variance.
 *
 * <p>Method: in each direction of the plane noise is a stationary Gauss-Markov sequence with the correlation
 * {@code exp(-d / wander)}; offsets are its projections. Whitening is forward substitution by the Cholesky factor.
 */
final class VertexNoise {
    /** A perfectly drawn span is read as if to a tenth of a millimeter. */
    private static final double LEAST_NOISE_M = 1e-4;

    /** An offset that is seen: which of the two entries of a vertex, in which direction, how far along the path. */
    private record Seen(int entry, double towardX, double towardY, double alongM) {
        double correlation(Seen other, double wanderM) {
            double same = towardX * other.towardX + towardY * other.towardY;
            return same * Math.exp(-Math.abs(alongM - other.alongM) / wanderM);
        }
    }

    private final double noiseM;
    private final List<Seen> seen;
    private final double[][] factor;

    VertexNoise(DrawnSpan span) {
        this.noiseM = Math.max(LEAST_NOISE_M, span.style().noiseM());
        this.seen = seen(span);
        this.factor = factor(seen, span.style().wanderM());
    }

    /** Returns how the seen offsets change, from how both entries of every vertex do. */
    double[] whitened(double[] entries) {
        double[] white = new double[seen.size()];
        for (int row = 0; row < white.length; row++) {
            double left = entries[seen.get(row).entry()] / noiseM;
            for (int column = 0; column < row && factor.length > 0; column++) {
                left -= factor[row][column] * white[column];
            }
            white[row] = factor.length > 0 ? left / factor[row][row] : left;
        }
        return white;
    }

    private static List<Seen> seen(DrawnSpan span) {
        List<Seen> seen = new ArrayList<>();
        List<Station> stations = span.vertices();
        double alongM = 0;
        Pose last = stations.get(0).on(span.path());
        for (int vertex = 0; vertex < stations.size(); vertex++) {
            Station station = stations.get(vertex);
            if (vertex > 0 && station.equals(stations.get(vertex - 1))) {
                continue;
            }
            Pose here = station.on(span.path());
            alongM += Math.hypot(here.xM() - last.xM(), here.yM() - last.yM());
            double cos = Math.cos(here.headingRad());
            double sin = Math.sin(here.headingRad());
            seen.add(new Seen(2 * vertex, -sin, cos, alongM));
            if (!station.onPath()) {
                seen.add(new Seen(2 * vertex + 1, cos, sin, alongM));
            }
            last = here;
        }
        return seen;
    }

    private static double[][] factor(List<Seen> seen, double wanderM) {
        if (wanderM == 0) {
            return new double[0][];
        }
        int size = seen.size();
        double[][] factor = new double[size][size];
        for (int row = 0; row < size; row++) {
            for (int column = 0; column <= row; column++) {
                // A trace on the diagonal keeps the factor of two vertices at one place finite.
                double left = seen.get(row).correlation(seen.get(column), wanderM) + (row == column ? 1e-9 : 0);
                for (int k = 0; k < column; k++) {
                    left -= factor[row][k] * factor[column][k];
                }
                factor[row][column] = row == column ? Math.sqrt(left) : left / factor[column][column];
            }
        }
        return factor;
    }
}
