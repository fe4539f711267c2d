package org.spanroom.bend;

import java.util.Arrays;

/**
 * Cuts a drawn line into straight pieces that meet at vertices.
 *
 * <p>Method: dynamic programming over the last vertex of a piece; the cost of a piece is its sum of squared distances from
 * the best straight over the noise's variance, plus a price for the piece, so that a corner must pay for itself. A piece is
 * given up once it bends beyond doubt, and has at most {@value #LONGEST_PIECE} vertices, so that the cost of a line grows
 * in proportion to its vertices; a longer straight is cut, and the needless corner is dropped later.
 */
final class CornerSearch {
    private static final int LONGEST_PIECE = 400;

    /** Excess of squares, in variances, from which no longer piece can pay. */
    private static final double HOPELESS = 150;

    /** What a squared distance and a piece cost, and how far a straight piece may go back on itself. */
    private record Terms(double weight, double price, double foldM) {}

    private CornerSearch() {}

    /** Returns the vertices where pieces meet, in order, with the line's first and last vertex. */
    static int[] cut(Trace trace, Noise noise, double price, double foldM) {
        int size = trace.size();
        double weight = 1 / noise.varianceM2();
        double[] cost = new double[size];
        int[] previous = new int[size];
        var terms = new Terms(weight, price, foldM);
        for (int end = 1; end < size; end++) {
            if (noise.wanders()) {
                extendWandering(trace, noise, end, terms, cost, previous);
            } else {
                extendBackwards(trace, end, terms, cost, previous);
            }
        }
        return backtrack(previous);
    }

    private static void extendBackwards(Trace trace, int end, Terms terms, double[] cost, int[] previous) {
        double endX = trace.xM[end];
        double endY = trace.yM[end];
        double sumX = 0;
        double sumY = 0;
        double xx = 0;
        double xy = 0;
        double yy = 0;
        double best = Double.POSITIVE_INFINITY;
        double farthestM = 0;
        int earliest = Math.max(0, end - LONGEST_PIECE);
        for (int start = end - 1; start >= earliest; start--) {
            trace.countVisits(1);
            double dx = trace.xM[start] - endX;
            double dy = trace.yM[start] - endY;
            double awayM = Math.sqrt(dx * dx + dy * dy);
            if (awayM < farthestM - terms.foldM()) {
                break;
            }
            farthestM = Math.max(farthestM, awayM);
            sumX += dx;
            sumY += dy;
            xx += dx * dx;
            xy += dx * dy;
            yy += dy * dy;
            int count = end - start + 1;
            double squares = terms.weight()
                    * Straight.smallerEigenvalue(
                            xx - sumX * sumX / count, xy - sumX * sumY / count, yy - sumY * sumY / count);
            double total = cost[start] + terms.price() + squares;
            if (total < best) {
                best = total;
                previous[end] = start;
            } else if (squares - 2 * count > HOPELESS) {
                break;
            }
        }
        cost[end] = best;
    }

    /** As {@link #extendBackwards}, with innovations instead of places; only a piece's first vertex represents itself. */
    private static void extendWandering(Trace trace, Noise noise, int end, Terms terms, double[] cost, int[] previous) {
        double endX = trace.xM[end];
        double endY = trace.yM[end];
        var sums = new WanderingSums();
        double best = Double.POSITIVE_INFINITY;
        double farthestM = 0;
        int earliest = Math.max(0, end - LONGEST_PIECE);
        for (int start = end - 1; start >= earliest; start--) {
            trace.countVisits(1);
            double dx = trace.xM[start] - endX;
            double dy = trace.yM[start] - endY;
            double awayM = Math.sqrt(dx * dx + dy * dy);
            if (awayM < farthestM - terms.foldM()) {
                break;
            }
            farthestM = Math.max(farthestM, awayM);
            double gain = noise.gain[start + 1];
            double memory = noise.memory[start + 1];
            sums.add(
                    gain * (trace.xM[start + 1] - endX - memory * dx),
                    gain * (trace.yM[start + 1] - endY - memory * dy),
                    gain * (1 - memory));
            double squares = terms.weight() * sums.squaresFrom(dx, dy);
            double total = cost[start] + terms.price() + squares;
            if (total < best) {
                best = total;
                previous[end] = start;
            } else if (squares - 2 * (end - start + 1) > HOPELESS) {
                break;
            }
        }
        cost[end] = best;
    }

    private static int[] backtrack(int[] previous) {
        int[] reversed = new int[previous.length];
        int count = 0;
        for (int at = previous.length - 1; at > 0; at = previous[at]) {
            reversed[count++] = at;
        }
        reversed[count++] = 0;
        int[] joints = Arrays.copyOf(reversed, count);
        for (int i = 0, j = count - 1; i < j; i++, j--) {
            int swap = joints[i];
            joints[i] = joints[j];
            joints[j] = swap;
        }
        return joints;
    }
}
