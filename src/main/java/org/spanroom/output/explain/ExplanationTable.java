package org.spanroom.output.explain;

import java.util.List;

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

    @Override
    public boolean isShown() {
        return rows.stream().flatMap(List::stream).anyMatch(ExplanationPart::isShown);
    }
}
