package org.spanroom.output.table;

import org.spanroom.output.table.Row.Cell;

/**
 * The cells of a row as comma-separated values, quoted only where RFC 4180 asks for it: made once for all files that hold them. A table whose
 * columns are the first of another's has the first bytes of its line. For one thread.
 */
final class CsvLine {
    private static final byte[] TRUE = {'t', 'r', 'u', 'e'};
    private static final byte[] FALSE = {'f', 'a', 'l', 's', 'e'};

    private final ByteBlock line = new ByteBlock();
    private final int[] ends;
    private int made;

    CsvLine(int columns) {
        ends = new int[columns];
    }

    void clear() {
        line.clear();
        made = 0;
    }

    byte[] bytes() {
        return line.array();
    }

    /** Returns how many bytes the first cells of a row take with the commas between them. */
    int length(Row<?> row, int cells) {
        for (; made < cells; made++) {
            if (made > 0) {
                line.octet(',');
            }
            cell(row, made);
            ends[made] = line.size();
        }
        return cells == 0 ? 0 : ends[cells - 1];
    }

    private void cell(Row<?> row, int column) {
        Cell cell = row.cell(column);
        if (cell == Cell.TEXT) {
            line.quotedIfNeeded(row.bytes(), row.start(column), row.length(column));
        } else if (cell == Cell.INTEGER || cell == Cell.REAL) {
            row.putDigits(column, line);
        } else if (cell == Cell.FLAG) {
            line.bytes(row.flag(column) ? TRUE : FALSE);
        }
    }
}
