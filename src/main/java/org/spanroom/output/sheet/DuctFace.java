package org.spanroom.output.sheet;

import java.util.List;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.network.SpanEnd;

/**
 * Where a duct opens in the face of its bank at one end: the recorded hole, or a blank face to tick where none is recorded.
 *
 * @param line the hole, with a place for the one that is found
 * @param face a blank face; none where the hole is recorded
 */
public record DuctFace(SheetCell line, List<SheetDrawing> face) {
    private static final int ROWS = 3;
    private static final int COLUMNS = 6;
    private static final double PITCH_MM = 4;
    private static final double HOLE_ROOM_MM = 30;

    static DuctFace of(DuctSheet duct, SpanEnd end, SheetBlanks page) {
        String hole = RecordedMarks.hole(duct.span(), end);
        SheetBlank found = page.of(FieldFact.DUCT_HOLE, end.key(), hole);
        String at = "Hole at " + end + ": ";
        return hole.isBlank()
                ? new DuctFace(
                        SheetCell.of(
                                SheetPart.words(at + VaultWords.NOT_RECORDED + ". Tick it in the face; row/column "),
                                SheetPart.blank(found)),
                        List.of(blankFace()))
                : new DuctFace(
                        SheetCell.of(
                                SheetPart.words(at),
                                SheetPart.strong(duct.names().fitBold(hole, HOLE_ROOM_MM, 9)),
                                SheetPart.words(" by the records. Found "),
                                SheetPart.blank(found)),
                        List.of());
    }

    /** A face of which nothing is known but that it has holes: a form, no record. */
    private static SheetDrawing blankFace() {
        var svg = new StringBuilder("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 240 120\">");
        svg.append(
                "<rect x=\"1\" y=\"1\" width=\"238\" height=\"118\" fill=\"none\" stroke=\"#000000\" stroke-width=\"2\"/>");
        for (int row = 0; row < ROWS; row++) {
            for (int column = 0; column < COLUMNS; column++) {
                svg.append("<circle cx=\"")
                        .append(20 + 40 * column)
                        .append("\" cy=\"")
                        .append(20 + 40 * row);
                svg.append("\" r=\"15\" fill=\"none\" stroke=\"#000000\" stroke-width=\"2\"/>");
            }
        }
        return SheetDrawing.of(svg.append("</svg>").toString(), COLUMNS * PITCH_MM);
    }
}
