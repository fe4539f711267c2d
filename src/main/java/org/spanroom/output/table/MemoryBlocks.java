package org.spanroom.output.table;

import java.util.Arrays;
import org.spanroom.model.Prefetch;

/** Blocks of packed rows in memory. */
final class MemoryBlocks implements RowBlocks {
    /** What processors fetch at once; no result depends on it. */
    private static final int CACHE_LINE_BYTES = 64;

    private static final byte[] NO_BYTES = {};

    private final byte[][] blocks = new byte[MOST_BLOCKS][];

    @Override
    public byte[] keep(int number, byte[] block) {
        blocks[number] = block;
        return NO_BYTES;
    }

    @Override
    public boolean isBroken() {
        return false;
    }

    @Override
    public Reading newReading() {
        return new InMemory();
    }

    @Override
    public void close() {
        // Other layers and their indexes are written after the spans, and need the memory.
        Arrays.fill(blocks, null);
    }

    private final class InMemory implements Reading {
        private byte[] block = {};
        private int at;

        /** Rows in the order of a ranking are scattered over the memory. */
        @Override
        public void prefetch(int[] places) {
            int sum = 0;
            for (int place : places) {
                byte[] of = blocks[RowBlocks.blockOf(place)];
                int from = RowBlocks.startOf(place);
                int to = Math.min(of.length, from + PackedRows.EXPECTED_ROW_BYTES);
                for (int i = from; i < to; i += CACHE_LINE_BYTES) {
                    sum += of[i];
                }
            }
            Prefetch.read(sum);
        }

        @Override
        public void go(int place) {
            block = blocks[RowBlocks.blockOf(place)];
            at = RowBlocks.startOf(place);
        }

        @Override
        public byte[] bytes() {
            return block;
        }

        @Override
        public int at() {
            return at;
        }
    }
}
