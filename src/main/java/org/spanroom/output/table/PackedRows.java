package org.spanroom.output.table;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/**
 * Cells of many rows, packed as they are found and written later in another order: about a byte for a cell that is empty or small, so that
 * nothing needs to be calculated twice. A cell read back is written as the one that was packed would be.
 *
 * <p>First every row is packed, each once, by any thread into a filler of its own; then rows are read. Where the rows do not go into what can
 * be held, the store {@linkplain #isIncomplete is incomplete} and worthless.
 *
 * @param <R> what a row is packed from
 * @param <L> what the cells that are not packed are found from when the row is written
 */
public final class PackedRows<R, L> implements AutoCloseable {
    /** About what a row of the spans takes: 117 bytes without a simulation and 159 with one, in the plant of short routes. */
    public static final int EXPECTED_ROW_BYTES = 130;

    /** The number of a block where there is none. */
    private static final int NONE = -1;

    private final List<Column<R>> columns;
    private final Column.Type[] types;
    private final int[] decimals;
    private final @Nullable Column<L>[] later;
    private final PackedTexts texts = new PackedTexts();
    private final int[] places;
    private final RowBlocks blocks;
    private final Queue<Filler> fillers = new ConcurrentLinkedQueue<>();
    private final AtomicInteger begun = new AtomicInteger();
    private volatile boolean full;
    private boolean ended;

    /**
     * Prepares a store in memory.
     *
     * @param columns all columns of the rows
     * @param later the columns whose cells are not packed, by name
     * @param rows how many there will be
     */
    public PackedRows(List<Column<R>> columns, Map<String, Column<L>> later, int rows) {
        this(columns, later, rows, new MemoryBlocks());
    }

    /**
     * Prepares a store in a file.
     *
     * @param file a name that no file has, in a folder with room for {@link #EXPECTED_ROW_BYTES} a row
     * @return as {@link #PackedRows}; empty where the file cannot be made
     */
    public static <R, L> Optional<PackedRows<R, L>> inFile(
            List<Column<R>> columns, Map<String, Column<L>> later, int rows, Path file) {
        try {
            return Optional.of(new PackedRows<>(columns, later, rows, FileBlocks.begin(file)));
        } catch (IOException failure) {
            return Optional.empty();
        }
    }

    @SuppressWarnings("unchecked") // an array of columns, which Java makes only raw
    PackedRows(List<Column<R>> columns, Map<String, Column<L>> later, int rows, RowBlocks blocks) {
        this.blocks = blocks;
        this.columns = List.copyOf(columns);
        this.later = (Column<L>[]) new Column<?>[columns.size()];
        for (int i = 0; i < columns.size(); i++) {
            this.later[i] = later.get(columns.get(i).name());
        }
        types = columns.stream().map(Column::type).toArray(Column.Type[]::new);
        decimals = columns.stream().mapToInt(Column::decimals).toArray();
        places = new int[rows];
    }

    /** Returns whether rows are missing, so that the store is worthless; known after {@link #end}. */
    public boolean isIncomplete() {
        return full || blocks.isBroken();
    }

    /** Returns what one thread packs rows with. */
    public Filler newFiller() {
        var filler = new Filler();
        fillers.add(filler);
        return filler;
    }

    /** To be called once all rows have been packed and no thread packs any more: from now on rows may be read. */
    public void end() {
        fillers.forEach(Filler::handOver);
        fillers.clear();
        ended = true;
        if (isIncomplete()) {
            // It will not be read, and its file must be gone before the folder is complete.
            close();
        }
    }

    /** Releases all rows. */
    @Override
    public void close() {
        blocks.close();
    }

    /** Returns what one thread reads rows with. */
    public Reader newReader() {
        return new Reader();
    }

    /** Packs rows, for one thread: each with its length before its cells. */
    public final class Filler {
        private final PackedCells row = new PackedCells(texts);
        private final ByteBlock length = new ByteBlock(Long.BYTES);
        private byte[] block = {};
        private int blockNumber = NONE;
        private int used;

        /** Packs the row of a number. */
        public void add(int number, R value) {
            if (isIncomplete()) {
                return;
            }
            row.clear();
            for (int i = 0; i < columns.size(); i++) {
                if (later[i] == null) {
                    columns.get(i).put(value, row);
                }
            }
            length.clear();
            length.varint(row.bytes().size());
            int bytes = length.size() + row.bytes().size();
            if (bytes > block.length - used && !begin(bytes)) {
                return;
            }
            places[number] = RowBlocks.place(blockNumber, used);
            put(length);
            put(row.bytes());
            used = RowBlocks.aligned(used);
        }

        private void put(ByteBlock part) {
            System.arraycopy(part.array(), 0, block, used, part.size());
            used += part.size();
        }

        private boolean begin(int bytes) {
            if (ended) {
                throw new IllegalStateException("a row was added after the last");
            }
            handOver();
            int next = bytes > RowBlocks.BLOCK_BYTES ? RowBlocks.MOST_BLOCKS : begun.getAndIncrement();
            if (next >= RowBlocks.MOST_BLOCKS) {
                full = true;
                return false;
            }
            blockNumber = next;
            if (block.length == 0) {
                block = new byte[RowBlocks.BLOCK_BYTES];
            }
            used = 0;
            return true;
        }

        private void handOver() {
            if (blockNumber != NONE) {
                block = blocks.keep(blockNumber, block);
                blockNumber = NONE;
            }
            used = block.length;
        }
    }

    /** Reads rows, for one thread: one at a time. */
    public final class Reader {
        private final @Nullable String[] text = new String[columns.size()];
        private final long[] whole = new long[columns.size()];
        private final boolean[] asItIs = new boolean[columns.size()];
        private final boolean[] filled = new boolean[columns.size()];
        private final RowBlocks.Reading reading = blocks.newReading();
        private byte[] block = {};
        private int at;

        /** Prepares for rows that will be read one after another. */
        public void prefetch(int[] numbers) {
            int[] of = new int[numbers.length];
            for (int i = 0; i < of.length; i++) {
                of[i] = places[numbers[i]];
            }
            reading.prefetch(of);
        }

        /** Reads the row of a number. */
        public void read(int number) {
            reading.go(places[number]);
            block = reading.bytes();
            at = reading.at();
            long length = varint();
            int start = at;
            for (int i = 0; i < filled.length; i++) {
                if (later[i] == null) {
                    readCell(i);
                }
            }
            if (at - start != length) {
                // A disk may give back other bytes than it took.
                throw new IllegalStateException("packed row " + number + " is damaged");
            }
        }

        private void readCell(int i) {
            long value = varint();
            filled[i] = value != 0;
            asItIs[i] = value == PackedCells.AS_IT_IS;
            if (value == PackedCells.AS_IT_IS) {
                readAsItIs(i);
            } else if (value != 0) {
                whole[i] = value - PackedCells.FIRST_VALUE;
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
