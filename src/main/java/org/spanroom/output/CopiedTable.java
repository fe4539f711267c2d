package org.spanroom.output;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/**
 * A table as an earlier run wrote it.
 *
 * @param columns their names
 * @param rows in the order in which they were written
 */
public record CopiedTable(List<String> columns, List<Row> rows) {
    /**
     * One row.
     *
     * @param values of all columns, in their order: String, Long, Double, Boolean, or null
     * @param shape in degrees on WGS 84
     */
    public record Row(List<@Nullable Object> values, Shape shape) {
        public Row {
            values = Collections.unmodifiableList(new ArrayList<>(values));
        }

        private Optional<Object> value(int place) {
            return place < 0 ? Optional.empty() : Optional.ofNullable(values.get(place));
        }
    }

    public CopiedTable {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
    }

    /** Returns the table that the rows are written as: with those of its columns that the earlier run wrote. */
    public Table<Row> as(Table<?> table) {
        var kept = new ArrayList<Column<Row>>();
        for (Column<?> column : table.columns()) {
            int place = place(column);
            if (place >= 0) {
                kept.add(column.with(row -> row.value(place)));
            }
        }
        return table.with(Row::shape, kept);
    }

    /** Returns where a column stands, or -1 where the earlier run did not write it. */
    int place(Column<?> column) {
        return columns.indexOf(column.name());
    }

    /** Returns a cell as text; "" where it is empty. */
    static String text(Row row, int place) {
        return row.value(place).map(Object::toString).orElse("");
    }

    /** Returns a cell as a number; 0 where it is empty. */
    static double number(Row row, int place) {
        return row.value(place).orElse(0) instanceof Number number ? number.doubleValue() : 0;
    }
}
