package org.spanroom.bend;

import java.util.Arrays;

/**
 * Normal equations of a least-squares problem in which each observation touches a band of neighboring
 * unknowns; solved by Cholesky factorisation within the band, in time proportional to the unknowns.
 */
final class BandedSystem {
    /** Far more than any vertex says of an unknown. */
    private static final double HELD = 1e15;

    final int size;
    private final int width;
    private final double[] matrix;
    private final double[] right;
    private final double[] factor;
    private final double[] solution;

    BandedSystem(int size, int width) {
        this.size = size;
        this.width = width;
        this.matrix = new double[size * width];
        this.right = new double[size];
        this.factor = new double[size * width];
        this.solution = new double[size];
    }

    void clear() {
        Arrays.fill(matrix, 0);
        Arrays.fill(right, 0);
    }

    /** Adds an observation whose residual changes by {@code slope[i]} with unknown {@code first + i}. */
    void add(int first, double[] slope, int count, double residual) {
        if (count == TangentChain.ARC_WIDTH) {
            addFive(first, slope, residual);
            return;
        }
        for (int i = 0; i < count; i++) {
            int diagonal = (first + i) * width - i;
            double own = slope[i];
            for (int j = i; j < count; j++) {
                matrix[diagonal + j] += own * slope[j];
            }
            right[first + i] -= own * residual;
        }
    }

    /** As {@link #add} of five, what a vertex on an arc touches: the same operations without loops. */
    private void addFive(int first, double[] slope, double residual) {
        double zero = slope[0];
        double one = slope[1];
        double two = slope[2];
        double three = slope[3];
        double four = slope[4];
        double[] m = matrix;
        int at = first * width;
        m[at] += zero * zero;
        m[at + 1] += zero * one;
        m[at + 2] += zero * two;
        m[at + 3] += zero * three;
        m[at + 4] += zero * four;
        at += width;
        m[at] += one * one;
        m[at + 1] += one * two;
        m[at + 2] += one * three;
        m[at + 3] += one * four;
        at += width;
        m[at] += two * two;
        m[at + 1] += two * three;
        m[at + 2] += two * four;
        at += width;
        m[at] += three * three;
        m[at + 1] += three * four;
        m[at + width] += four * four;
        right[first] -= zero * residual;
        right[first + 1] -= one * residual;
        right[first + 2] -= two * residual;
        right[first + 3] -= three * residual;
        right[first + 4] -= four * residual;
    }

    /** Adds an observation whose residual falls by a distance along a straight with one unknown, and by 1 with the next. */
    void addStraight(int first, double alongM, double residual) {
        int row = first * width;
        matrix[row] += alongM * alongM;
        matrix[row + 1] += alongM;
        matrix[row + width] += 1;
        right[first] += alongM * residual;
        right[first + 1] += residual;
    }

    /** Keeps an unknown where it is. */
    void hold(int unknown) {
        matrix[unknown * width] += HELD;
        right[unknown] = 0;
    }

    double[] solution() {
        return solution;
    }

    /** Solves with the diagonal raised by a share of itself; returns false where the matrix is not positive. */
    boolean solve(double dampingRatio) {
        System.arraycopy(matrix, 0, factor, 0, matrix.length);
        for (int row = 0; row < size; row++) {
            factor[row * width] += dampingRatio * factor[row * width] + 1e-9;
        }
        return factorise() && substitute();
    }

    private boolean factorise() {
        for (int row = 0; row < size; row++) {
            double pivot = factor[row * width];
            if (!(pivot > 0)) {
                return false;
            }
            int reach = Math.min(width, size - row);
            if (reach == 5) {
                eliminateFive(row * width, Math.sqrt(pivot));
            } else {
                eliminate(row, reach, Math.sqrt(pivot));
            }
        }
        return true;
    }

    private void eliminate(int row, int reach, double root) {
        for (int i = 0; i < reach; i++) {
            factor[row * width + i] /= root;
        }
        for (int i = 1; i < reach; i++) {
            double below = factor[row * width + i];
            for (int j = i; j < reach; j++) {
                factor[(row + i) * width + j - i] -= below * factor[row * width + j];
            }
        }
    }

    /** As {@link #eliminate} for a row of five, what most rows are: half the time, the same operations. */
    private void eliminateFive(int at, double root) {
        double[] f = factor;
        f[at] /= root;
        double one = f[at + 1] / root;
        double two = f[at + 2] / root;
        double three = f[at + 3] / root;
        double four = f[at + 4] / root;
        f[at + 1] = one;
        f[at + 2] = two;
        f[at + 3] = three;
        f[at + 4] = four;
        int next = at + width;
        f[next] -= one * one;
        f[next + 1] -= one * two;
        f[next + 2] -= one * three;
        f[next + 3] -= one * four;
        next += width;
        f[next] -= two * two;
        f[next + 1] -= two * three;
        f[next + 2] -= two * four;
        next += width;
        f[next] -= three * three;
        f[next + 1] -= three * four;
        f[next + width] -= four * four;
    }

    private boolean substitute() {
        double[] f = factor;
        for (int row = 0; row < size; row++) {
            double sum = right[row];
            int reach = Math.min(width, row + 1);
            // One column up and one row back from the diagonal.
            for (int back = 1, at = (row - 1) * width + 1; back < reach; back++, at -= width - 1) {
                sum -= f[at] * solution[row - back];
            }
            solution[row] = sum / f[row * width];
        }
        for (int row = size - 1; row >= 0; row--) {
            double sum = solution[row];
            int reach = Math.min(width, size - row);
            int at = row * width;
            for (int ahead = 1; ahead < reach; ahead++) {
                sum -= f[at + ahead] * solution[row + ahead];
            }
            solution[row] = sum / f[at];
            if (!Double.isFinite(solution[row])) {
                return false;
            }
        }
        return true;
    }
}
