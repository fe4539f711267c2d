package org.spanroom.output.text;

import java.nio.charset.StandardCharsets;
import org.spanroom.model.SpreadsheetText;
import org.spanroom.output.table.ByteBlock;
import org.spanroom.output.table.Row;

/** Puts cells as comma-separated values in which a text that a spreadsheet would run as a formula has an apostrophe. */
final class CsvCells {
    private final ByteBlock block;

    CsvCells(ByteBlock block) {
        this.block = block;
    }

    /** Puts all cells of a row, with commas between them. */
    void row(Row<?> row) {
        if (!row.mayHoldFormula()) {
            row.putCsv(block);
            return;
        }
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
        if (SpreadsheetText.mayBeFormula(bytes, start, length)) {
            String text = new String(bytes, start, length, StandardCharsets.UTF_8);
            byte[] other = SpreadsheetText.guarded(text).getBytes(StandardCharsets.UTF_8);
            block.quotedIfNeeded(other, 0, other.length);
        } else {
            block.quotedIfNeeded(bytes, start, length);
        }
    }
}
