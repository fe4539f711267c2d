package org.spanroom.output.sheet;

import java.util.List;
import java.util.Locale;

/**
 * A table on a page.
 *
 * @param style a class of the page's styles, which sets the widths of its columns
 * @param heads one for each column
 * @param more what of it is on another page, in one phrase; empty where it is whole
 * @param rowMm least height of a row, for hands to write in; 0 for that of its words
 */
public record SheetTable(
        String title, String style, List<SheetHead> heads, List<SheetRow> rows, String more, double rowMm) {
    public SheetTable {
        heads = List.copyOf(heads);
        rows = List.copyOf(rows);
    }

    static SheetTable whole(String title, String style, List<SheetHead> heads, List<SheetRow> rows) {
        return new SheetTable(title, style, heads, rows, "", 0);
    }

    /** Returns the same table with rows of a height. */
    SheetTable rowsOf(double heightMm) {
        return new SheetTable(title, style, heads, rows, more, heightMm);
    }

    /** Returns the least height of a row as a style. */
    public String rowHeight() {
        return rowMm == 0 ? "" : String.format(Locale.ROOT, "height:%.2fmm", rowMm);
    }

    /** Returns its width as a style. */
    public String width() {
        double totalMm = heads.stream().mapToDouble(SheetHead::widthMm).sum();
        return String.format(Locale.ROOT, "width:%.1fmm", totalMm);
    }

    /** Returns whether its columns have heads. */
    public boolean hasHeads() {
        return heads.stream().anyMatch(head -> !head.text().isEmpty());
    }

    public boolean isEmpty() {
        return rows.isEmpty();
    }

    /** Returns how many columns it has, for a cell that goes over all of them. */
    public int columns() {
        return heads.size();
    }
}
