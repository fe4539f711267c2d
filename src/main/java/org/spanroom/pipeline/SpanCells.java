package org.spanroom.pipeline;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.output.RecordedSpans;

/** Cells of a recorded span by the name of their column. */
final class SpanCells {
    private final Map<String, Integer> placeByName = new HashMap<>();

    SpanCells(List<String> columns) {
        columns.forEach(column -> placeByName.put(column, placeByName.size()));
    }

    boolean has(String column) {
        return placeByName.containsKey(column);
    }

    /** Returns a text; "" where the cell is empty or there is no such column. */
    String text(RecordedSpans.Row row, String column) {
        return row.text(placeByName.getOrDefault(column, -1));
    }

    /** Returns the items of a cell that are joined by ;. */
    List<String> items(RecordedSpans.Row row, String column) {
        String text = text(row, column);
        return text.isEmpty() ? List.of() : Arrays.asList(text.split(";"));
    }

    /** Returns a number; NaN where the cell is empty or there is no such column. */
    double number(RecordedSpans.Row row, String column) {
        return row.number(placeByName.getOrDefault(column, -1));
    }

    double numberOr0(RecordedSpans.Row row, String column) {
        double number = number(row, column);
        return Double.isNaN(number) ? 0 : number;
    }

    /** Returns the range of an amount of money, such as {@code recovery}; of NaN where the run has drawn none. */
    MoneyRange range(RecordedSpans.Row row, String amount) {
        return new MoneyRange(
                number(row, amount + "_low_money"),
                number(row, amount + "_likely_money"),
                number(row, amount + "_high_money"));
    }
}
