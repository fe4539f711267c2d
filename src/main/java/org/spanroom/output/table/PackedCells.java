package org.spanroom.output.table;

import java.nio.charset.StandardCharsets;

/** The cells of one row, packed: a number for each, 0 for an empty one. For one thread. */
final class PackedCells implements CellSink {
    /** First number of a text or a number that follows as it is. */
    static final int AS_IT_IS = 1;

    static final int FIRST_VALUE = 2;

    /** Numbers up to this many units of their last digit are packed as whole units, which give the same digits again. */
    private static final double MOST_UNITS = 1L << 49;

    private static final double[] POWERS_OF_TEN = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9};

    private final PackedTexts texts;
    private final ByteBlock row = new ByteBlock();

    /** @param texts numbers for the texts of all rows */
    PackedCells(PackedTexts texts) {
        this.texts = texts;
    }

    void clear() {
        row.clear();
    }

    /** Returns the bytes of the cells put so far. */
    ByteBlock bytes() {
        return row;
    }

    @Override
    public void empty() {
        row.octet(0);
    }

    @Override
    public void text(String text) {
        int number = texts.number(text);
        if (number == PackedTexts.NONE) {
            byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
            row.octet(AS_IT_IS);
            row.varint(utf8.length);
            row.bytes(utf8);
        } else {
            row.varint(number + FIRST_VALUE);
        }
    }

    @Override
    public void integer(long value) {
        whole(value);
    }

    @Override
    public void real(double value, int decimals) {
        double units = Math.abs(value) * POWERS_OF_TEN[decimals];
        if (units < MOST_UNITS) {
            long rounded = Math.round(units);
            whole(value < 0 ? -rounded : rounded);
        } else {
            row.octet(AS_IT_IS);
            row.littleDouble(value);
        }
    }

    @Override
    public void flag(boolean value) {
        row.octet(value ? FIRST_VALUE + 1 : FIRST_VALUE);
    }

    private void whole(long value) {
        if (Math.abs(value) >= 1L << 61 || value == Long.MIN_VALUE) {
            row.octet(AS_IT_IS);
            row.littleLong(value);
        } else {
            row.varint(((value << 1) ^ (value >> 63)) + FIRST_VALUE);
        }
    }
}
