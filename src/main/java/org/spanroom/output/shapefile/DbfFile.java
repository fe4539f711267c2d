package org.spanroom.output.shapefile;

import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.table.ByteBlock;
import org.spanroom.output.table.ByteSink;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Row;
import org.spanroom.output.table.Table;
import org.spanroom.output.table.TableFile;

/**
 * The attribute half of a Shapefile: a dBASE III table in UTF-8.
 *
 * <p>Fields of this format have one width for all rows, which is not known before the last row. So the cells go to a file
 * beside the table first, and the table is written when it closes, each field as wide as its longest cell. A text of more
 * than 254 bytes is cut after its last whole character that fits.
 *
 * <p>Layout: dBASE III field descriptors of 32 bytes (name, type, width, decimals); types C for text, N for numbers, L for
 * flags; blanks are empty cells.
 */
final class DbfFile implements TableFile {
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
    private final int expectedRows;
    private final byte[] cell = new byte[MOST_TEXT_BYTES];
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

    DbfFile(Path file, Table<?> table, LocalDate writtenOn, long mostBytes, int expectedRows) {
        if (table.columns().size() > MOST_FIELDS) {
            throw new FormatLimitException(file, "a Shapefile holds at most " + MOST_FIELDS + " columns");
        }
        this.file = file;
        this.spoolFile = file.resolveSibling(file.getFileName() + ".cells");
        this.spool = new ByteSink(spoolFile);
        this.fields = table.columns().stream().map(Field::new).toList();
        this.writtenOn = writtenOn;
        this.mostBytes = mostBytes;
        this.expectedRows = expectedRows;
    }

    /** Returns how many texts did not fit. */
    long cutTexts() {
        return cutTexts;
    }

    @Override
    public RowBatch newBatch() {
        return new Cells();
    }

    private int recordBytes() {
        return 1 + fields.stream().mapToInt(field -> field.width).sum();
    }

    private int headerBytes() {
        return 32 + 32 * fields.size() + 1;
    }

    private void demandRoom() {
        if (headerBytes() + (long) Math.max(rows, expectedRows) * recordBytes() > mostBytes) {
            throw new FormatLimitException(file, "a Shapefile holds at most 2 GB of attributes");
        }
    }

    @Override
    public void close() {
        spool.close();
        demandRoom();
        try (var cells = new DataInputStream(new BufferedInputStream(Files.newInputStream(spoolFile), 1 << 16));
                var out = new ByteSink(file)) {
            var block = new ByteBlock(1 << 16);
            header(block);
            for (int row = 0; row < rows; row++) {
                record(cells, block);
                out.take(block);
            }
            block.octet(0x1A);
            out.take(block);
        } catch (IOException failure) {
            throw OutputException.of(file, failure);
        }
        deleteSpool();
    }

    private void header(ByteBlock out) {
        out.octet(3);
        out.octet(writtenOn.getYear() - 1900);
        out.octet(writtenOn.getMonthValue());
        out.octet(writtenOn.getDayOfMonth());
        out.littleInt(rows);
        out.littleShort(headerBytes());
        out.littleShort(recordBytes());
        out.bytes(new byte[20]);
        for (Field field : fields) {
            byte[] descriptor = new byte[32];
            byte[] name = field.name.getBytes(StandardCharsets.US_ASCII);
            System.arraycopy(name, 0, descriptor, 0, name.length);
            descriptor[11] = (byte) field.code();
            descriptor[16] = (byte) field.width;
            descriptor[17] = (byte) field.decimals;
            out.bytes(descriptor);
        }
        out.octet(0x0D);
    }

    private void record(DataInputStream cells, ByteBlock out) throws IOException {
        out.octet(' ');
        for (Field field : fields) {
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

    /** Cells of rows, each behind its length. */
    private final class Cells implements RowBatch {
        private final ByteBlock block = new ByteBlock(1 << 16);
        private final int[] widths = new int[fields.size()];
        private int batchRows;
        private int cut;

        @Override
        public void add(Row<?> row) {
            batchRows++;
            for (int column = 0; column < row.size(); column++) {
                switch (row.cell(column)) {
                    case TEXT -> {
                        int start = row.start(column);
                        put(column, row.bytes(), start, fitting(row.bytes(), start, row.length(column)));
                    }
                    case INTEGER, REAL -> {
                        int start = row.start(column);
                        put(column, row.bytes(), start, row.length(column));
                    }
                    case FLAG -> {
                        block.octet(1);
                        block.octet(row.flag(column) ? 'T' : 'F');
                    }
                    default -> block.octet(0);
                }
            }
        }

        @Override
        public void append() {
            for (int column = 0; column < widths.length; column++) {
                Field field = fields.get(column);
                field.width = Math.max(field.width, widths[column]);
                widths[column] = 0;
            }
            rows += batchRows;
            cutTexts += cut;
            batchRows = 0;
            cut = 0;
            demandRoom();
            spool.take(block);
        }

        /** Returns how many bytes of a text fit into a field. */
        private int fitting(byte[] utf8, int start, int length) {
            if (length <= MOST_TEXT_BYTES) {
                return length;
            }
            cut++;
            int fitting = MOST_TEXT_BYTES;
            while ((utf8[start + fitting] & 0xC0) == 0x80) {
                fitting--;
            }
            return fitting;
        }

        private void put(int column, byte[] bytes, int start, int length) {
            widths[column] = Math.max(widths[column], length);
            block.octet(length);
            block.bytes(bytes, start, length);
        }
    }
}
