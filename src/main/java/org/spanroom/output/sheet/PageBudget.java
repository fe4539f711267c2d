package org.spanroom.output.sheet;

import java.util.List;

/**
 * The height of a page that is not used yet. What a page holds is set in lines and rows of known height, so that it is known beforehand what fits;
 * what does not goes to an additional page.
 */
final class PageBudget {
    /** Height of a page that prints within the margins, less than paper and margins by what printers differ. */
    private static final double MARGINS_MM = 26;

    private static final double HEAD_MM = 21.9;
    private static final double FOOT_MM = 8.2;
    private static final double BAND_MM = 5.8;
    private static final double LINE_MM = 3.89;
    private static final double ROW_MM = 4.06;
    private static final double ROW_EDGES_MM = 0.35;
    private static final double CAPTION_MM = 5.3;
    private static final double SIZE_PT = 9;

    private static final double BETWEEN_MM = 2.4;
    private static final double BOX_WIDTH_MM = 179;
    private static final double BOX_EDGES_MM = 2.7;
    private static final double WRITING_LINE_MM = 4.77;

    private double freeMm;

    PageBudget(SheetPaper paper, int bands) {
        freeMm = heightMm(paper) - HEAD_MM - FOOT_MM - BAND_MM * bands;
    }

    /** Returns the height of a page between its margins. */
    static double heightMm(SheetPaper paper) {
        return paper.heightMm() - MARGINS_MM;
    }

    double freeMm() {
        return freeMm;
    }

    PageBudget take(double heightMm) {
        freeMm -= heightMm;
        return this;
    }

    static double linesMm(int lines) {
        return lines * LINE_MM;
    }

    static double rowsMm(int rows) {
        return rows * ROW_MM;
    }

    /** Returns the height of a table without its rows. */
    static double headMm(boolean captioned) {
        return ROW_MM + (captioned ? CAPTION_MM : 0.8);
    }

    /** Returns the height of paragraphs of this width. */
    static double textMm(List<String> paragraphs, double widthMm) {
        return linesMm(paragraphs.stream()
                .mapToInt(text -> SheetFont.REGULAR.lines(text, SIZE_PT, widthMm))
                .sum());
    }

    /** Returns the height of each of so many rows, the last that the page has, if what is free makes them taller. */
    double rowMm(int rows, double mostTallerMm) {
        double tallerMm = rows == 0 ? 0 : Math.max(0, Math.min(mostTallerMm, freeMm / rows));
        return ROW_MM - ROW_EDGES_MM + tallerMm;
    }

    /** Returns how many lines places to write take, one after another, after a word that begins them. */
    static int inlineLines(String lead, List<SheetCell> cells, double widthMm) {
        int lines = 1;
        double usedMm = SheetFont.BOLD.widthMm(lead, SIZE_PT);
        for (SheetCell cell : cells) {
            double cellMm = cell.widthMm() + BETWEEN_MM;
            if (usedMm > 0 && usedMm + cellMm > widthMm) {
                lines++;
                usedMm = 0;
            }
            usedMm += cellMm;
        }
        return lines;
    }

    /** Returns the height of lines with places to write. */
    static double writingMm(int lines) {
        return lines * WRITING_LINE_MM;
    }

    /** Returns the height of a box with places to write. */
    static double boxMm(String lead, List<SheetCell> cells) {
        return inlineLines(lead, cells, BOX_WIDTH_MM) * WRITING_LINE_MM + BOX_EDGES_MM;
    }

    /** Returns how many times a height goes into what is free, at least once. */
    int count(double eachMm) {
        return Math.max(1, (int) Math.floor(freeMm / eachMm));
    }
}
