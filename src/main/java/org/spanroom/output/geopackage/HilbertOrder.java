package org.spanroom.output.geopackage;

import java.util.Arrays;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.hprtree.HilbertEncoder;

/**
 * Boxes in the order in which a Hilbert curve passes their centers, so that neighbors in the order are neighbors on the map.
 *
 * <p>The curve runs on a grid of 2<sup>15</sup> cells a side over all boxes: a place on it takes 30 bits, and together with
 * the box's number it sorts as one long. Boxes in one cell keep their order.
 */
final class HilbertOrder {
    private static final int LEVEL = 15;

    private HilbertOrder() {}

    /** Returns the numbers of the boxes in the order of the curve. */
    static int[] of(IndexBoxes boxes) {
        int count = boxes.count();
        var extent = new Envelope();
        for (int i = 0; i < count; i++) {
            extent.expandToInclude(box(boxes, i));
        }
        var curve = new HilbertEncoder(LEVEL, extent);
        long[] keys = new long[count];
        for (int i = 0; i < count; i++) {
            keys[i] = (long) curve.encode(box(boxes, i)) << 32 | i;
        }
        Arrays.parallelSort(keys);
        return Arrays.stream(keys).mapToInt(key -> (int) key).toArray();
    }

    private static Envelope box(IndexBoxes boxes, int number) {
        return new Envelope(boxes.side(number, 0), boxes.side(number, 1), boxes.side(number, 2), boxes.side(number, 3));
    }
}
