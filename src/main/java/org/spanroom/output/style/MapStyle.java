package org.spanroom.output.style;

import java.util.List;
import org.spanroom.output.table.GeometryKind;

/**
 * How a layer looks, before it is put into a language.
 *
 * @param title words for the layer
 * @param rules in the order of the legend
 */
record MapStyle(String title, GeometryKind geometry, List<StyleRule> rules, List<LabelRule> labels) {
    MapStyle {
        rules = List.copyOf(rules);
        labels = List.copyOf(labels);
    }
}
