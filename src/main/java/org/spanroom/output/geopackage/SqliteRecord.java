package org.spanroom.output.geopackage;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.spanroom.output.table.ByteBlock;

/**
 * One row in SQLite's record format: a header of serial types, then the values ("Database File Format", section 2.1, on
 * sqlite.org, from memory). Cleared and filled again for each row.
 */
final class SqliteRecord {
    private static final int MOST_VARINT_BYTES = 9;
    private static final int REAL = 7;
    private static final long MOST_WHOLE = 1L << 47;

    private final byte[] header = new byte[MOST_VARINT_BYTES];
    private byte[] types = new byte[256];
    private int typesUsed;
    private byte[] values = new byte[4096];
    private int valuesUsed;

    void clear() {
        typesUsed = 0;
        valuesUsed = 0;
    }

    /** Adds NULL; also what stands for the row's number in its column. */
    void nothing() {
        type(0);
    }

    void integer(long value) {
        if (value == 0 || value == 1) {
            type(8 + value);
            return;
        }
        int bits = 64 - Long.numberOfLeadingZeros(value < 0 ? ~value : value) + 1;
        int bytes = bits <= 32 ? (bits + 7) / 8 : bits <= 48 ? 6 : 8;
        type(bytes <= 4 ? bytes : bytes == 6 ? 5 : 6);
        bigEndian(value, bytes);
    }

    /** Adds a number to a column of type DOUBLE; a whole one is stored as such, as SQLite itself does to save space. */
    void real(double value) {
        long whole = (long) value;
        if (whole == value && Math.abs(whole) < MOST_WHOLE) {
            integer(whole);
            return;
        }
        type(REAL);
        bigEndian(Double.doubleToRawLongBits(value), 8);
    }

    void text(String text) {
        int length = text.length();
        needValues(length);
        int at = valuesUsed;
        int i = 0;
        for (; i < length && text.charAt(i) < 0x80; i++) {
            values[at++] = (byte) text.charAt(i);
        }
        if (i == length) {
            type(13 + 2L * length);
            valuesUsed = at;
        } else {
            byte[] encoded = text.getBytes(StandardCharsets.UTF_8);
            type(13 + 2L * encoded.length);
            bytes(encoded, 0, encoded.length);
        }
    }

    /** Adds a text that is in UTF-8 already. */
    void text(byte[] utf8, int from, int length) {
        type(13 + 2L * length);
        bytes(utf8, from, length);
    }

    void blob(byte[] blob) {
        type(12 + 2L * blob.length);
        bytes(blob, 0, blob.length);
    }

    /** Adds the record to a block, as it stands in a file. */
    void copyTo(ByteBlock block) {
        int end = varint(headerBytes(), header, 0);
        block.bytes(header, 0, end);
        block.bytes(types, 0, typesUsed);
        block.bytes(values, 0, valuesUsed);
    }

    /**
     * Writes a number that is not negative in SQLite's variable length, of at most eight groups of seven bits.
     *
     * @return the place after its last byte
     */
    static int varint(long value, byte[] into, int at) {
        int groups = varintBytes(value);
        for (int group = groups - 1; group >= 0; group--) {
            long bits = (value >>> (7 * (groups - 1 - group))) & 0x7F;
            into[at + group] = (byte) (group == groups - 1 ? bits : bits | 0x80);
        }
        return at + groups;
    }

    static int varintBytes(long value) {
        int groups = 1;
        for (long rest = value >>> 7; rest != 0; rest >>>= 7) {
            groups++;
        }
        if (groups >= MOST_VARINT_BYTES) {
            throw new IllegalArgumentException("value must be < 2^56, was " + value);
        }
        return groups;
    }

    /** Returns the size of the header, which counts its own first number. */
    private int headerBytes() {
        return typesUsed + varintBytes(typesUsed + varintBytes(typesUsed + 1L));
    }

    private void type(long serialType) {
        if (types.length - typesUsed < MOST_VARINT_BYTES) {
            types = Arrays.copyOf(types, types.length * 2);
        }
        typesUsed = varint(serialType, types, typesUsed);
    }

    private void bigEndian(long value, int bytes) {
        needValues(bytes);
        for (int shift = 8 * (bytes - 1); shift >= 0; shift -= 8) {
            values[valuesUsed++] = (byte) (value >>> shift);
        }
    }

    private void bytes(byte[] source, int from, int length) {
        needValues(length);
        System.arraycopy(source, from, values, valuesUsed, length);
        valuesUsed += length;
    }

    private void needValues(int bytes) {
        if (values.length - valuesUsed < bytes) {
            values = Arrays.copyOf(values, Math.max(values.length * 2, valuesUsed + bytes));
        }
    }
}
