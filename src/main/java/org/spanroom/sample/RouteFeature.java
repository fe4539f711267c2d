package org.spanroom.sample;

import java.util.List;
import org.spanroom.model.Line;
import org.spanroom.output.table.Shape;

/**
 * One feature of the routes layer.
 *
 * @param link true where it leads to another district
 * @param parts none for a feature without geometry
 */
record RouteFeature(int district, boolean link, Attributes attributes, List<Line> parts) {
    RouteFeature {
        parts = List.copyOf(parts);
    }

    Shape shape() {
        return parts.isEmpty() ? Shape.EMPTY : Shape.lines(parts);
    }
}
