package org.spanroom.output;

import java.util.Arrays;

/**
 * Boxes in the order in which a Hilbert curve passes their centres, so that neighbours in the order are neighbours on the map.
 *
 * <p>The curve runs on a grid of 2<sup>15</sup> cells a side over all centres: a place on it takes 30 bits, and together with
 * the box's number it sorts as one long. Boxes in one cell keep their order.
 */
final class HilbertOrder {
    private static final int SIDE = 1 << 15;

    private HilbertOrder() {}

    /**
     * Returns the numbers of the boxes in the order of the curve.
     *
     * @param boxes packed: minx, maxx, miny, maxy of each box
     */
    static int[] of(float[] boxes, int count) {
        double[] rangeX = range(boxes, count, 0);
        double[] rangeY = range(boxes, count, 2);
        long[] keys = new long[count];
        for (int i = 0; i < count; i++) {
            int column = cell(centre(boxes, 4 * i), rangeX);
            int row = cell(centre(boxes, 4 * i + 2), rangeY);
            keys[i] = (long) distance(column, row) << 32 | i;
        }
        Arrays.parallelSort(keys);
        return Arrays.stream(keys).mapToInt(key -> (int) key).toArray();
    }

    /** Returns how far along the curve a cell lies (the bitwise method as in Warren, "Hacker's Delight", from memory). */
    static int distance(int column, int row) {
        int x = column;
        int y = row;
        int along = 0;
        for (int half = SIDE / 2; half > 0; half /= 2) {
            boolean right = (x & half) != 0;
            boolean upper = (y & half) != 0;
            along = along * 4 + (right ? upper ? 2 : 3 : upper ? 1 : 0);
            if (!upper) {
                int turned = right ? SIDE - 1 - x : x;
                x = right ? SIDE - 1 - y : y;
                y = turned;
            }
        }
        return along;
    }

    private static double[] range(float[] boxes, int count, int offset) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < count; i++) {
            double centre = centre(boxes, 4 * i + offset);
            least = Math.min(least, centre);
            most = Math.max(most, centre);
        }
        return new double[] {least, most};
    }

    private static double centre(float[] boxes, int at) {
        return ((double) boxes[at] + boxes[at + 1]) / 2;
    }

    private static int cell(double value, double[] range) {
        double width = range[1] - range[0];
        return width > 0 ? (int) ((value - range[0]) / width * (SIDE - 1)) : 0;
    }
}
