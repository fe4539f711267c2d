package org.spanroom.bend;

/**
 * The straight that is nearest to a run of vertices: total least squares, the sum of squared distances at right angles
 * being the smaller eigenvalue of the run's scatter matrix (Pearson 1901, from memory).
 */
final class Straight {
    final double midX;
    final double midY;
    final double directionRad;
    final double squaresM2;

    private Straight(double midX, double midY, double directionRad, double squaresM2) {
        this.midX = midX;
        this.midY = midY;
        this.directionRad = directionRad;
        this.squaresM2 = squaresM2;
    }

    /** Returns how far a direction turns to become another, the short way round. */
    static double turnRad(double fromRad, double toRad) {
        double turn = toRad - fromRad;
        return Math.abs(turn) <= Math.PI ? turn : Math.IEEEremainder(turn, 2 * Math.PI);
    }

    /** Returns the straight through the vertices from one to another, both included, in the direction of travel. */
    static Straight through(Trace trace, int from, int to) {
        int count = to - from + 1;
        double sumX = 0;
        double sumY = 0;
        for (int vertex = from; vertex <= to; vertex++) {
            sumX += trace.xM[vertex];
            sumY += trace.yM[vertex];
        }
        double midX = sumX / count;
        double midY = sumY / count;
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (int vertex = from; vertex <= to; vertex++) {
            double dx = trace.xM[vertex] - midX;
            double dy = trace.yM[vertex] - midY;
            xx += dx * dx;
            xy += dx * dy;
            yy += dy * dy;
        }
        double directionRad = 0.5 * Math.atan2(2 * xy, xx - yy);
        double forward = (trace.xM[to] - trace.xM[from]) * Math.cos(directionRad)
                + (trace.yM[to] - trace.yM[from]) * Math.sin(directionRad);
        return new Straight(
                midX, midY, forward < 0 ? directionRad + Math.PI : directionRad, smallerEigenvalue(xx, xy, yy));
    }

    /** Returns the least sum of squared innovations that any straight leaves of a run, in square meters. */
    static double leastSquaresM2(Trace trace, Noise noise, int from, int to) {
        double sumX = 0;
        double sumY = 0;
        double sum = 0;
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (int vertex = from; vertex <= to; vertex++) {
            double gain = vertex == from || !noise.wanders() ? 1 : noise.gain[vertex];
            double memory = vertex == from || !noise.wanders() ? 0 : noise.memory[vertex];
            int last = Math.max(from, vertex - 1);
            double dx = gain * (trace.xM[vertex] - trace.xM[from] - memory * (trace.xM[last] - trace.xM[from]));
            double dy = gain * (trace.yM[vertex] - trace.yM[from] - memory * (trace.yM[last] - trace.yM[from]));
            double weight = gain * (1 - memory);
            sumX += weight * dx;
            sumY += weight * dy;
            sum += weight * weight;
            xx += dx * dx;
            xy += dx * dy;
            yy += dy * dy;
        }
        return smallerEigenvalue(xx - sumX * sumX / sum, xy - sumX * sumY / sum, yy - sumY * sumY / sum);
    }

    static double smallerEigenvalue(double xx, double xy, double yy) {
        double difference = xx - yy;
        return Math.max(0, 0.5 * (xx + yy - Math.sqrt(difference * difference + 4 * xy * xy)));
    }

    /** Returns the largest distance of a vertex of the run from this straight. */
    double farthestM(Trace trace, int from, int to) {
        double normalX = -Math.sin(directionRad);
        double normalY = Math.cos(directionRad);
        double farthestM = 0;
        for (int vertex = from; vertex <= to; vertex++) {
            double offM = normalX * (trace.xM[vertex] - midX) + normalY * (trace.yM[vertex] - midY);
            farthestM = Math.max(farthestM, Math.abs(offM));
        }
        return farthestM;
    }

    /** Returns whether the run goes back along this straight by more than a distance. */
    boolean foldsBack(Trace trace, int from, int to, double allowedM) {
        double forwardX = Math.cos(directionRad);
        double forwardY = Math.sin(directionRad);
        double farthestM = Double.NEGATIVE_INFINITY;
        for (int vertex = from; vertex <= to; vertex++) {
            double alongM = forwardX * (trace.xM[vertex] - midX) + forwardY * (trace.yM[vertex] - midY);
            farthestM = Math.max(farthestM, alongM);
            if (alongM < farthestM - allowedM) {
                return true;
            }
        }
        return false;
    }
}
