package org.spanroom.output.text;

import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;
import org.spanroom.output.table.ByteBlock;
import org.spanroom.output.table.Row;

/** Puts cells as comma-separated values, quoted only where RFC 4180 asks for it. */
final class CsvCells {
    private static final Pattern PLAIN_NUMBER = Pattern.compile("[+-]?\\d{1,30}(\\.\\d{1,30})?");

    private static final String FULL_WIDTH = "\uFF1D\uFF0B\uFF0D\uFF20";

    private final ByteBlock block;
    private final boolean guarded;

    /**
     * Puts cells into a block.
     *
     * @param guarded whether a text that a spreadsheet would run as a formula gets an apostrophe in front
     */
    CsvCells(ByteBlock block, boolean guarded) {
        this.block = block;
        this.guarded = guarded;
    }

    /** Puts all cells of a row, with commas between them. */
    void row(Row<?> row) {
        for (int column = 0; column < row.size(); column++) {
            if (column > 0) {
                block.octet(',');
            }
            cell(row, column);
        }
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
                // an empty cell is nothing between two commas
            }
        }
    }

    private void text(Row<?> row, int column) {
        int start = row.start(column);
        int length = row.length(column);
        byte[] bytes = row.bytes();
        boolean formula = guarded && isFormula(bytes, start, length);
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

    static boolean isFormula(byte[] utf8, int start, int length) {
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
