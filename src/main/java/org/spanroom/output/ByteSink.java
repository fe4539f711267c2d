package org.spanroom.output;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;

/** Bytes on their way to a new file: a buffer that formats numbers and texts in place, without an object for each. */
final class ByteSink implements AutoCloseable {
    private static final int BUFFER_BYTES = 1 << 16;

    private final Path file;
    private final OutputStream out;
    private final byte[] buffer = new byte[BUFFER_BYTES];
    private int used;
    private long flushed;

    /** Creates the file, which must not exist. */
    ByteSink(Path file) {
        this(file, StandardOpenOption.CREATE_NEW);
    }

    /** Returns a sink that adds to the end of a file, also if others have added to it between two flushes. */
    static ByteSink appending(Path file) {
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
    long position() {
        return flushed + used;
    }

    void octet(int value) {
        need(1);
        buffer[used++] = (byte) value;
    }

    void bytes(byte[] source, int from, int length) {
        if (length > BUFFER_BYTES) {
            flush();
            writeThrough(source, from, length);
            return;
        }
        need(length);
        System.arraycopy(source, from, buffer, used, length);
        used += length;
    }

    void blanks(int count) {
        need(count);
        Arrays.fill(buffer, used, used + count, (byte) ' ');
        used += count;
    }

    /** Puts a text in UTF-8. */
    void text(String text) {
        int length = text.length();
        if (length <= BUFFER_BYTES) {
            need(length);
            int at = used;
            int i = 0;
            for (; i < length && text.charAt(i) < 0x80; i++) {
                buffer[at++] = (byte) text.charAt(i);
            }
            if (i == length) {
                used = at;
                return;
            }
        }
        byte[] encoded = text.getBytes(StandardCharsets.UTF_8);
        bytes(encoded, 0, encoded.length);
    }

    void integer(long value) {
        need(Decimals.MOST_BYTES);
        used = Decimals.format(value, buffer, used);
    }

    void decimal(double value, int decimals) {
        need(Decimals.MOST_BYTES);
        used = Decimals.format(value, decimals, buffer, used);
    }

    /** Puts a number without zeros at the end of its fraction. */
    void shortDecimal(double value, int decimals) {
        need(Decimals.MOST_BYTES);
        used = Decimals.formatShort(value, decimals, buffer, used);
    }

    void bigInt(int value) {
        need(4);
        for (int shift = 24; shift >= 0; shift -= 8) {
            buffer[used++] = (byte) (value >>> shift);
        }
    }

    void littleInt(int value) {
        need(4);
        for (int shift = 0; shift < 32; shift += 8) {
            buffer[used++] = (byte) (value >>> shift);
        }
    }

    void littleShort(int value) {
        octet(value);
        octet(value >>> 8);
    }

    void littleDouble(double value) {
        need(8);
        long bits = Double.doubleToLongBits(value);
        for (int shift = 0; shift < 64; shift += 8) {
            buffer[used++] = (byte) (bits >>> shift);
        }
    }

    /** Writes over the beginning of a file that is closed already. */
    static void patch(Path file, byte[] beginning) {
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

    private void need(int bytes) {
        if (BUFFER_BYTES - used < bytes) {
            flush();
        }
    }

    void flush() {
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
