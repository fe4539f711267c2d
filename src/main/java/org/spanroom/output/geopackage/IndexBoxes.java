package org.spanroom.output.geopackage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.spanroom.output.table.Extent;

/**
 * The boxes of many rows as 32-bit floats that never lie inside the true box, in blocks, so that they grow without being copied. Rows come in
 * ascending order; their numbers are held only where they do not simply count up.
 */
final class IndexBoxes {
    /** Minx, maxx, miny, maxy. */
    static final int SIDES = 4;

    private static final int BLOCK_BITS = 12;
    private static final int BLOCK_ROWS = 1 << BLOCK_BITS;

    private final List<float[]> blocks = new ArrayList<>();
    private long firstId;
    private long @Nullable [] ids;
    private int count;

    /** Adds the box of a row. */
    void add(long id, Extent box) {
        int at = (count & (BLOCK_ROWS - 1)) * SIDES;
        if (at == 0) {
            blocks.add(new float[BLOCK_ROWS * SIDES]);
        }
        float[] block = blocks.get(blocks.size() - 1);
        block[at] = notAbove(box.minX());
        block[at + 1] = notBelow(box.maxX());
        block[at + 2] = notAbove(box.minY());
        block[at + 3] = notBelow(box.maxY());
        addId(id);
        count++;
    }

    private void addId(long id) {
        if (count == 0) {
            firstId = id;
        }
        if (ids == null && id != firstId + count) {
            ids = new long[Math.max(BLOCK_ROWS, 2 * count)];
            for (int row = 0; row < count; row++) {
                ids[row] = firstId + row;
            }
        }
        if (ids != null) {
            if (count == ids.length) {
                ids = Arrays.copyOf(ids, 2 * count);
            }
            ids[count] = id;
        }
    }

    int count() {
        return count;
    }

    /** Returns the number of a row by its place. */
    long id(int row) {
        return ids == null ? firstId + row : ids[row];
    }

    /** Returns one side of a box. */
    float side(int row, int side) {
        return blocks.get(row >> BLOCK_BITS)[(row & (BLOCK_ROWS - 1)) * SIDES + side];
    }

    private static float notAbove(double value) {
        float near = (float) value;
        return near > value ? Math.nextDown(near) : near;
    }

    private static float notBelow(double value) {
        float near = (float) value;
        return near < value ? Math.nextUp(near) : near;
    }
}
