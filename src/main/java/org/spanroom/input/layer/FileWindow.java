package org.spanroom.input.layer;

import java.io.Closeable;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.spanroom.model.Counted;

/** A window over a binary file that is read mostly forwards; it never allocates more than the file holds. */
public final class FileWindow implements Closeable {
    private static final int WINDOW = 1 << 18;

    private final FileChannel channel;
    private final long size;
    private ByteBuffer buffer = ByteBuffer.allocate(WINDOW).limit(0);
    private long start;
    private int filled;

    public FileWindow(Path file) throws IOException {
        channel = FileChannel.open(file, StandardOpenOption.READ);
        size = channel.size();
    }

    public long size() {
        return size;
    }

    /** Returns true if the file holds that many bytes at that position. */
    public boolean holds(long position, long length) {
        return position >= 0 && length >= 0 && position <= size && length <= size - position;
    }

    /**
     * Returns a buffer whose position and limit enclose the bytes requested. It is valid until the next call; its byte
     * order is as the last user left it.
     */
    public ByteBuffer at(long position, int length) throws IOException {
        if (!holds(position, length)) {
            throw new EOFException(
                    "the file ends at " + size + ", but must have " + Counted.of(length, "byte") + " at " + position);
        }
        if (position < start || position + length > start + filled) {
            fill(position, length);
        }
        int from = (int) (position - start);
        return buffer.limit(from + length).position(from);
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }

    private void fill(long position, int length) throws IOException {
        if (length > buffer.capacity() || (length <= WINDOW && buffer.capacity() > WINDOW)) {
            buffer = ByteBuffer.allocate(Math.max(WINDOW, length));
        }
        buffer.clear();
        filled = 0;
        start = position;
        while (buffer.hasRemaining()) {
            int count = channel.read(buffer, position + buffer.position());
            if (count < 0) {
                break;
            }
        }
        filled = buffer.position();
        if (filled < length) {
            throw new EOFException("the file became shorter while it was read");
        }
    }
}
