package org.spanroom.bore;

import java.util.Arrays;

/**
 * A proof that the largest circles of a task do not go into a round bore, by the angles between them seen from its middle.
 *
 * <p>Derived here. Centers i and j at distances a, b from the middle O and at least s = r(i) + r(j) from each other are seen
 * from O under an angle whose cosine is at most (a2 + b2 - s2) / (2 a b). In either distance that expression is convex or
 * rising, so over a range of both it is largest at a corner of the ranges. In the order around O the angles between
 * neighbors add up to at most a full turn; if even the order with the least sum exceeds it, the circles do not fit.
 *
 * <p>A circle may be so near to O that its angle says nothing. For a core radius c the cases are: no center within c of O,
 * with all distances from c to the wall; or center i within c, when every other center is at least s - c from O, and the
 * ring of the others alone is judged. If all cases fail for one c, nothing fits. Exact for rings without or with one circle
 * in the middle, which is most of what is in ducts; silent on more crowded sets.
 */
final class RingBound {
    /** Shortest orders round the middle are found by dynamic programming over subsets, so no more than this. */
    static final int MOST_CIRCLES = 8;

    /** An exact bound refutes a radius that is shorter than the least by this share. */
    private static final double SHORT_RATIO = 1e-7;

    private static final int HALVINGS = 14;
    private static final double FULL_TURN_RAD = 2 * Math.PI + 1e-10;
    private static final double[] CORE_RATIOS = {1e-6, 0.02, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4};

    private final double[] radiiMm;

    RingBound(PackingTask task, int count) {
        radiiMm = new double[count];
        for (int i = 0; i < count; i++) {
            radiiMm[i] = task.radiusMm(i);
        }
    }

    /** Returns whether the circles are proved not to go into a round bore of this radius. */
    boolean refutes(double halfMm) {
        if (refutesWithCore(halfMm, sharpestCoreMm(halfMm))) {
            return true;
        }
        for (double ratio : CORE_RATIOS) {
            if (refutesWithCore(halfMm, ratio * halfMm)) {
                return true;
            }
        }
        return false;
    }

    /**
     * Returns the widest radius, to about 1e-4 of the range, that the bound refutes; the lower end where it refutes no wider one.
     *
     * @param knownHalfMm radius of a bore that the circles are known to go into
     */
    double leastHalfMm(double fromHalfMm, double knownHalfMm) {
        double lowMm = fromHalfMm;
        double highMm = knownHalfMm * (1 - SHORT_RATIO);
        if (highMm <= lowMm || refutes(highMm)) {
            return Math.max(lowMm, highMm);
        }
        for (int halving = 0; halving < HALVINGS; halving++) {
            double middleMm = (lowMm + highMm) / 2;
            if (refutes(middleMm)) {
                lowMm = middleMm;
            } else {
                highMm = middleMm;
            }
        }
        return lowMm;
    }

    /** The least core outside of which every pair is seen under no less than when both touch the wall. */
    private double sharpestCoreMm(double halfMm) {
        double coreMm = 1e-6 * halfMm;
        for (int i = 0; i < radiiMm.length; i++) {
            for (int j = 0; j < radiiMm.length; j++) {
                double reachI = halfMm - radiiMm[i];
                double reachJ = halfMm - radiiMm[j];
                double touch = radiiMm[i] + radiiMm[j];
                if (i != j && reachI > 0) {
                    coreMm = Math.max(coreMm, (reachJ * reachJ - touch * touch) / reachI);
                }
            }
        }
        return coreMm;
    }

    private boolean refutesWithCore(double halfMm, double coreMm) {
        double[] nearest = new double[radiiMm.length];
        Arrays.fill(nearest, coreMm);
        if (!ringFails(halfMm, nearest, -1)) {
            return false;
        }
        for (int middle = 0; middle < radiiMm.length; middle++) {
            boolean seen = middle > 0 && radiiMm[middle] == radiiMm[middle - 1];
            if (!seen && !middleFails(halfMm, coreMm, middle)) {
                return false;
            }
        }
        return true;
    }

    private boolean middleFails(double halfMm, double coreMm, int middle) {
        double[] nearest = new double[radiiMm.length];
        for (int j = 0; j < radiiMm.length; j++) {
            nearest[j] = radiiMm[middle] + radiiMm[j] - coreMm;
            if (j != middle && nearest[j] <= 0) {
                return false;
            }
        }
        return ringFails(halfMm, nearest, middle);
    }

    /** Returns whether the circles but one cannot be around O with their centers no nearer to it than given. */
    private boolean ringFails(double halfMm, double[] nearest, int except) {
        int[] ring = new int[radiiMm.length - (except < 0 ? 0 : 1)];
        for (int i = 0, k = 0; i < radiiMm.length; i++) {
            if (i != except) {
                if (nearest[i] > halfMm - radiiMm[i]) {
                    return true;
                }
                ring[k++] = i;
            }
        }
        double[][] angles = new double[ring.length][ring.length];
        for (int a = 0; a < ring.length; a++) {
            for (int b = 0; b < a; b++) {
                angles[a][b] = leastAngleRad(halfMm, nearest, ring[a], ring[b]);
                angles[b][a] = angles[a][b];
            }
        }
        return ring.length > 2 && shortestRoundExceedsTurn(angles);
    }

    private double leastAngleRad(double halfMm, double[] nearest, int i, int j) {
        double touch = radiiMm[i] + radiiMm[j];
        double farI = halfMm - radiiMm[i];
        double farJ = halfMm - radiiMm[j];
        double cosine = Math.max(
                Math.max(cosine(farI, farJ, touch), cosine(nearest[i], farJ, touch)),
                Math.max(cosine(farI, nearest[j], touch), cosine(nearest[i], nearest[j], touch)));
        return Math.acos(Math.max(-1, Math.min(1, cosine)));
    }

    private static double cosine(double a, double b, double touch) {
        return (a * a + b * b - touch * touch) / (2 * a * b);
    }

    private static boolean shortestRoundExceedsTurn(double[][] angles) {
        double halvedRad = 0;
        for (double[] row : angles) {
            halvedRad += twoLeast(row) / 2;
        }
        return halvedRad > FULL_TURN_RAD || shortestRoundRad(angles) > FULL_TURN_RAD;
    }

    /** The two least angles of a circle to others; its own entry of 0 is not one. */
    private static double twoLeast(double[] row) {
        double[] sorted = row.clone();
        Arrays.sort(sorted);
        return sorted[1] + sorted[2];
    }

    /** Shortest closed order by dynamic programming over subsets (Held and Karp 1962, from memory). */
    private static double shortestRoundRad(double[][] angles) {
        int last = angles.length - 1;
        double[][] least = new double[1 << last][last];
        for (int set = 1; set < 1 << last; set++) {
            for (int end = 0; end < last; end++) {
                least[set][end] = (set & (1 << end)) == 0 ? Double.POSITIVE_INFINITY : leastTo(angles, least, set, end);
            }
        }
        double shortest = Double.POSITIVE_INFINITY;
        for (int end = 0; end < last; end++) {
            shortest = Math.min(shortest, least[(1 << last) - 1][end] + angles[end][last]);
        }
        return shortest;
    }

    private static double leastTo(double[][] angles, double[][] least, int set, int end) {
        int before = set & ~(1 << end);
        if (before == 0) {
            return angles[angles.length - 1][end];
        }
        double shortest = Double.POSITIVE_INFINITY;
        for (int via = 0; via < angles.length - 1; via++) {
            shortest = Math.min(shortest, least[before][via] + angles[via][end]);
        }
        return shortest;
    }
}
