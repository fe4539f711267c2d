package org.spanroom.output.sheet;

import java.util.List;

/**
 * Words and blanks one after another: a cell of a table, or a line.
 *
 * @param style a class of the page's styles, or empty
 * @param columns over how many columns it goes
 */
public record SheetCell(List<SheetPart> parts, String style, int columns) {
    public SheetCell {
        parts = List.copyOf(parts);
    }

    static SheetCell of(SheetPart... parts) {
        return new SheetCell(List.of(parts), "", 1);
    }

    static SheetCell words(String text) {
        return of(SheetPart.words(text));
    }

    static SheetCell strong(String text) {
        return of(SheetPart.strong(text));
    }

    /** A number, which is aligned to the right. */
    static SheetCell number(String text) {
        return words(text).styled("number");
    }

    /** A cell that is a place to write. */
    static SheetCell blank(SheetBlank blank) {
        return of(SheetPart.blank(blank)).styled("fill");
    }

    SheetCell styled(String other) {
        return new SheetCell(parts, other, columns);
    }

    /** Returns how wide it is in one line. */
    double widthMm() {
        return parts.stream().mapToDouble(SheetPart::widthMm).sum();
    }

    SheetCell over(int number) {
        return new SheetCell(parts, style, number);
    }
}
