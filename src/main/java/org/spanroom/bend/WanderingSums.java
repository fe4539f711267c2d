package org.spanroom.bend;

/** Sums over the innovations of a run of vertices, from which the squares about the best straight through them follow. */
final class WanderingSums {
    private double sumX;
    private double sumY;
    private double sum;
    private double xx;
    private double xy;
    private double yy;

    /** Adds an innovation, of which a share of the straight's own place stays. */
    void add(double nextX, double nextY, double weight) {
        sumX += weight * nextX;
        sumY += weight * nextY;
        sum += weight * weight;
        xx += nextX * nextX;
        xy += nextX * nextY;
        yy += nextY * nextY;
    }

    /** Returns the sum of squares about the best straight, where the run begins at a vertex that represents itself. */
    double squaresFrom(double dx, double dy) {
        double allX = sumX + dx;
        double allY = sumY + dy;
        double all = sum + 1;
        return Straight.smallerEigenvalue(
                xx + dx * dx - allX * allX / all, xy + dx * dy - allX * allY / all, yy + dy * dy - allY * allY / all);
    }
}
