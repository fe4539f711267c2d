package org.spanroom.output.sheet;

import java.util.List;

/** A row of a table on a page. */
public record SheetRow(List<SheetCell> cells) {
    public SheetRow {
        cells = List.copyOf(cells);
    }

    static SheetRow of(SheetCell... cells) {
        return new SheetRow(List.of(cells));
    }
}
