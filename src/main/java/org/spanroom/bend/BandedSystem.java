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
        for (int i = 0; i < count; i++) {
            int row = (first + i) * width;
            for (int j = i; j < count; j++) {
                matrix[row + j - i] += slope[i] * slope[j];
            }
            right[first + i] -= slope[i] * residual;
        }
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
            double root = Math.sqrt(pivot);
            int reach = Math.min(width, size - row);
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
        return true;
    }

    private boolean substitute() {
        for (int row = 0; row < size; row++) {
            double sum = right[row];
            for (int back = 1; back < Math.min(width, row + 1); back++) {
                sum -= factor[(row - back) * width + back] * solution[row - back];
            }
            solution[row] = sum / factor[row * width];
        }
        for (int row = size - 1; row >= 0; row--) {
            double sum = solution[row];
            for (int ahead = 1; ahead < Math.min(width, size - row); ahead++) {
                sum -= factor[row * width + ahead] * solution[row + ahead];
            }
            solution[row] = sum / factor[row * width];
            if (!Double.isFinite(solution[row])) {
                return false;
            }
        }
        return true;
    }
}
