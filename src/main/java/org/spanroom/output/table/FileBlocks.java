package org.spanroom.output.table;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import org.spanroom.output.folder.OutputException;

/**
 * Blocks of packed rows in a temporary file. On Unix the file has no name, so a killed program leaves nothing behind; elsewhere it has one until it is
 * closed. Reading a row back is much faster than making it again, as long as the file stays in the system's page cache.
 */
final class FileBlocks implements RowBlocks {
    private final Path file;
    private final FileChannel channel;
    private volatile boolean broken;

    private FileBlocks(Path file, FileChannel channel) {
        this.file = file;
        this.channel = channel;
    }

    /**
     * Begins a file.
     *
     * @param file path of a file that must not exist yet; Unix removes the name at once, other systems when the file is closed
     * @throws IOException if the file cannot be made
     */
    static FileBlocks begin(Path file) throws IOException {
        return new FileBlocks(
                file,
                FileChannel.open(
                        file,
                        StandardOpenOption.CREATE_NEW,
                        StandardOpenOption.READ,
                        StandardOpenOption.WRITE,
                        StandardOpenOption.DELETE_ON_CLOSE));
    }

    /** A full disk does not end the run: the rows can be made again. If the results do not fit either, writing them reports it. */
    @Override
    public byte[] keep(int number, byte[] block) {
        if (broken) {
            return block;
        }
        try {
            ByteBuffer bytes = ByteBuffer.wrap(block);
            long at = (long) number << BLOCK_BITS;
            while (bytes.hasRemaining()) {
                at += channel.write(bytes, at);
            }
        } catch (IOException failure) {
            broken = true;
            close();
        }
        return block;
    }

    @Override
    public boolean isBroken() {
        return broken;
    }

    @Override
    public Reading newReading() {
        return new FromFile();
    }

    @Override
    public void close() {
        try {
            channel.close();
        } catch (IOException failure) {
            // The results do not include this file.
            broken = true;
        }
    }

    private final class FromFile implements Reading {
        /** Most rows are smaller. */
        private static final int FIRST_BYTES = 256;

        private static final int LONGEST_LENGTH_BYTES = 5;

        private byte[] bytes = new byte[FIRST_BYTES];

        @Override
        public void prefetch(int[] places) {
            // Each row is read by itself.
        }

        @Override
        public void go(int place) {
            long begin = (long) RowBlocks.blockOf(place) << BLOCK_BITS;
            int start = RowBlocks.startOf(place);
            int first = Math.min(FIRST_BYTES, BLOCK_BYTES - start);
            read(begin + start, 0, first);
            int whole = length();
            if (whole > first) {
                if (whole > bytes.length) {
                    bytes = Arrays.copyOf(bytes, whole);
                }
                read(begin + start + first, first, whole);
            }
        }

        /** Returns how many bytes a row takes, with its length in front. */
        private int length() {
            int length = 0;
            for (int i = 0; i < LONGEST_LENGTH_BYTES; i++) {
                length |= (bytes[i] & 0x7F) << (7 * i);
                if (bytes[i] >= 0) {
                    return length + i + 1;
                }
            }
            throw new IllegalStateException("row without a length in " + file);
        }

        private void read(long from, int begin, int end) {
            try {
                ByteBuffer into = ByteBuffer.wrap(bytes, begin, end - begin);
                long at = from;
                while (into.hasRemaining()) {
                    int got = channel.read(into, at);
                    if (got < 0) {
                        throw new EOFException("packed rows end too soon");
                    }
                    at += got;
                }
            } catch (IOException failure) {
                throw new OutputException(
                        file,
                        "rows in this temporary file cannot be read back (" + failure + ")",
                        "Check the disk, or give Java more memory so that they stay there: java -Xmx... -jar spanroom.jar ...",
                        failure);
            }
        }

        @Override
        public byte[] bytes() {
            return bytes;
        }

        @Override
        public int at() {
            return 0;
        }
    }
}
