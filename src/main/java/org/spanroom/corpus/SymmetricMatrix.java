package org.spanroom.corpus;

/** Inverse of a small symmetric positive matrix, by Gauss-Jordan elimination after scaling the diagonal to 1. */
final class SymmetricMatrix {
    private SymmetricMatrix() {}

    static double[][] inverse(double[][] matrix) {
        int size = matrix.length;
        double[] scale = new double[size];
        double[][] work = new double[size][2 * size];
        for (int i = 0; i < size; i++) {
            scale[i] = 1 / Math.sqrt(matrix[i][i]);
        }
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                work[i][j] = matrix[i][j] * scale[i] * scale[j];
            }
            // A trace on the diagonal keeps what the vertices do not show finite.
            work[i][i] += 1e-13;
            work[i][size + i] = 1;
        }
        for (int pivot = 0; pivot < size; pivot++) {
            eliminate(work, pivot);
        }
        double[][] inverse = new double[size][size];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                inverse[i][j] = work[i][size + j] * scale[i] * scale[j];
            }
        }
        return inverse;
    }

    private static void eliminate(double[][] work, int pivot) {
        double divisor = work[pivot][pivot];
        for (int j = 0; j < work[pivot].length; j++) {
            work[pivot][j] /= divisor;
        }
        for (int i = 0; i < work.length; i++) {
            double factor = work[i][pivot];
            if (i == pivot || factor == 0) {
                continue;
            }
            for (int j = 0; j < work[i].length; j++) {
                work[i][j] -= factor * work[pivot][j];
            }
        }
    }
}
