package org.spanroom.output.table;

import java.util.concurrent.atomic.AtomicInteger;
import org.spanroom.model.NearMemory;

/** Blocks of packed rows in memory. */
final class MemoryBlocks implements RowBlocks {
    /** What processors fetch at once; no result depends on it. */
    private static final int NEAR_BYTES = 64;

    private final byte[][] blocks = new byte[MOST_BLOCKS][];
    private final AtomicInteger begun = new AtomicInteger();

    @Override
    public int begin() {
        int number = begun.getAndIncrement();
        return number < MOST_BLOCKS ? number : NONE;
    }

    @Override
    public byte[] keep(int number, byte[] block) {
        blocks[number] = block;
        return new byte[BLOCK_BYTES];
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
        // The memory is free when nothing leads to this any more.
    }

    private final class InMemory implements Reading {
        private byte[] block = {};
        private int at;

        /** Rows in the order of a ranking lie all over the memory: a tight loop waits for many of them at once. */
        @Override
        public void bringNear(int[] places) {
            int sum = 0;
            for (int place : places) {
                byte[] of = blocks[RowBlocks.blockOf(place)];
                int from = RowBlocks.startOf(place);
                int to = Math.min(of.length, from + PackedRows.EXPECTED_ROW_BYTES);
                for (int i = from; i < to; i += NEAR_BYTES) {
                    sum += of[i];
                }
            }
            NearMemory.read(sum);
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
