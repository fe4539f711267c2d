package org.spanroom.output.geopackage;

import java.nio.ByteBuffer;
import java.util.ArrayList;
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
    private final IndexBoxes boxes = new IndexBoxes();

    /** The rows or nodes that the nodes of one depth hold, in the order of the curve; those nodes' numbers follow on. */
    private interface Level {
        int depth();

        /** Returns how many rows or nodes they hold. */
        int size();

        long id(int member);

        float side(int member, int side);

        int firstNode();

        default int nodes() {
            return (size() + MOST_CELLS - 1) / MOST_CELLS;
        }

        default int nodeOf(int member) {
            return firstNode() + member / MOST_CELLS;
        }

        default boolean isRoot() {
            return firstNode() == ROOT;
        }
    }

    /** The rows: their boxes stay where they are. */
    private static final class Leaves implements Level {
        private final IndexBoxes boxes;
        private final int[] order;

        Leaves(IndexBoxes boxes, int[] order) {
            this.boxes = boxes;
            this.order = order;
        }

        @Override
        public int depth() {
            return 0;
        }

        @Override
        public int size() {
            return order.length;
        }

        @Override
        public long id(int member) {
            return boxes.id(order[member]);
        }

        @Override
        public float side(int member, int side) {
            return boxes.side(order[member], side);
        }

        @Override
        public int firstNode() {
            return order.length <= MOST_CELLS ? ROOT : ROOT + 1;
        }
    }

    /** Nodes, which are numbered one after another. */
    private static final class Above implements Level {
        private final int depth;
        private final int firstMember;
        private final float[] sides;
        private final int firstNode;

        Above(Level children) {
            int nodes = children.nodes();
            sides = new float[IndexBoxes.SIDES * nodes];
            for (int node = 0; node < nodes; node++) {
                int from = node * MOST_CELLS;
                int to = Math.min(from + MOST_CELLS, children.size());
                for (int side = 0; side < IndexBoxes.SIDES; side++) {
                    sides[IndexBoxes.SIDES * node + side] = outermost(children, from, to, side);
                }
            }
            depth = children.depth() + 1;
            firstMember = children.firstNode();
            firstNode = nodes <= MOST_CELLS ? ROOT : children.firstNode() + nodes;
        }

        /** Sides alternate between least and greatest. */
        private static float outermost(Level level, int from, int to, int side) {
            float found = level.side(from, side);
            for (int member = from + 1; member < to; member++) {
                float other = level.side(member, side);
                found = side % 2 == 0 ? Math.min(found, other) : Math.max(found, other);
            }
            return found;
        }

        @Override
        public int depth() {
            return depth;
        }

        @Override
        public int firstNode() {
            return firstNode;
        }

        @Override
        public int size() {
            return sides.length / IndexBoxes.SIDES;
        }

        @Override
        public long id(int member) {
            return (long) firstMember + member;
        }

        @Override
        public float side(int member, int side) {
            return sides[IndexBoxes.SIDES * member + side];
        }
    }

    /** Adds a row's box; rows come in ascending order. */
    void add(long id, Extent box) {
        boxes.add(id, box);
    }

    /** Returns whether no row has a box; the tables are then right as SQLite made them. */
    boolean isEmpty() {
        return boxes.count() == 0;
    }

    /** Fills the three tables behind the index. */
    void write(SqliteTable nodes, SqliteTable parents, SqliteTable rows) {
        int[] order = HilbertOrder.of(boxes);
        var levels = new ArrayList<Level>();
        levels.add(new Leaves(boxes, order));
        while (!last(levels).isRoot()) {
            levels.add(new Above(last(levels)));
        }
        putRows(rows, levels.get(0), order);
        putParents(parents, levels);
        putNodes(nodes, levels);
    }

    private static Level last(List<Level> levels) {
        return levels.get(levels.size() - 1);
    }

    private void putRows(SqliteTable table, Level leaves, int[] order) {
        int[] nodeOfRow = new int[order.length];
        for (int i = 0; i < order.length; i++) {
            nodeOfRow[order[i]] = leaves.nodeOf(i);
        }
        for (int row = 0; row < order.length; row++) {
            putPair(table, boxes.id(row), nodeOfRow[row]);
        }
        table.close();
    }

    private void putParents(SqliteTable table, List<Level> levels) {
        for (Level level : levels.subList(1, levels.size())) {
            for (int child = 0; child < level.size(); child++) {
                putPair(table, level.id(child), level.nodeOf(child));
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
        putNodes(table, last(levels));
        for (Level level : levels.subList(0, levels.size() - 1)) {
            putNodes(table, level);
        }
        table.close();
    }

    private void putNodes(SqliteTable table, Level level) {
        for (int from = 0; from < level.size(); from += MOST_CELLS) {
            record.clear();
            record.nothing();
            record.blob(node(level, from, Math.min(from + MOST_CELLS, level.size())));
            table.add(level.nodeOf(from), record);
        }
    }

    private static byte[] node(Level level, int from, int to) {
        ByteBuffer node = ByteBuffer.allocate(NODE_BYTES);
        node.putShort((short) (level.isRoot() ? level.depth() : 0)).putShort((short) (to - from));
        for (int member = from; member < to; member++) {
            node.putLong(level.id(member));
            for (int k = 0; k < IndexBoxes.SIDES; k++) {
                node.putFloat(level.side(member, k));
            }
        }
        return node.array();
    }
}
