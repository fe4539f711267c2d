package org.spanroom.output.columns;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.Line;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.network.Span;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.Shape;

/**
 * One bend of one span, as a row.
 *
 * @param number place along the span, from 1
 */
public record BendRow(Span span, int number, Bend bend) {
    /** Returns a span's bends along its line. */
    public static List<BendRow> of(RankedSpan row) {
        var rows = new ArrayList<BendRow>();
        for (Bend bend : row.assessment().bends().list()) {
            rows.add(new BendRow(row.span(), rows.size() + 1, bend));
        }
        return rows;
    }

    /** Returns the place of the bend's middle: by ground distance to the step it lies on, then by share of that step. */
    Shape place() {
        Line ground = span.ground();
        Line lonLat = span.lonLat();
        double restM = bend.middleM();
        int last = ground.size() - 1;
        for (int vertex = 0; vertex < last; vertex++) {
            double stepM = ground.stepLength(vertex);
            if (restM <= stepM && stepM > 0) {
                return between(lonLat, vertex, restM / stepM);
            }
            restM -= stepM;
        }
        return Shape.point(lonLat.x(last), lonLat.y(last));
    }

    private static Shape between(Line line, int vertex, double shareRatio) {
        return Shape.point(
                line.x(vertex) + shareRatio * (line.x(vertex + 1) - line.x(vertex)),
                line.y(vertex) + shareRatio * (line.y(vertex + 1) - line.y(vertex)));
    }
}
