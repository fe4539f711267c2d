package org.spanroom.output.table;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.spanroom.output.folder.OutputException;

/** Bytes on their way to a file, handed to the system in large pieces. */
public final class ByteSink implements AutoCloseable {
    private static final int BUFFER_BYTES = 1 << 16;

    private final Path file;
    private final OutputStream out;
    private final byte[] buffer = new byte[BUFFER_BYTES];
    private int used;
    private long flushed;

    /** Creates the file, which must not exist. */
    public ByteSink(Path file) {
        this(file, StandardOpenOption.CREATE_NEW);
    }

    /** Returns a sink that adds to the end of a file, also if others have added to it between two flushes. */
    public static ByteSink appending(Path file) {
        return new ByteSink(file, StandardOpenOption.APPEND);
    }

    private ByteSink(Path file, OpenOption option) {
        this.file = file;
        try {
            out = Files.newOutputStream(file, StandardOpenOption.WRITE, option);
        } catch (IOException failure) {
            throw OutputException.of(file, failure);
        }
    }

    /** Returns how many bytes have been put so far. */
    public long position() {
        return flushed + used;
    }

    public void bytes(byte[] source, int from, int length) {
        if (BUFFER_BYTES - used < length) {
            flush();
        }
        if (length > BUFFER_BYTES) {
            writeThrough(source, from, length);
            return;
        }
        System.arraycopy(source, from, buffer, used, length);
        used += length;
    }

    /** Puts what a block holds, and empties it. */
    public void take(ByteBlock block) {
        bytes(block.array(), 0, block.size());
        block.clear();
    }

    /** Writes over the beginning of a file that is closed already. */
    public static void patch(Path file, byte[] beginning) {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            ByteBuffer rest = ByteBuffer.wrap(beginning);
            while (rest.hasRemaining()) {
                channel.write(rest, rest.position());
            }
        } catch (IOException failure) {
            throw OutputException.of(file, failure);
        }
    }

    @Override
    public void close() {
        try (out) {
            flush();
        } catch (IOException failure) {
            throw OutputException.of(file, failure);
        }
    }

    public void flush() {
        int length = used;
        used = 0;
        writeThrough(buffer, 0, length);
    }

    private void writeThrough(byte[] source, int from, int length) {
        try {
            out.write(source, from, length);
            flushed += length;
        } catch (IOException failure) {
            throw OutputException.of(file, failure);
        }
    }
}
