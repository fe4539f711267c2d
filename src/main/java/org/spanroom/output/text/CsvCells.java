package org.spanroom.output.text;

import java.nio.charset.StandardCharsets;
import org.spanroom.model.SpreadsheetText;
import org.spanroom.output.table.ByteBlock;
import org.spanroom.output.table.Row;

/** Puts cells as comma-separated values, quoted only where RFC 4180 asks for it. */
final class CsvCells {
    private final ByteBlock block;
    private final boolean guarded;

    /**
     * Puts cells into a block.
     *
     * @param guarded whether a text that a spreadsheet would run as a formula gets an apostrophe
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
        if (guarded && SpreadsheetText.mayBeFormula(bytes, start, length)) {
            String text = new String(bytes, start, length, StandardCharsets.UTF_8);
            byte[] other = SpreadsheetText.guarded(text).getBytes(StandardCharsets.UTF_8);
            text(other, 0, other.length);
        } else {
            text(bytes, start, length);
        }
    }

    private void text(byte[] utf8, int start, int length) {
        if (!mustBeQuoted(utf8, start, length)) {
            block.bytes(utf8, start, length);
            return;
        }
        block.octet('"');
        for (int i = start; i < start + length; i++) {
            if (utf8[i] == '"') {
                block.octet('"');
            }
            block.octet(utf8[i]);
        }
        block.octet('"');
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
