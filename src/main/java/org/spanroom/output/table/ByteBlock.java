package org.spanroom.output.table;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Bytes being put together in memory: formats numbers and texts in place, without an object for each. For one thread. */
public final class ByteBlock {
    private byte[] array;
    private int used;

    public ByteBlock() {
        this(1 << 10);
    }

    public ByteBlock(int expectedBytes) {
        array = new byte[expectedBytes];
    }

    /** Returns the bytes put so far, and room behind them; another array may hold them after the next one is put. */
    public byte[] array() {
        return array;
    }

    public int size() {
        return used;
    }

    public void clear() {
        used = 0;
    }

    public void octet(int value) {
        need(1);
        array[used++] = (byte) value;
    }

    public void bytes(byte[] source) {
        bytes(source, 0, source.length);
    }

    public void bytes(byte[] source, int from, int length) {
        need(length);
        System.arraycopy(source, from, array, used, length);
        used += length;
    }

    public void blanks(int count) {
        need(count);
        Arrays.fill(array, used, used + count, (byte) ' ');
        used += count;
    }

    /** Puts a text in UTF-8. */
    public void text(String text) {
        int length = text.length();
        need(length);
        int at = used;
        int i = 0;
        for (; i < length && text.charAt(i) < 0x80; i++) {
            array[at++] = (byte) text.charAt(i);
        }
        if (i == length) {
            used = at;
        } else {
            bytes(text.getBytes(StandardCharsets.UTF_8));
        }
    }

    /** Puts a text in UTF-8, quoted where RFC 4180 asks for it. */
    public void quotedIfNeeded(byte[] utf8, int start, int length) {
        need(2 * length + 2);
        int at = used;
        boolean plain = true;
        for (int i = start; i < start + length; i++) {
            byte c = utf8[i];
            plain &= c != ',' && c != '"' && c != '\n' && c != '\r';
            array[at++] = c;
        }
        used = plain ? at : quoted(utf8, start, length);
    }

    private int quoted(byte[] utf8, int start, int length) {
        int at = used;
        array[at++] = '"';
        for (int i = start; i < start + length; i++) {
            if (utf8[i] == '"') {
                array[at++] = '"';
            }
            array[at++] = utf8[i];
        }
        array[at++] = '"';
        return at;
    }

    void integer(long value) {
        need(Decimals.MOST_BYTES);
        used = Decimals.format(value, array, used);
    }

    void units(long units, int decimals) {
        need(Decimals.MOST_BYTES);
        used = Decimals.formatUnits(units, decimals, array, used);
    }

    void decimal(double value, int decimals) {
        need(Decimals.MOST_BYTES);
        used = Decimals.format(value, decimals, array, used);
    }

    /** Puts a number without zeros at the end of its fraction. */
    public void shortDecimal(double value, int decimals) {
        need(Decimals.MOST_BYTES);
        used = Decimals.formatShort(value, decimals, array, used);
    }

    public void bigInt(int value) {
        need(4);
        for (int shift = 24; shift >= 0; shift -= 8) {
            array[used++] = (byte) (value >>> shift);
        }
    }

    public void littleInt(int value) {
        need(4);
        for (int shift = 0; shift < 32; shift += 8) {
            array[used++] = (byte) (value >>> shift);
        }
    }

    public void littleShort(int value) {
        octet(value);
        octet(value >>> 8);
    }

    public void littleDouble(double value) {
        littleLong(Double.doubleToLongBits(value));
    }

    public void littleLong(long value) {
        need(8);
        for (int shift = 0; shift < 64; shift += 8) {
            array[used++] = (byte) (value >>> shift);
        }
    }

    /** Puts a number in groups of seven bits, the lowest first, of which all but the last have the eighth bit set. */
    public void varint(long value) {
        need(10);
        long rest = value;
        while ((rest & ~0x7FL) != 0) {
            array[used++] = (byte) (rest | 0x80);
            rest >>>= 7;
        }
        array[used++] = (byte) rest;
    }

    private void need(int bytes) {
        if (array.length - used < bytes) {
            array = Arrays.copyOf(array, Math.max(2 * array.length, Math.addExact(used, bytes)));
        }
    }
}
