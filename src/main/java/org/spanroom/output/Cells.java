package org.spanroom.output;

import org.jspecify.annotations.Nullable;
import org.spanroom.output.table.Column;

/** Cells of comma-separated values, read back as what was written. */
final class Cells {
    private Cells() {}

    /**
     * Returns a cell's value: String, Long, Double or Boolean; null where it is empty.
     *
     * @throws NumberFormatException if it is no number and its column has numbers
     */
    static @Nullable Object value(String cell, Column.Type type) {
        if (cell.isEmpty()) {
            return null;
        }
        return switch (type) {
            case TEXT -> cell;
            case INTEGER -> Long.valueOf(cell);
            case REAL -> Double.valueOf(cell);
            case FLAG -> Boolean.valueOf(cell);
        };
    }
}
