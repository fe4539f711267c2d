package org.spanroom.output.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Predicate;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;

/**
 * A table as the page has it: what its columns are, then their values column by column, as that compresses best.
 *
 * @param <R> what a row is made of
 */
public final class PayloadTable<R> {
    private final Table<R> table;
    private final ColumnWords words;
    private final Predicate<String> shown;
    private final List<PayloadColumn> columns = new ArrayList<>();
    private int rows;

    /**
     * Begins a table without rows.
     *
     * @param table columns and where a row has their cells
     * @param currency the word for money
     * @param shown whether a column is shown until the reader asks for others, by its name
     */
    public PayloadTable(Table<R> table, String currency, Predicate<String> shown) {
        this.table = table;
        this.words = new ColumnWords(currency);
        this.shown = shown;
        table.columns().forEach(column -> columns.add(PayloadColumn.of(column.type())));
    }

    /** Makes a table of rows, every column of which is shown. */
    public static <R> PayloadTable<R> of(Table<R> table, String currency, List<R> rows) {
        return of(table, currency, rows, Set.of());
    }

    /** Makes a table of rows; some columns are not shown until the reader asks for them. */
    public static <R> PayloadTable<R> of(Table<R> table, String currency, List<R> rows, Set<String> hidden) {
        var payload = new PayloadTable<>(table, currency, name -> !hidden.contains(name));
        rows.forEach(payload::add);
        return payload;
    }

    /** Adds a row; its cells are taken over as they would be written. */
    public void add(R row) {
        for (int place = 0; place < columns.size(); place++) {
            columns.get(place).add(table.columns().get(place).value(row));
        }
        rows++;
    }

    public int rows() {
        return rows;
    }

    /** Returns the place of a column; -1 where there is none of that name. */
    public int place(String name) {
        for (int place = 0; place < columns.size(); place++) {
            if (table.columns().get(place).name().equals(name)) {
                return place;
            }
        }
        return -1;
    }

    /** Returns a cell as text; "" where it is empty or there is no such column. */
    public String text(int row, int column) {
        return column < 0 ? "" : columns.get(column).text(row);
    }

    /** Returns a number; NaN where the cell is empty or there is no such column. */
    public double number(int row, int column) {
        return column < 0 ? Double.NaN : columns.get(column).number(row);
    }

    /** Writes the members of this table into the object that is open. */
    void write(JsonGenerator json) throws IOException {
        json.writeNumberField("rows", rows);
        json.writeArrayFieldStart("columns");
        for (Column<R> column : table.columns()) {
            ColumnWords.Words named = words.of(column.name());
            json.writeStartObject();
            json.writeStringField("key", column.name());
            json.writeStringField("label", named.label());
            json.writeStringField("unit", named.unit());
            json.writeStringField("type", column.type().name().toLowerCase(Locale.ROOT));
            json.writeNumberField("decimals", column.decimals());
            json.writeStringField("meaning", column.meaning());
            json.writeBooleanField("shown", shown.test(column.name()));
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("values");
        for (PayloadColumn column : columns) {
            column.write(json);
        }
        json.writeEndArray();
    }
}
