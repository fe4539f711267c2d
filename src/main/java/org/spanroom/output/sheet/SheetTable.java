package org.spanroom.output.sheet;

import java.util.List;

/**
 * A table on a page.
 *
 * @param style a class of the page's styles, which sets the widths of its columns
 * @param heads a word for each column
 * @param more what of it is on another page, in one phrase; empty where it is whole
 */
public record SheetTable(String title, String style, List<String> heads, List<SheetRow> rows, String more) {
    public SheetTable {
        heads = List.copyOf(heads);
        rows = List.copyOf(rows);
    }

    static SheetTable whole(String title, String style, List<String> heads, List<SheetRow> rows) {
        return new SheetTable(title, style, heads, rows, "");
    }

    public boolean isEmpty() {
        return rows.isEmpty();
    }

    /** Returns how many columns it has, for a cell that goes over all of them. */
    public int columns() {
        return heads.size();
    }
}
