package org.spanroom.output.style;

import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.spanroom.output.table.Table;

/** The styles of all layers, by the names of their tables. */
public final class LayerStyles {
    private static final SortedMap<String, LayerStyle> BY_TABLE = new TreeMap<>(Map.of());

    private LayerStyles() {}

    /** Finds the style of a layer; a table without shapes has none. */
    public static Optional<LayerStyle> find(Table<?> table) {
        return Optional.ofNullable(BY_TABLE.get(table.name()));
    }
}
