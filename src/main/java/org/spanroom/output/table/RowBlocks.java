package org.spanroom.output.table;

/**
 * Where packed rows are held: blocks of bytes of one size. First each block is filled by one thread and handed over; then, when no thread
 * fills any more, rows are read. Safe for use by several threads.
 */
interface RowBlocks extends AutoCloseable {
    /** Bits of a row's place inside its block. */
    int BLOCK_BITS = 20;

    int BLOCK_BYTES = 1 << BLOCK_BITS;

    /** Rows begin where these bits are 0, so that an int is enough for the places of gigabytes. */
    int ALIGNED_BITS = 2;

    int MOST_BLOCKS = 1 << (Integer.SIZE - BLOCK_BITS + ALIGNED_BITS);

    /**
     * Takes a block that is filled as far as it will be.
     *
     * @param number of the block, from 0, less than {@link #MOST_BLOCKS}; each is taken once
     * @return an array that may be filled next: the same one, or an empty one where this store keeps it
     */
    byte[] keep(int number, byte[] block);

    /** Returns whether a block that was handed over could not be held. */
    boolean isBroken();

    /** Returns what one thread reads rows with. */
    Reading newReading();

    /** Releases all rows. */
    @Override
    void close();

    /** Returns the place of a row as one number, not to be compared. */
    static int place(int block, int at) {
        return (block << (BLOCK_BITS - ALIGNED_BITS)) | (at >>> ALIGNED_BITS);
    }

    static int blockOf(int place) {
        return place >>> (BLOCK_BITS - ALIGNED_BITS);
    }

    /** Returns where in its block a row begins. */
    static int startOf(int place) {
        return (place << ALIGNED_BITS) & (BLOCK_BYTES - 1);
    }

    /** Returns the first place in a block, from this on, where a row may begin. */
    static int aligned(int at) {
        return ((at + (1 << ALIGNED_BITS) - 1) >>> ALIGNED_BITS) << ALIGNED_BITS;
    }

    /** Reads rows, for one thread. */
    interface Reading {
        /** Prepares for rows that will be read one after another. */
        void prefetch(int[] places);

        /** Goes to the row at a place: {@link #bytes} and {@link #at} are of this one from now on. */
        void go(int place);

        /** Returns an array that holds the row, not to be changed. */
        byte[] bytes();

        /** Returns where in the array the row begins. */
        int at();
    }
}
