package org.spanroom.model;

import org.jspecify.annotations.Nullable;

/**
 * Ordinates of a line that are decimal numbers, as whole numbers of their last decimal place, each as its difference from that of the
 * first vertex, in as many bytes as the largest difference of the line takes.
 *
 * <p>Exact: a whole number below 2^53 over a power of ten up to 10^22 is rounded once, as the reading of the decimal number is, so
 * both give the same double (Clinger, How to read floating point numbers accurately, PLDI 1990, from memory). Each ordinate is
 * compared with what comes out anyway.
 */
final class DecimalSteps {
    private static final double[] SCALES = {1e6, 1e7, 1e8, 1e9};
    private static final double[] HEIGHT_SCALES = {1e3, 1e6};
    private static final int LEAST_BYTES = 2;

    private final long firstX;
    private final long firstY;
    private final int firstZ;
    private final byte scale;
    private final byte heightScale;
    private final byte stepBytes;

    /** The steps of all vertices but the first, whose are zero: little-endian, with a sign. */
    private final byte[] steps;

    private DecimalSteps(long[] first, int scale, int heightScale, int[] steps) {
        this.firstX = first[0];
        this.firstY = first[1];
        this.firstZ = first.length == 3 ? (int) first[2] : 0;
        this.scale = (byte) scale;
        this.heightScale = (byte) heightScale;
        this.stepBytes = (byte) stepBytes(steps);
        this.steps = packed(steps, first.length, stepBytes);
    }

    /** Returns the steps of x0, y0, x1, y1, ... or x0, y0, z0, x1, ..., or nothing where they would not be exact. */
    static @Nullable DecimalSteps of(double[] ordinates, int dimension) {
        int scale = scale(ordinates, dimension, 0, SCALES);
        int heightScale = dimension == 3 ? scale(ordinates, 3, 2, HEIGHT_SCALES) : 0;
        if (scale < 0 || heightScale < 0) {
            return null;
        }
        long[] first = new long[dimension];
        int[] steps = new int[ordinates.length];
        for (int i = 0; i < ordinates.length; i++) {
            int axis = i % dimension;
            long whole = Math.round(ordinates[i] * (axis == 2 ? HEIGHT_SCALES[heightScale] : SCALES[scale]));
            if (i < dimension) {
                first[axis] = whole;
            }
            long step = whole - first[axis];
            boolean fits = step == (int) step && (axis < 2 || whole == (int) whole);
            if (!fits) {
                return null;
            }
            steps[i] = (int) step;
        }
        return new DecimalSteps(first, scale, heightScale, steps);
    }

    /** Returns the place of the least scale in which all ordinates of both plane axes, or of the height axis, are whole; -1 without one. */
    private static int scale(double[] ordinates, int dimension, int axis, double[] scales) {
        for (int scale = 0; scale < scales.length; scale++) {
            boolean whole = true;
            for (int i = axis; whole && i < ordinates.length; i += dimension) {
                whole = isWhole(ordinates[i], scales[scale]) && (axis == 2 || isWhole(ordinates[i + 1], scales[scale]));
            }
            if (whole) {
                return scale;
            }
        }
        return -1;
    }

    private static int stepBytes(int[] steps) {
        int bits = 0;
        for (int step : steps) {
            bits |= step ^ (step >> (Integer.SIZE - 1));
        }
        int signedBits = Integer.SIZE - Integer.numberOfLeadingZeros(bits) + 1;
        return Math.max(LEAST_BYTES, (signedBits + Byte.SIZE - 1) / Byte.SIZE);
    }

    private static byte[] packed(int[] steps, int dimension, int stepBytes) {
        byte[] packed = new byte[(steps.length - dimension) * stepBytes];
        int at = 0;
        for (int i = dimension; i < steps.length; i++) {
            for (int octet = 0; octet < stepBytes; octet++) {
                packed[at++] = (byte) (steps[i] >> (Byte.SIZE * octet));
            }
        }
        return packed;
    }

    private static boolean isWhole(double ordinate, double scaleRatio) {
        return isExact(ordinate, Math.round(ordinate * scaleRatio), scaleRatio);
    }

    /** Whether it comes out again, to the sign of zero. */
    private static boolean isExact(double ordinate, long whole, double scaleRatio) {
        return Double.doubleToRawLongBits(whole / scaleRatio) == Double.doubleToRawLongBits(ordinate);
    }

    int count(int dimension) {
        return dimension + steps.length / stepBytes;
    }

    /** Returns the ordinate at its place in the array that the steps were made of. */
    double ordinate(int at, int dimension) {
        int step = at < dimension ? 0 : step((at - dimension) * stepBytes);
        if (dimension == 2) {
            return ((at & 1) == 0 ? firstX + step : firstY + step) / SCALES[scale];
        }
        return switch (at % 3) {
            case 0 -> (firstX + step) / SCALES[scale];
            case 1 -> (firstY + step) / SCALES[scale];
            default -> (firstZ + step) / HEIGHT_SCALES[heightScale];
        };
    }

    private int step(int at) {
        int low = steps[at] & 0xFF;
        return switch (stepBytes) {
            case 2 -> low | steps[at + 1] << 8;
            case 3 -> low | (steps[at + 1] & 0xFF) << 8 | steps[at + 2] << 16;
            default -> low | (steps[at + 1] & 0xFF) << 8 | (steps[at + 2] & 0xFF) << 16 | steps[at + 3] << 24;
        };
    }
}
