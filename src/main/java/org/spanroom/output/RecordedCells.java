package org.spanroom.output;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVRecord;
import org.spanroom.finding.InputException;
import org.spanroom.output.columns.SpanRules;
import org.spanroom.output.columns.StandingColumns;
import org.spanroom.output.table.CellRange;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.RowRule;

/** Checks the cells of recorded spans: each by the range of its column, then those that belong together. */
final class RecordedCells {
    private final Path file;
    private final List<String> columns;
    private final Column.Type[] types;
    private final CellRange[] ranges;
    private final int spanId;
    private final List<Placed> rules = new ArrayList<>();
    private final double[] numbers;

    /** A rule, with the places of its columns and room for their cells. */
    private static final class Placed {
        final RowRule rule;
        final int[] places;
        final double[] numbers;
        final boolean[] empty;

        Placed(RowRule rule, List<String> columns) {
            this.rule = rule;
            this.places = rule.columns().stream().mapToInt(columns::indexOf).toArray();
            this.numbers = new double[places.length];
            this.empty = new boolean[places.length];
        }

        /** Returns the place in the rule of the column whose cell breaks the rule; -1 where none does. */
        int broken(CSVRecord row, double[] rowNumbers) {
            for (int place = 0; place < places.length; place++) {
                numbers[place] = rowNumbers[places[place]];
                empty[place] = row.get(places[place]).isEmpty();
            }
            return rule.broken(numbers, empty);
        }
    }

    /**
     * Prepares to check.
     *
     * @param columns those of the file, in their order
     * @param known the columns that may be in it; the cells of another one are texts that are not checked
     */
    RecordedCells(Path file, List<String> columns, List<? extends Column<?>> known) {
        this.file = file;
        this.columns = columns;
        this.numbers = new double[columns.size()];
        this.types = new Column.Type[columns.size()];
        this.ranges = new CellRange[columns.size()];
        this.spanId = columns.indexOf(StandingColumns.SPAN_ID.name());
        Map<String, Column<?>> byName = new HashMap<>();
        known.forEach(column -> byName.put(column.name(), column));
        for (int place = 0; place < types.length; place++) {
            Column<?> column = byName.get(columns.get(place));
            types[place] = column == null ? Column.Type.TEXT : column.type();
            ranges[place] = column == null ? CellRange.UNDECLARED : column.range();
        }
        SpanRules.ALL.stream()
                .filter(rule -> columns.containsAll(rule.columns()))
                .forEach(rule -> rules.add(new Placed(rule, columns)));
    }

    /**
     * Checks a row.
     *
     * @throws InputException naming the span and the first column whose cell cannot be what the program wrote
     */
    void check(CSVRecord row) {
        for (int column = 0; column < types.length; column++) {
            String cell = row.get(column);
            numbers[column] = Double.NaN;
            if (!cell.isEmpty() && !isGood(cell, column)) {
                throw bad(row, column, expected(column));
            }
        }
        for (Placed placed : rules) {
            int broken = placed.broken(row, numbers);
            if (broken >= 0) {
                throw bad(row, placed.places[broken], placed.rule.expected(broken));
            }
        }
    }

    private boolean isGood(String cell, int column) {
        return switch (types[column]) {
            case TEXT ->
                !(ranges[column] instanceof CellRange.Texts texts)
                        || texts.accepts().test(cell);
            case FLAG -> cell.equals("true") || cell.equals("false");
            case INTEGER, REAL -> {
                double number = Cells.number(cell);
                numbers[column] = number;
                boolean isWhole = types[column] == Column.Type.REAL || isPlain(cell);
                yield isWhole && limits(column).accepts(number);
            }
        };
    }

    /** A whole number is written without a point or an exponent. */
    private static boolean isPlain(String cell) {
        return cell.indexOf('.') < 0 && cell.indexOf('E') < 0;
    }

    private CellRange.Numbers limits(int column) {
        return ranges[column] instanceof CellRange.Numbers limits ? limits : CellRange.NUMBER;
    }

    private String expected(int column) {
        return switch (types[column]) {
            case TEXT -> ranges[column].expected();
            case FLAG -> "true or false";
            case INTEGER -> limits(column).expected().replace("a number", "a whole number");
            case REAL -> limits(column).expected();
        };
    }

    private InputException bad(CSVRecord row, int column, String expected) {
        return bad(row, columns.get(column), row.get(column), expected);
    }

    /** Returns the error of a cell. */
    InputException bad(CSVRecord row, String column, String cell, String expected) {
        String span = spanId < 0 ? "row " + row.getRecordNumber() : "span '" + row.get(spanId) + "'";
        String found = cell.isEmpty() ? "is empty" : "is '" + cell + "'";
        return new InputException(
                file, span + ": " + column + " " + found + "; expected " + expected, RecordedSpans.REMEDY);
    }
}
