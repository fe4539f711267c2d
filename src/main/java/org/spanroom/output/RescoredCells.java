package org.spanroom.output;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.spanroom.model.rank.RescoredSpan;
import org.spanroom.output.table.Column;

/** The values that an earlier run wrote of its spans, by the columns' names. */
public final class RescoredCells {
    private final Map<String, Integer> places = new HashMap<>();

    /** @param columns the names of the columns that the earlier run wrote of its spans, in their order */
    public RescoredCells(List<String> columns) {
        for (int place = 0; place < columns.size(); place++) {
            places.putIfAbsent(columns.get(place), place);
        }
    }

    /** Returns whether the run wrote all of these. */
    public boolean has(List<String> names) {
        return places.keySet().containsAll(names);
    }

    /** Returns the value; null where the run wrote none. */
    public @Nullable Object value(RescoredSpan span, String name) {
        Integer place = places.get(name);
        return place == null ? null : span.recorded().get(place);
    }

    /** Returns a value as text; empty where the run wrote none. */
    public String text(RescoredSpan span, String name) {
        Object value = value(span, name);
        return value == null ? "" : value.toString();
    }

    public String text(RescoredSpan span, Column<?> column) {
        return text(span, column.name());
    }

    /** Returns a number; 0 where the run wrote none. */
    public double number(RescoredSpan span, String name) {
        return value(span, name) instanceof Number number ? number.doubleValue() : 0;
    }

    public double number(RescoredSpan span, Column<?> column) {
        return number(span, column.name());
    }
}
