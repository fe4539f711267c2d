package org.spanroom.input.shapefile;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.Locale;
import org.spanroom.input.layer.FeatureFault;
import org.spanroom.input.layer.LayerFormat;

/**
 * The file beside a .dbf that holds the texts of its memo fields, each beginning at a block whose number the field has.
 *
 * <p>Three layouts, all from memory. dBASE III (.dbt): blocks of 512 bytes; a text ends before the byte 0x1A. dBASE IV (.dbt):
 * the block size at byte 20, little-endian; a text begins with FF FF 08 00 and its length with these eight bytes, little-endian. FoxPro
 * (.fpt): the block size at byte 6, big-endian; a text begins with its type, 1, and its length, both of four bytes and big-endian.
 * Whether a .dbt is of the third or the fourth version each text shows by its first bytes.
 *
 * <p>No length is believed: a text reaches to the end of the file at most and has at most a mebibyte, and all texts together may be
 * sixteen times the file, so that a small file cannot be read for hours by naming one text again and again.
 */
final class MemoFile implements Closeable {
    static final int LONGEST_TEXT = 1 << 20;

    private static final int DBASE_3_BLOCK = 512;
    private static final int DBASE_4_UNIT = 64;
    private static final int DBASE_3_VERSION = 0x83;
    private static final int DBASE_4_MARK = 0x0008FFFF;
    private static final int END_OF_TEXT = 0x1A;
    private static final int HEAD = 8;
    private static final int HEADER = 24;
    private static final int MOST_TIMES = 16;

    private final FileChannel channel;
    private final long size;
    private final boolean foxPro;
    private final int blockSize;
    private long bytesLeft;

    private MemoFile(FileChannel channel, boolean foxPro, int version) throws IOException {
        this.channel = channel;
        this.size = channel.size();
        this.foxPro = foxPro;
        this.bytesLeft = MOST_TIMES * (size + LONGEST_TEXT);
        this.blockSize = blockSize(version);
    }

    /**
     * Opens the file, whose ending identifies its layout.
     *
     * @param version the first byte of the table
     */
    static MemoFile open(Path file, int version) throws IOException {
        FileChannel channel = FileChannel.open(file, StandardOpenOption.READ);
        try {
            boolean foxPro = LayerFormat.ending(file).toLowerCase(Locale.ROOT).equals("fpt");
            return new MemoFile(channel, foxPro, version);
        } catch (IOException | RuntimeException e) {
            channel.close();
            throw e;
        }
    }

    private int blockSize(int version) throws IOException {
        ByteBuffer header = ByteBuffer.wrap(read(0, HEADER));
        if (foxPro) {
            return header.remaining() < HEAD
                    ? 0
                    : header.order(ByteOrder.BIG_ENDIAN).getShort(6) & 0xFFFF;
        }
        int stated = header.remaining() < HEADER
                ? 0
                : header.order(ByteOrder.LITTLE_ENDIAN).getShort(20) & 0xFFFF;
        return version == DBASE_3_VERSION || stated == 0 || stated % DBASE_4_UNIT != 0 ? DBASE_3_BLOCK : stated;
    }

    /**
     * Returns the bytes of a text; none for one that is no text but a picture or an object.
     *
     * @throws FeatureFault if it cannot be had, with the reason in words that all texts of one fault share
     */
    byte[] text(long block) throws IOException, FeatureFault {
        if (blockSize == 0) {
            throw FeatureFault.unreadable("the file with its texts has no block size");
        }
        long at = block * blockSize;
        if (block < 1 || block > size || at >= size) {
            throw FeatureFault.unreadable(
                    "texts are beyond the end of their file; it seems truncated or belongs to another table");
        }
        ByteBuffer head = ByteBuffer.wrap(read(at, HEAD));
        if (foxPro) {
            return foxProText(at, head.order(ByteOrder.BIG_ENDIAN));
        }
        head.order(ByteOrder.LITTLE_ENDIAN);
        boolean isDbase4 = head.remaining() == HEAD && head.getInt(0) == DBASE_4_MARK;
        return isDbase4 ? stated(at + HEAD, (head.getInt(4) & 0xFFFFFFFFL) - HEAD) : upToItsEnd(at);
    }

    private byte[] foxProText(long at, ByteBuffer head) throws IOException, FeatureFault {
        if (head.remaining() < HEAD) {
            throw cutOff();
        }
        return head.getInt(0) == 1 ? stated(at + HEAD, head.getInt(4) & 0xFFFFFFFFL) : new byte[0];
    }

    private byte[] stated(long at, long length) throws IOException, FeatureFault {
        if (length < 0 || length > size - at) {
            throw cutOff();
        }
        if (length > LONGEST_TEXT) {
            throw tooLong();
        }
        return counted(read(at, (int) length));
    }

    private byte[] upToItsEnd(long at) throws IOException, FeatureFault {
        byte[] text = {};
        for (int wanted = DBASE_3_BLOCK; ; wanted *= 4) {
            byte[] more = counted(read(at, wanted));
            for (int i = text.length; i < more.length; i++) {
                if (more[i] == END_OF_TEXT) {
                    return Arrays.copyOf(more, i);
                }
            }
            if (more.length < wanted) {
                throw cutOff();
            }
            if (wanted > LONGEST_TEXT) {
                throw tooLong();
            }
            text = more;
        }
    }

    private byte[] counted(byte[] bytes) throws FeatureFault {
        bytesLeft -= bytes.length;
        if (bytesLeft < 0) {
            throw FeatureFault.unreadable("the same texts are referenced repeatedly");
        }
        return bytes;
    }

    private static FeatureFault cutOff() {
        return FeatureFault.unreadable("texts extend beyond the end of their file; it seems truncated or damaged");
    }

    private static FeatureFault tooLong() {
        return FeatureFault.unreadable("texts are longer than " + LONGEST_TEXT + " bytes");
    }

    /** Returns up to this many bytes, fewer at the end of the file. */
    private byte[] read(long at, int length) throws IOException {
        byte[] bytes = new byte[(int) Math.min(length, Math.max(0, size - at))];
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        while (buffer.hasRemaining() && channel.read(buffer, at + buffer.position()) >= 0) {
            // Reads on.
        }
        return buffer.hasRemaining() ? Arrays.copyOf(bytes, buffer.position()) : bytes;
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
