package org.spanroom.input;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.spanroom.finding.Place;
import org.spanroom.model.Line;

/**
 * One row of a layer that an earlier run wrote.
 *
 * @param values of the fields that were requested, in their order: String, Long, Double, Boolean, or null
 * @param lonLat its line in degrees on WGS 84; empty where it has none
 * @param place its point, if it was written with one
 * @param rings the rings of its polygons; none where it has no polygon
 */
public record RecordedRow(
        List<@Nullable Object> values, Optional<Line> lonLat, Optional<Place> place, List<Line> rings) {
    public RecordedRow {
        rings = List.copyOf(rings);
    }

    /** Returns a text; "" where the cell is empty. */
    public String text(int column) {
        Object value = values.get(column);
        return value == null ? "" : value.toString();
    }

    /** Returns a number, which a CSV file has as text; NaN where the cell is empty. */
    public double number(int column) {
        Object value = values.get(column);
        if (value instanceof Number number) {
            return number.doubleValue();
        }
        return value instanceof String text && !text.isBlank() ? Double.parseDouble(text) : Double.NaN;
    }
}
