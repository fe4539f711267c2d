package org.spanroom.output.sheet;

import java.util.Locale;

/**
 * The head of a column.
 *
 * @param widthMm of the column, its border included
 */
public record SheetHead(String text, double widthMm) {
    /** What borders and the room beside them take of a column. */
    private static final double EDGES_MM = 2;

    /** Returns the room that words have. */
    double roomMm() {
        return widthMm - EDGES_MM;
    }

    /** Returns the width as a style. */
    public String width() {
        return String.format(Locale.ROOT, "width:%.1fmm", widthMm);
    }
}
