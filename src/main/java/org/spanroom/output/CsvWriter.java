package org.spanroom.output;

import java.nio.file.Path;
import java.util.regex.Pattern;

/**
 * Writes a table as comma-separated values: RFC 4180 with its line ends CR LF, UTF-8 without a byte-order mark, one header
 * line, points as decimal marks whatever the locale. Shapes are left out.
 *
 * <p>A text that a spreadsheet would run as a formula (it begins with {@code = + - @}, also as full-width signs, tab or a line break) gets an
 * apostrophe in front, unless it is a plain number. A cell is quoted only where RFC 4180 asks for it.
 */
public final class CsvWriter<R> implements RowWriter<R> {
    private static final Pattern PLAIN_NUMBER = Pattern.compile("[+-]?\\d{1,30}(\\.\\d{1,30})?");

    private final Table<R> table;
    private final ByteSink out;
    private final Cells cells = new Cells();

    public CsvWriter(Path file, Table<R> table) {
        this.table = table;
        this.out = new ByteSink(file);
        table.columns().forEach(column -> cells.text(column.name()));
        endLine();
    }

    @Override
    public void write(R row) {
        table.putCells(row, cells);
        endLine();
    }

    @Override
    public void close() {
        out.close();
    }

    private void endLine() {
        out.octet('\r');
        out.octet('\n');
        cells.atLineStart = true;
    }

    /** Puts cells with the commas between them. */
    private final class Cells implements CellSink {
        private boolean atLineStart = true;

        @Override
        public void empty() {
            separate();
        }

        @Override
        public void text(String text) {
            separate();
            String harmless = isFormula(text) ? "'" + text : text;
            if (mustBeQuoted(harmless)) {
                out.octet('"');
                out.text(harmless.replace("\"", "\"\""));
                out.octet('"');
            } else {
                out.text(harmless);
            }
        }

        @Override
        public void integer(long value) {
            separate();
            out.integer(value);
        }

        @Override
        public void real(double value, int decimals) {
            separate();
            out.decimal(value, decimals);
        }

        @Override
        public void flag(boolean value) {
            separate();
            out.text(value ? "true" : "false");
        }

        private void separate() {
            if (!atLineStart) {
                out.octet(',');
            }
            atLineStart = false;
        }
    }

    private static boolean isFormula(String text) {
        return switch (text.charAt(0)) {
            case '=', '@', '\t', '\r', '\n', '\uFF1D', '\uFF0B', '\uFF0D', '\uFF20' -> true;
            case '+', '-' -> !PLAIN_NUMBER.matcher(text).matches();
            default -> false;
        };
    }

    private static boolean mustBeQuoted(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == ',' || c == '"' || c == '\n' || c == '\r') {
                return true;
            }
        }
        return false;
    }
}
