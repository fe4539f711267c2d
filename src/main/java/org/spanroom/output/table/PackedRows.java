package org.spanroom.output.table;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/**
 * Cells of many rows, packed as they are found and written later in another order: about a byte for a cell that is empty or small, so that
 * nothing needs to be calculated twice. A cell read back is written as the one that was packed would be.
 *
 * <p>First every row is packed, each once, by any thread into a filler of its own; then rows are read. Where the rows do not go into what can
 * be held, the store is {@link #isFull} and worthless.
 *
 * @param <R> what a row is packed from
 * @param <L> what the cells that are not packed are found from when the row is written
 */
public final class PackedRows<R, L> {
    /** About what a row of the spans takes. */
    public static final int EXPECTED_ROW_BYTES = 130;

    private static final int BLOCK_BITS = 20;
    private static final int MOST_BLOCKS = 1 << (Integer.SIZE - BLOCK_BITS);

    /** Numbers up to this many units of their last digit are packed as whole units, which give the same digits again. */
    private static final double MOST_UNITS = 1L << 49;

    private static final double[] POWERS_OF_TEN = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9};

    /** First number of a text or a number that follows as it is. */
    private static final int AS_IT_IS = 1;

    private static final int FIRST_VALUE = 2;

    private final List<Column<R>> columns;
    private final Column.Type[] types;
    private final int[] decimals;
    private final @Nullable Column<L>[] later;
    private final PackedTexts texts = new PackedTexts();
    private final int[] places;
    private final byte[][] blocks = new byte[MOST_BLOCKS][];
    private final AtomicInteger blocksUsed = new AtomicInteger();
    private volatile boolean full;

    /**
     * Prepares a store.
     *
     * @param columns all columns of the rows
     * @param later the columns whose cells are not packed, by name
     * @param rows how many there will be
     */
    @SuppressWarnings("unchecked") // an array of columns, which Java makes only raw
    public PackedRows(List<Column<R>> columns, Map<String, Column<L>> later, int rows) {
        this.columns = List.copyOf(columns);
        this.later = (Column<L>[]) new Column<?>[columns.size()];
        for (int i = 0; i < columns.size(); i++) {
            this.later[i] = later.get(columns.get(i).name());
        }
        types = columns.stream().map(Column::type).toArray(Column.Type[]::new);
        decimals = columns.stream().mapToInt(Column::decimals).toArray();
        places = new int[rows];
    }

    /** Returns whether not all rows could be held. */
    public boolean isFull() {
        return full;
    }

    /** Returns what one thread packs rows with. */
    public Filler newFiller() {
        return new Filler();
    }

    /** Returns what one thread reads rows with. */
    public Reader newReader() {
        return new Reader();
    }

    /** Packs rows, for one thread. */
    public final class Filler implements CellSink {
        private final ByteBlock row = new ByteBlock();
        private byte[] block = {};
        private int blockNumber;
        private int used;

        /** Packs the row of a number. */
        public void add(int number, R value) {
            row.clear();
            for (int i = 0; i < columns.size(); i++) {
                if (later[i] == null) {
                    columns.get(i).put(value, this);
                }
            }
            if (row.size() > block.length - used && !begin(row.size())) {
                return;
            }
            System.arraycopy(row.array(), 0, block, used, row.size());
            places[number] = (blockNumber << BLOCK_BITS) | used;
            used += row.size();
        }

        private boolean begin(int bytes) {
            blockNumber = blocksUsed.getAndIncrement();
            if (blockNumber >= MOST_BLOCKS || bytes > 1 << BLOCK_BITS) {
                full = true;
                return false;
            }
            block = new byte[1 << BLOCK_BITS];
            blocks[blockNumber] = block;
            used = 0;
            return true;
        }

        @Override
        public void empty() {
            row.octet(0);
        }

        @Override
        public void text(String text) {
            int number = texts.number(text);
            if (number == PackedTexts.NONE) {
                byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
                row.octet(AS_IT_IS);
                row.varint(utf8.length);
                row.bytes(utf8);
            } else {
                row.varint(number + FIRST_VALUE);
            }
        }

        @Override
        public void integer(long value) {
            whole(value);
        }

        @Override
        public void real(double value, int decimals) {
            double units = Math.abs(value) * POWERS_OF_TEN[decimals];
            if (units < MOST_UNITS) {
                long rounded = Math.round(units);
                whole(value < 0 ? -rounded : rounded);
            } else {
                row.octet(AS_IT_IS);
                row.littleDouble(value);
            }
        }

        @Override
        public void flag(boolean value) {
            row.octet(value ? FIRST_VALUE + 1 : FIRST_VALUE);
        }

        private void whole(long value) {
            if (Math.abs(value) >= 1L << 61 || value == Long.MIN_VALUE) {
                row.octet(AS_IT_IS);
                row.littleLong(value);
            } else {
                row.varint(((value << 1) ^ (value >> 63)) + FIRST_VALUE);
            }
        }
    }

    /** Reads rows, for one thread: one at a time. */
    public final class Reader {
        private final @Nullable String[] text = new String[columns.size()];
        private final long[] whole = new long[columns.size()];
        private final boolean[] asItIs = new boolean[columns.size()];
        private final boolean[] filled = new boolean[columns.size()];
        private byte[] block = {};
        private int at;

        /** Reads the row of a number. */
        public void read(int number) {
            block = blocks[places[number] >>> BLOCK_BITS];
            at = places[number] & ((1 << BLOCK_BITS) - 1);
            for (int i = 0; i < filled.length; i++) {
                if (later[i] == null) {
                    readCell(i);
                }
            }
        }

        private void readCell(int i) {
            long value = varint();
            filled[i] = value != 0;
            asItIs[i] = value == AS_IT_IS;
            if (value == AS_IT_IS) {
                readAsItIs(i);
            } else if (value != 0) {
                whole[i] = value - FIRST_VALUE;
            }
        }

        private void readAsItIs(int i) {
            if (types[i] == Column.Type.TEXT) {
                int length = (int) varint();
                text[i] = new String(block, at, length, StandardCharsets.UTF_8);
                at += length;
                return;
            }
            long bits = 0;
            for (int octet = 0; octet < Long.BYTES; octet++) {
                bits |= (block[at++] & 0xFFL) << (Byte.SIZE * octet);
            }
            whole[i] = bits;
        }

        private long varint() {
            byte first = block[at++];
            if (first >= 0) {
                return first;
            }
            long value = first & 0x7FL;
            for (int shift = 7; ; shift += 7) {
                byte octet = block[at++];
                value |= (octet & 0x7FL) << shift;
                if (octet >= 0) {
                    return value;
                }
            }
        }

        /**
         * Hands cells of the row that was read last to a writer.
         *
         * @param order the places of the wanted columns among all
         * @param found what cells that were not packed are found from
         */
        void put(int[] order, L found, CellSink sink) {
            for (int i : order) {
                Column<L> finding = later[i];
                if (finding != null) {
                    finding.put(found, sink);
                } else if (!filled[i]) {
                    sink.empty();
                } else if (asItIs[i]) {
                    putAsItIs(i, sink);
                } else {
                    putPacked(i, sink);
                }
            }
        }

        private void putPacked(int i, CellSink sink) {
            long packed = whole[i];
            switch (types[i]) {
                case TEXT -> sink.text(texts.text((int) packed));
                case INTEGER -> sink.integer(signed(packed));
                case REAL -> sink.units(signed(packed), decimals[i]);
                case FLAG -> sink.flag(packed != 0);
                default -> throw new IllegalStateException(types[i].toString());
            }
        }

        private void putAsItIs(int i, CellSink sink) {
            switch (types[i]) {
                case TEXT -> sink.text(String.valueOf(text[i]));
                case INTEGER -> sink.integer(whole[i]);
                case REAL -> sink.real(Double.longBitsToDouble(whole[i]), decimals[i]);
                default -> throw new IllegalStateException(types[i].toString());
            }
        }

        private static long signed(long packed) {
            return (packed >>> 1) ^ -(packed & 1);
        }
    }
}
