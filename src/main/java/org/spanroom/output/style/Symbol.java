package org.spanroom.output.style;

import java.util.Optional;

/** What a row is drawn with; sizes are millimeters on the page. */
sealed interface Symbol {
    /**
     * A line along the shape.
     *
     * @param dash how long dashes and the gaps between them are; empty for a line without gaps
     * @param side the column that moves the line aside; empty for a line on the shape
     */
    record Stroke(String hex, double widthMm, Optional<Dash> dash, Optional<Side> side) implements Symbol {
        static Stroke of(String hex, double widthMm) {
            return new Stroke(hex, widthMm, Optional.empty(), Optional.empty());
        }

        Stroke dashed(double dashMm, double gapMm) {
            return new Stroke(hex, widthMm, Optional.of(new Dash(dashMm, gapMm)), side);
        }

        Stroke beside(Optional<Side> column) {
            return new Stroke(hex, widthMm, dash, column);
        }
    }

    /** A pattern of dashes and the gaps between them. */
    record Dash(double dashMm, double gapMm) {}

    /**
     * How ducts of one bank, drawn on one line, are shown side by side.
     *
     * @param column number of the place beside the middle, positive to the right
     * @param stepMm distance between two places
     * @param scales where places are shown; elsewhere all are drawn on the line
     */
    record Side(String column, double stepMm, ScaleRange scales) {}

    /** A mark in the middle of a line. */
    record MiddleMark(Marker marker, Optional<Side> side) implements Symbol {}

    /** A mark at a point. */
    record Marker(Form form, String hex, String outlineHex, double sizeMm, double outlineMm) implements Symbol {}

    /** An area: parallel lines in it, and its outline. */
    record Hatch(String hex, double widthMm, double spacingMm, int angleDeg) implements Symbol {}

    /** Forms of marks that both style languages know. */
    enum Form {
        CIRCLE("circle", "circle"),
        SQUARE("square", "square"),
        TRIANGLE("triangle", "triangle"),
        STAR("star", "star"),
        CROSS("x", "cross2");

        private final String wellKnownName;
        private final String qgisName;

        Form(String wellKnownName, String qgisName) {
            this.wellKnownName = wellKnownName;
            this.qgisName = qgisName;
        }

        String wellKnownName() {
            return wellKnownName;
        }

        String qgisName() {
            return qgisName;
        }
    }
}
