package org.spanroom.output.geopackage;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.spanroom.output.table.Extent;

/**
 * The R-tree of one layer, built from the leaves up once all boxes are known.
 *
 * <p>Method: boxes are sorted along a Hilbert curve through their centers and packed into full nodes (Kamel and Faloutsos,
 * "On Packing R-trees", 1993, from memory), which go straight into the three tables behind SQLite's R-tree. Inserting row by
 * row takes several times as long and gives a worse tree.
 *
 * <p>Layout of a node, from the comments in SQLite's R-tree module ({@code ext/rtree/rtree.c}, from memory; its own
 * {@code rtreecheck} confirms it in the tests): depth of the tree (root only) and number of cells as big-endian 16-bit
 * integers, then up to 51 cells of a 64-bit number (row, or child node) and minx, maxx, miny, maxy as 32-bit floats that
 * never lie inside the true box. The root is node 1.
 */
final class SpatialIndex {
    private static final int MOST_CELLS = 51;
    private static final int CELL_BYTES = 24;
    private static final int NODE_BYTES = 4 + MOST_CELLS * CELL_BYTES;
    private static final int ROOT = 1;

    private final SqliteRecord record = new SqliteRecord();
    private long[] ids = new long[1024];
    private float[] boxes = new float[4 * 1024];
    private int count;

    /** The rows or nodes that the nodes of one depth hold, in the order of the curve; those nodes' numbers follow on. */
    private static final class Level {
        private final int depth;
        private final long[] ids;
        private final float[] boxes;
        private final int firstNode;

        Level(int depth, long[] ids, float[] boxes, int firstNode) {
            this.depth = depth;
            this.ids = ids;
            this.boxes = boxes;
            this.firstNode = firstNode;
        }

        int nodes() {
            return (ids.length + MOST_CELLS - 1) / MOST_CELLS;
        }

        int nodeOf(int member) {
            return firstNode + member / MOST_CELLS;
        }
    }

    /** Adds a row's box; rows come in ascending order. */
    void add(long id, Extent box) {
        if (count == ids.length) {
            ids = Arrays.copyOf(ids, count * 2);
            boxes = Arrays.copyOf(boxes, count * 8);
        }
        ids[count] = id;
        boxes[4 * count] = notAbove(box.minX());
        boxes[4 * count + 1] = notBelow(box.maxX());
        boxes[4 * count + 2] = notAbove(box.minY());
        boxes[4 * count + 3] = notBelow(box.maxY());
        count++;
    }

    /** Returns whether no row has a box; the tables are then right as SQLite made them. */
    boolean isEmpty() {
        return count == 0;
    }

    /** Fills the three tables behind the index. */
    void write(SqliteTable nodes, SqliteTable parents, SqliteTable rows) {
        int[] order = HilbertOrder.of(boxes, count);
        var levels = new ArrayList<Level>();
        for (Level level = leaves(order); ; level = above(level)) {
            levels.add(level);
            if (level.firstNode == ROOT) {
                break;
            }
        }
        putRows(rows, levels.get(0), order);
        putParents(parents, levels);
        putNodes(nodes, levels);
    }

    private Level leaves(int[] order) {
        long[] rows = new long[count];
        float[] rowBoxes = new float[4 * count];
        for (int i = 0; i < count; i++) {
            rows[i] = ids[order[i]];
            System.arraycopy(boxes, 4 * order[i], rowBoxes, 4 * i, 4);
        }
        return new Level(0, rows, rowBoxes, count <= MOST_CELLS ? ROOT : ROOT + 1);
    }

    private static Level above(Level children) {
        int nodes = children.nodes();
        long[] numbers = new long[nodes];
        float[] nodeBoxes = new float[4 * nodes];
        for (int node = 0; node < nodes; node++) {
            numbers[node] = (long) children.firstNode + node;
            int from = node * MOST_CELLS;
            int to = Math.min(from + MOST_CELLS, children.ids.length);
            System.arraycopy(children.boxes, 4 * from, nodeBoxes, 4 * node, 4);
            for (int member = from + 1; member < to; member++) {
                widen(nodeBoxes, 4 * node, children.boxes, 4 * member);
            }
        }
        return new Level(
                children.depth + 1, numbers, nodeBoxes, nodes <= MOST_CELLS ? ROOT : children.firstNode + nodes);
    }

    private static void widen(float[] box, int at, float[] other, int from) {
        box[at] = Math.min(box[at], other[from]);
        box[at + 1] = Math.max(box[at + 1], other[from + 1]);
        box[at + 2] = Math.min(box[at + 2], other[from + 2]);
        box[at + 3] = Math.max(box[at + 3], other[from + 3]);
    }

    private void putRows(SqliteTable table, Level leaves, int[] order) {
        int[] nodeOfRow = new int[count];
        for (int i = 0; i < count; i++) {
            nodeOfRow[order[i]] = leaves.nodeOf(i);
        }
        for (int row = 0; row < count; row++) {
            putPair(table, ids[row], nodeOfRow[row]);
        }
        table.close();
    }

    private void putParents(SqliteTable table, List<Level> levels) {
        for (Level level : levels.subList(1, levels.size())) {
            for (int child = 0; child < level.ids.length; child++) {
                putPair(table, level.ids[child], level.nodeOf(child));
            }
        }
        table.close();
    }

    private void putPair(SqliteTable table, long key, int node) {
        record.clear();
        record.nothing();
        record.integer(node);
        table.add(key, record);
    }

    /** Puts the nodes in the order of their numbers: the root, which is the last level, comes first. */
    private void putNodes(SqliteTable table, List<Level> levels) {
        putNodes(table, levels.get(levels.size() - 1));
        for (Level level : levels.subList(0, levels.size() - 1)) {
            putNodes(table, level);
        }
        table.close();
    }

    private void putNodes(SqliteTable table, Level level) {
        for (int from = 0; from < level.ids.length; from += MOST_CELLS) {
            record.clear();
            record.nothing();
            record.blob(node(level, from, Math.min(from + MOST_CELLS, level.ids.length)));
            table.add(level.nodeOf(from), record);
        }
    }

    private static byte[] node(Level level, int from, int to) {
        ByteBuffer node = ByteBuffer.allocate(NODE_BYTES);
        node.putShort((short) (level.firstNode == ROOT ? level.depth : 0)).putShort((short) (to - from));
        for (int member = from; member < to; member++) {
            node.putLong(level.ids[member]);
            for (int k = 0; k < 4; k++) {
                node.putFloat(level.boxes[4 * member + k]);
            }
        }
        return node.array();
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
