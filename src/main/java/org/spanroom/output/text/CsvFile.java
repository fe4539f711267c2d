package org.spanroom.output.text;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.spanroom.output.table.ByteBlock;
import org.spanroom.output.table.ByteSink;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Row;
import org.spanroom.output.table.Table;
import org.spanroom.output.table.TableFile;

/**
 * A table as comma-separated values: RFC 4180 with its line ends CR LF, UTF-8 without a byte-order mark, one header line, points
 * as decimal marks whatever the locale. Shapes are left out.
 *
 * <p>A text that a spreadsheet would run as a formula (it begins with {@code = + - @}, also as full-width signs, tab or a line break) gets an
 * apostrophe in front, unless it is a plain number. A cell is quoted only where RFC 4180 asks for it.
 */
public final class CsvFile implements TableFile {
    private static final Pattern PLAIN_NUMBER = Pattern.compile("[+-]?\\d{1,30}(\\.\\d{1,30})?");

    private static final String FULL_WIDTH = "\uFF1D\uFF0B\uFF0D\uFF20";

    private final ByteSink out;

    public CsvFile(Path file, Table<?> table) {
        out = new ByteSink(file);
        List<String> names = table.columns().stream().map(Column::name).toList();
        byte[] header = (String.join(",", names) + "\r\n").getBytes(StandardCharsets.US_ASCII);
        out.bytes(header, 0, header.length);
    }

    @Override
    public RowBatch newBatch() {
        return new Lines();
    }

    @Override
    public void close() {
        out.close();
    }

    private final class Lines implements RowBatch {
        private final ByteBlock block = new ByteBlock(1 << 16);

        @Override
        public void add(Row<?> row) {
            for (int column = 0; column < row.size(); column++) {
                if (column > 0) {
                    block.octet(',');
                }
                cell(row, column);
            }
            block.octet('\r');
            block.octet('\n');
        }

        @Override
        public void append() {
            out.take(block);
        }

        private void cell(Row<?> row, int column) {
            switch (row.cell(column)) {
                case TEXT -> text(row, column);
                case INTEGER, REAL -> {
                    int start = row.start(column);
                    block.bytes(row.bytes(), start, row.length(column));
                }
                case FLAG -> block.text(row.flag(column) ? "true" : "false");
                default -> {
                    // nothing stands between the commas
                }
            }
        }

        private void text(Row<?> row, int column) {
            int start = row.start(column);
            int length = row.length(column);
            byte[] bytes = row.bytes();
            boolean formula = isFormula(bytes, start, length);
            if (!mustBeQuoted(bytes, start, length)) {
                if (formula) {
                    block.octet('\'');
                }
                block.bytes(bytes, start, length);
                return;
            }
            block.octet('"');
            if (formula) {
                block.octet('\'');
            }
            for (int i = start; i < start + length; i++) {
                if (bytes[i] == '"') {
                    block.octet('"');
                }
                block.octet(bytes[i]);
            }
            block.octet('"');
        }
    }

    private static boolean isFormula(byte[] utf8, int start, int length) {
        return switch (utf8[start]) {
            case '=', '@', '\t', '\r', '\n' -> true;
            // the first byte of full-width signs, and of much else
            case (byte) 0xEF ->
                FULL_WIDTH.indexOf(new String(utf8, start, length, StandardCharsets.UTF_8).charAt(0)) >= 0;
            case '+', '-' ->
                !PLAIN_NUMBER
                        .matcher(new String(utf8, start, length, StandardCharsets.UTF_8))
                        .matches();
            default -> false;
        };
    }

    private static boolean mustBeQuoted(byte[] utf8, int start, int length) {
        for (int i = start; i < start + length; i++) {
            byte c = utf8[i];
            if (c == ',' || c == '"' || c == '\n' || c == '\r') {
                return true;
            }
        }
        return false;
    }
}
