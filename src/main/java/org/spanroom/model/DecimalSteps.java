package org.spanroom.model;

import org.jspecify.annotations.Nullable;

/**
 * Ordinates of a line that are decimal numbers, as whole numbers of their last decimal place, each as its difference from that of the
 * first vertex.
 *
 * <p>Exact: a whole number below 2^53 over a power of ten up to 10^22 is rounded once, as the reading of the decimal number is, so
 * both give the same double (Clinger, How to read floating point numbers accurately, PLDI 1990, from memory). Each ordinate is
 * compared with what comes out anyway.
 */
final class DecimalSteps {
    private static final double[] SCALES = {1e6, 1e7, 1e8, 1e9};
    private static final double[] HEIGHT_SCALES = {1e3, 1e6};

    private final double scaleRatio;
    private final double heightScaleRatio;
    private final long firstX;
    private final long firstY;
    private final long firstZ;
    private final int[] steps;

    private DecimalSteps(double[] scales, double[] ordinates, int[] steps) {
        this.scaleRatio = scales[0];
        this.heightScaleRatio = scales[2];
        this.firstX = Math.round(ordinates[0] * scaleRatio);
        this.firstY = Math.round(ordinates[1] * scaleRatio);
        this.firstZ = Math.round(ordinates[2] * heightScaleRatio);
        this.steps = steps;
    }

    /** Returns the steps of x0, y0, x1, y1, ... or x0, y0, z0, x1, ..., or nothing where they would not be exact. */
    static @Nullable DecimalSteps of(double[] ordinates, int dimension) {
        double scaleRatio = scaleRatio(ordinates, dimension, 0, SCALES);
        double heightScaleRatio = dimension == 3 ? scaleRatio(ordinates, 3, 2, HEIGHT_SCALES) : 1;
        if (scaleRatio == 0 || heightScaleRatio == 0) {
            return null;
        }
        double[] scales = {scaleRatio, scaleRatio, heightScaleRatio};
        int[] steps = new int[ordinates.length];
        for (int i = 0; i < ordinates.length; i++) {
            int axis = i % dimension;
            long whole = Math.round(ordinates[i] * scales[axis]);
            long step = whole - Math.round(ordinates[axis] * scales[axis]);
            if (step != (int) step) {
                return null;
            }
            steps[i] = (int) step;
        }
        return new DecimalSteps(scales, ordinates, steps);
    }

    /** Returns the least scale in which all ordinates of both plane axes, or of the height axis, are whole; 0 without one. */
    private static double scaleRatio(double[] ordinates, int dimension, int axis, double[] scales) {
        for (double scaleRatio : scales) {
            boolean whole = true;
            for (int i = axis; whole && i < ordinates.length; i += dimension) {
                whole = isWhole(ordinates[i], scaleRatio) && (axis == 2 || isWhole(ordinates[i + 1], scaleRatio));
            }
            if (whole) {
                return scaleRatio;
            }
        }
        return 0;
    }

    private static boolean isWhole(double ordinate, double scaleRatio) {
        return isExact(ordinate, Math.round(ordinate * scaleRatio), scaleRatio);
    }

    /** Whether it comes out again, to the sign of zero. */
    private static boolean isExact(double ordinate, long whole, double scaleRatio) {
        return Double.doubleToRawLongBits(whole / scaleRatio) == Double.doubleToRawLongBits(ordinate);
    }

    int count() {
        return steps.length;
    }

    /** Returns the ordinate at its place in the array that the steps were made of. */
    double ordinate(int at, int dimension) {
        if (dimension == 2) {
            return ((at & 1) == 0 ? firstX + steps[at] : firstY + steps[at]) / scaleRatio;
        }
        return switch (at % 3) {
            case 0 -> (firstX + steps[at]) / scaleRatio;
            case 1 -> (firstY + steps[at]) / scaleRatio;
            default -> (firstZ + steps[at]) / heightScaleRatio;
        };
    }
}
