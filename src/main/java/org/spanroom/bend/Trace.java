package org.spanroom.bend;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import org.spanroom.model.Line;

/** The vertices of a drawn line without its duplicates, each with its distance along the line. */
final class Trace {
    /** Vertices closer than this to their predecessor repeat it: far below what anyone can draw. */
    private static final double SAME_PLACE_M = 0.001;

    final double[] xM;
    final double[] yM;
    final double[] alongM;
    final double lengthM;

    private @Nullable Residuals residuals;

    /** How often a vertex was looked at, or the unknowns of a bend were solved for: what the work on a line is measured by. */
    private long visits;

    private Trace(double[] xM, double[] yM, double[] alongM, double lengthM) {
        this.xM = xM;
        this.yM = yM;
        this.alongM = alongM;
        this.lengthM = lengthM;
    }

    static Trace of(Line ground) {
        int size = ground.size();
        double[] xM = new double[size];
        double[] yM = new double[size];
        double[] alongM = new double[size];
        double traveledM = 0;
        int kept = 0;
        for (int vertex = 0; vertex < size; vertex++) {
            double nextX = ground.x(vertex);
            double nextY = ground.y(vertex);
            if (vertex > 0) {
                traveledM += ground.stepLength(vertex - 1);
            }
            if (kept == 0 || Math.hypot(nextX - xM[kept - 1], nextY - yM[kept - 1]) > SAME_PLACE_M) {
                xM[kept] = nextX;
                yM[kept] = nextY;
                alongM[kept++] = traveledM;
            }
        }
        return kept == size
                ? new Trace(xM, yM, alongM, traveledM)
                : new Trace(Arrays.copyOf(xM, kept), Arrays.copyOf(yM, kept), Arrays.copyOf(alongM, kept), traveledM);
    }

    int size() {
        return xM.length;
    }

    /** Returns a stretch of the line by itself, from one vertex to the one before another; distances stay those of the whole. */
    Trace stretch(int from, int to) {
        return new Trace(
                Arrays.copyOfRange(xM, from, to),
                Arrays.copyOfRange(yM, from, to),
                Arrays.copyOfRange(alongM, from, to),
                alongM[to - 1] - alongM[from]);
    }

    void countVisits(long more) {
        visits += more;
    }

    long visits() {
        return visits;
    }

    /** Returns where residuals of these vertices are found. */
    Residuals residuals() {
        Residuals known = residuals;
        if (known == null) {
            known = new Residuals(this);
            residuals = known;
        }
        return known;
    }

    double distanceM(int one, int other) {
        return Math.hypot(xM[other] - xM[one], yM[other] - yM[one]);
    }

    /** Returns whether every vertex between two is within a distance of the straight through those two. */
    boolean isStraight(int from, int to, double withinM) {
        double dx = xM[to] - xM[from];
        double dy = yM[to] - yM[from];
        double chordM = Math.hypot(dx, dy);
        if (chordM <= withinM) {
            return false;
        }
        for (int vertex = from + 1; vertex < to; vertex++) {
            double px = xM[vertex] - xM[from];
            double py = yM[vertex] - yM[from];
            double forwardM = (px * dx + py * dy) / chordM;
            if (Math.abs(dx * py - dy * px) > withinM * chordM || forwardM < -withinM || forwardM > chordM + withinM) {
                return false;
            }
        }
        return true;
    }

    /** Returns the distance along the line of the point nearest to a place, sought between two vertices. */
    double nearestAlongM(double placeX, double placeY, int from, int to) {
        double bestAlongM = alongM[from];
        double bestSquare = Double.POSITIVE_INFINITY;
        for (int vertex = from; vertex < to; vertex++) {
            double dx = xM[vertex + 1] - xM[vertex];
            double dy = yM[vertex + 1] - yM[vertex];
            double px = placeX - xM[vertex];
            double py = placeY - yM[vertex];
            double share = Math.min(1, Math.max(0, (px * dx + py * dy) / (dx * dx + dy * dy)));
            double offX = px - share * dx;
            double offY = py - share * dy;
            double square = offX * offX + offY * offY;
            if (square < bestSquare) {
                bestSquare = square;
                bestAlongM = alongM[vertex] + share * (alongM[vertex + 1] - alongM[vertex]);
            }
        }
        return bestAlongM;
    }
}
