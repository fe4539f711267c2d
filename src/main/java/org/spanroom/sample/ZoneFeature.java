package org.spanroom.sample;

import java.util.List;
import org.spanroom.model.Line;
import org.spanroom.output.table.Shape;

/**
 * One feature of the zones layer.
 *
 * @param type what restricts the work, in one of several words for the same
 * @param starts first day of the restriction, or empty
 * @param until last day of the restriction, or empty
 * @param rings closed, in the city's plane, the outer one first
 */
record ZoneFeature(String id, String type, String title, String starts, String until, List<DrawnLine> rings) {
    ZoneFeature {
        rings = List.copyOf(rings);
    }

    Shape shape() {
        List<Line> lines = rings.stream().map(ring -> ring.lonLat(false)).toList();
        return Shape.polygon(lines);
    }
}
