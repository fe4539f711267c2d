package org.spanroom.output.geopackage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.spanroom.output.table.ByteBlock;

/**
 * The b-tree of one SQLite table, built from rows in ascending order, from the leaves up.
 *
 * <p>Through the database's own interface each value of each row would cross from Java to C on its own, which costs several
 * times as much as all the rest. The layout is that of "Database File Format", sections 1.6 and 2.3, on sqlite.org (from
 * memory; SQLite's {@code integrity_check} confirms it in the tests): leaves are filled to the brim; what of a record does not fit
 * into its cell follows in a chain of overflow pages; inner pages hold their children's largest row numbers. The last page
 * made takes the place of the table's root.
 */
final class SqliteTable {
    private static final byte LEAF = 0x0D;
    private static final byte INNER = 0x05;
    private static final int LEAF_HEADER_BYTES = 8;
    private static final int INNER_HEADER_BYTES = 12;
    /** An inner cell takes at most 15 bytes with its pointer, so that 272 fit on the smallest page. */
    private static final int MOST_CHILDREN = 256;

    private final SqlitePages pages;
    private final int rootPage;
    private final int mostChildren;
    private final int usable;
    private final int mostLocal;
    private final int leastLocal;
    private final ByteBlock scratch = new ByteBlock();
    private Children leaves = new Children();
    private byte[] leaf;
    private int cells;
    private int contentStart;
    private long lastRow = Long.MIN_VALUE;

    /** Pages of one level, each with the largest row number below it. */
    private static final class Children {
        private int[] numbers = new int[64];
        private long[] lastRows = new long[64];
        private int size;

        void add(int number, long row) {
            if (size == numbers.length) {
                numbers = Arrays.copyOf(numbers, 2 * size);
                lastRows = Arrays.copyOf(lastRows, 2 * size);
            }
            numbers[size] = number;
            lastRows[size] = row;
            size++;
        }
    }

    /** Begins to fill an empty table that SQLite has created with the given root. */
    SqliteTable(SqlitePages pages, int rootPage) {
        this(pages, rootPage, MOST_CHILDREN);
    }

    SqliteTable(SqlitePages pages, int rootPage, int mostChildren) {
        this.pages = pages;
        this.rootPage = rootPage;
        this.mostChildren = mostChildren;
        this.usable = pages.pageBytes();
        this.mostLocal = usable - 35;
        this.leastLocal = (usable - 12) * 32 / 255 - 23;
        this.leaf = new byte[usable];
        this.contentStart = usable;
    }

    /** Adds a row, whose number must be larger than that of the one before. */
    void add(long row, SqliteRecord record) {
        scratch.clear();
        record.copyTo(scratch);
        add(row, scratch.array(), 0, scratch.size());
    }

    /** Adds a row whose record stands in an array. */
    void add(long row, byte[] source, int from, int size) {
        if (row <= lastRow || row < 0) {
            throw new IllegalArgumentException("row numbers must ascend, was " + row + " after " + lastRow);
        }
        int local = localBytes(size);
        int cellBytes = SqliteRecord.varintBytes(size) + SqliteRecord.varintBytes(row) + local + (local < size ? 4 : 0);
        if (LEAF_HEADER_BYTES + 2 * (cells + 1) + cellBytes > contentStart) {
            endLeaf();
        }
        contentStart -= cellBytes;
        int at = SqliteRecord.varint(row, leaf, SqliteRecord.varint(size, leaf, contentStart));
        System.arraycopy(source, from, leaf, at, local);
        if (local < size) {
            putInt(leaf, at + local, overflow(source, from + local, from + size));
        }
        putShort(leaf, LEAF_HEADER_BYTES + 2 * cells, contentStart);
        cells++;
        lastRow = row;
    }

    /** Completes the tree. */
    void close() {
        if (leaves.size == 0) {
            pages.replace(rootPage, finishedLeaf());
            return;
        }
        endLeaf();
        Children level = leaves;
        while (level.size > mostChildren) {
            level = parents(level);
        }
        pages.replace(rootPage, inner(level, 0, level.size));
    }

    /** Returns how many bytes of a record stay in its cell. */
    private int localBytes(int size) {
        if (size <= mostLocal) {
            return size;
        }
        int filling = leastLocal + (size - leastLocal) % (usable - 4);
        return filling <= mostLocal ? filling : leastLocal;
    }

    /** Appends the rest of a record in a chain of pages and returns the number of the first. */
    private int overflow(byte[] source, int from, int to) {
        int first = pages.nextNumber();
        for (int at = from; at < to; at += usable - 4) {
            byte[] page = new byte[usable];
            int length = Math.min(usable - 4, to - at);
            putInt(page, 0, at + length < to ? pages.numberAfter(pages.nextNumber()) : 0);
            System.arraycopy(source, at, page, 4, length);
            pages.append(page);
        }
        return first;
    }

    private void endLeaf() {
        leaves.add(pages.append(finishedLeaf()), lastRow);
        leaf = new byte[usable];
        cells = 0;
        contentStart = usable;
    }

    private byte[] finishedLeaf() {
        leaf[0] = LEAF;
        putShort(leaf, 3, cells);
        putShort(leaf, 5, contentStart);
        return leaf;
    }

    private Children parents(Children level) {
        var parents = new Children();
        for (int[] group : groups(level.size)) {
            parents.add(pages.append(inner(level, group[0], group[1])), level.lastRows[group[1] - 1]);
        }
        return parents;
    }

    /** Returns bounds of groups as large as allowed; none has only one member, since an inner page needs two children. */
    private List<int[]> groups(int size) {
        var groups = new ArrayList<int[]>();
        for (int from = 0; from < size; ) {
            int to = Math.min(from + mostChildren, size);
            if (size - to == 1) {
                to--;
            }
            groups.add(new int[] {from, to});
            from = to;
        }
        return groups;
    }

    private byte[] inner(Children level, int from, int to) {
        byte[] page = new byte[usable];
        page[0] = INNER;
        putShort(page, 3, to - from - 1);
        putInt(page, 8, level.numbers[to - 1]);
        int start = usable;
        for (int child = from; child < to - 1; child++) {
            start -= 4 + SqliteRecord.varintBytes(level.lastRows[child]);
            putInt(page, start, level.numbers[child]);
            SqliteRecord.varint(level.lastRows[child], page, start + 4);
            putShort(page, INNER_HEADER_BYTES + 2 * (child - from), start);
        }
        putShort(page, 5, start);
        return page;
    }

    private static void putShort(byte[] page, int at, int value) {
        page[at] = (byte) (value >>> 8);
        page[at + 1] = (byte) value;
    }

    private static void putInt(byte[] page, int at, int value) {
        putShort(page, at, value >>> 16);
        putShort(page, at + 2, value);
    }
}
