package org.spanroom.output;

import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;

/**
 * The attribute half of a Shapefile: a dBASE III table in UTF-8.
 *
 * <p>Fields of this format have one width for all rows, which nobody knows before the last row. So the cells go to a file
 * beside the table first, and the table is written when it closes, each field as wide as its longest cell. A text of more
 * than 254 bytes is cut after its last whole character that fits.
 *
 * <p>Layout: dBASE III field descriptors of 32 bytes (name, type, width, decimals); types C for text, N for numbers, L for
 * flags; blanks are empty cells.
 */
final class DbfFile implements CellSink, AutoCloseable {
    private static final int MOST_TEXT_BYTES = 254;
    /** Readers take whole numbers of up to nine digits for 32-bit ones; a fixed least width keeps the type stable. */
    private static final int LEAST_INTEGER_BYTES = 9;

    private static final int MOST_FIELDS = 255;

    private final Path file;
    private final Path spoolFile;
    private final ByteSink spool;
    private final List<Field> fields;
    private final LocalDate writtenOn;
    private final long mostBytes;
    private final byte[] digits = new byte[Decimals.MOST_BYTES];
    private int next;
    private int rows;
    private long cutTexts;

    /** A field of the table; its width grows with the cells. */
    private static final class Field {
        private final String name;
        private final Column.Type type;
        private final int decimals;
        private int width;

        Field(Column<?> column) {
            name = column.shortName();
            type = column.type();
            decimals = column.decimals();
            width = type == Column.Type.INTEGER ? LEAST_INTEGER_BYTES : decimals > 0 ? decimals + 2 : 1;
        }

        char code() {
            return switch (type) {
                case TEXT -> 'C';
                case INTEGER, REAL -> 'N';
                case FLAG -> 'L';
            };
        }
    }

    DbfFile(Path file, Table<?> table, LocalDate writtenOn, long mostBytes) {
        if (table.columns().size() > MOST_FIELDS) {
            throw new FormatLimitException(file, "a Shapefile holds at most " + MOST_FIELDS + " columns");
        }
        this.file = file;
        this.spoolFile = file.resolveSibling(file.getFileName() + ".cells");
        this.spool = new ByteSink(spoolFile);
        this.fields = table.columns().stream().map(Field::new).toList();
        this.writtenOn = writtenOn;
        this.mostBytes = mostBytes;
    }

    /** Counts a row whose cells have all been put. */
    void endRow() {
        rows++;
        next = 0;
    }

    /** Returns how many texts did not fit. */
    long cutTexts() {
        return cutTexts;
    }

    @Override
    public void empty() {
        next++;
        spool.octet(0);
    }

    @Override
    public void text(String text) {
        byte[] encoded = text.getBytes(StandardCharsets.UTF_8);
        int length = encoded.length;
        if (length > MOST_TEXT_BYTES) {
            cutTexts++;
            length = MOST_TEXT_BYTES;
            while ((encoded[length] & 0xC0) == 0x80) {
                length--;
            }
        }
        cell(encoded, length);
    }

    @Override
    public void integer(long value) {
        cell(digits, Decimals.format(value, digits, 0));
    }

    @Override
    public void real(double value, int decimals) {
        cell(digits, Decimals.format(value, decimals, digits, 0));
    }

    @Override
    public void flag(boolean value) {
        digits[0] = (byte) (value ? 'T' : 'F');
        cell(digits, 1);
    }

    private void cell(byte[] bytes, int length) {
        Field field = fields.get(next++);
        field.width = Math.max(field.width, length);
        spool.octet(length);
        spool.bytes(bytes, 0, length);
    }

    @Override
    public void close() {
        spool.close();
        int recordBytes = 1 + fields.stream().mapToInt(field -> field.width).sum();
        int headerBytes = 32 + 32 * fields.size() + 1;
        if (headerBytes + (long) rows * recordBytes > mostBytes) {
            throw new FormatLimitException(file, "a Shapefile holds at most 2 GB of attributes");
        }
        try (var cells = new DataInputStream(new BufferedInputStream(Files.newInputStream(spoolFile), 1 << 16));
                var out = new ByteSink(file)) {
            header(out, headerBytes, recordBytes);
            for (int row = 0; row < rows; row++) {
                record(cells, out);
            }
            out.octet(0x1A);
        } catch (IOException failure) {
            throw OutputException.of(file, failure);
        }
        deleteSpool();
    }

    private void header(ByteSink out, int headerBytes, int recordBytes) {
        out.octet(3);
        out.octet(writtenOn.getYear() - 1900);
        out.octet(writtenOn.getMonthValue());
        out.octet(writtenOn.getDayOfMonth());
        out.littleInt(rows);
        out.littleShort(headerBytes);
        out.littleShort(recordBytes);
        out.bytes(new byte[20], 0, 20);
        for (Field field : fields) {
            byte[] descriptor = new byte[32];
            byte[] name = field.name.getBytes(StandardCharsets.US_ASCII);
            System.arraycopy(name, 0, descriptor, 0, name.length);
            descriptor[11] = (byte) field.code();
            descriptor[16] = (byte) field.width;
            descriptor[17] = (byte) field.decimals;
            out.bytes(descriptor, 0, descriptor.length);
        }
        out.octet(0x0D);
    }

    private void record(DataInputStream cells, ByteSink out) throws IOException {
        byte[] cell = new byte[MOST_TEXT_BYTES];
        out.octet(' ');
        for (int i = 0; i < fields.size(); i++) {
            Field field = fields.get(i);
            int length = cells.readUnsignedByte();
            cells.readFully(cell, 0, length);
            int blanks = field.width - length;
            boolean isNumber = field.code() == 'N';
            out.blanks(isNumber ? blanks : 0);
            out.bytes(cell, 0, length);
            out.blanks(isNumber ? 0 : blanks);
        }
    }

    private void deleteSpool() {
        try {
            Files.deleteIfExists(spoolFile);
        } catch (IOException failure) {
            throw OutputException.of(spoolFile, failure);
        }
    }
}
