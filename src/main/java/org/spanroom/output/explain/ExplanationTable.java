package org.spanroom.output.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * Rows of the same facts; an array of objects for programs.
 *
 * @param label a heading for people; empty where the section's title says it already
 * @param rows each with the same parts, of which the first row's labels head the columns
 * @param grouped whether people read rows of the same first fact together, under that as a heading
 */
public record ExplanationTable(String key, String label, List<List<ExplanationPart>> rows, boolean grouped)
        implements ExplanationPart {
    public ExplanationTable {
        rows = rows.stream().map(List::copyOf).toList();
    }

    /** Makes a table of one row for each thing. */
    public static <T> ExplanationTable of(
            String key, String label, List<? extends T> things, Function<T, List<ExplanationPart>> row) {
        List<List<ExplanationPart>> rows = new ArrayList<>();
        things.forEach(thing -> rows.add(row.apply(thing)));
        return new ExplanationTable(key, label, rows, false);
    }

    public ExplanationTable asGroups() {
        return new ExplanationTable(key, label, rows, true);
    }

    @Override
    public boolean isShown() {
        return rows.stream().anyMatch(row -> row.stream().anyMatch(ExplanationPart::isShown));
    }
}
