package org.spanroom.output;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;
import org.spanroom.finding.InputException;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;
import org.spanroom.output.text.CsvFile;

/** A table of an earlier run that wrote no GeoPackage, read back from its CSV file: without shapes, which no CSV file has. */
public final class CopiedCsv {
    private static final CSVFormat FORMAT = CSVFormat.RFC4180.builder().get();

    private CopiedCsv() {}

    /**
     * Reads a table.
     *
     * @param run folder of the earlier run
     * @return empty where the run wrote no such file
     * @throws InputException if the file is damaged
     */
    public static Optional<CopiedTable> find(Path run, String name) {
        Map<String, Column.Type> byName = new HashMap<>();
        ResultTables.ALL.stream()
                .filter(entry -> entry.name().equals(name))
                .flatMap(entry -> entry.table(SpanLayout.PLAIN).columns().stream())
                .forEach(column -> byName.put(column.name(), column.type()));
        return find(run, name, byName);
    }

    /**
     * Reads a table that is none of a run's results.
     *
     * @param folder where its file is
     * @param table its columns as they are written
     * @return empty where there is no such file
     * @throws InputException if the file is damaged
     */
    public static Optional<CopiedTable> find(Path folder, Table<?> table) {
        Map<String, Column.Type> byName = new HashMap<>();
        table.columns().forEach(column -> byName.put(column.name(), column.type()));
        return find(folder, table.name(), byName);
    }

    private static Optional<CopiedTable> find(Path run, String name, Map<String, Column.Type> byName) {
        Path file = run.resolve(name + ".csv");
        if (!Files.isRegularFile(file)) {
            return Optional.empty();
        }
        try (CSVParser parser = FORMAT.parse(Files.newBufferedReader(file))) {
            var records = parser.iterator();
            List<String> columns = records.next().toList();
            Column.Type[] types = columns.stream()
                    .map(column -> byName.getOrDefault(column, Column.Type.TEXT))
                    .toArray(Column.Type[]::new);
            var rows = new ArrayList<CopiedTable.Row>();
            while (records.hasNext()) {
                rows.add(new CopiedTable.Row(values(records.next(), types), Shape.EMPTY));
            }
            return Optional.of(new CopiedTable(columns, rows));
        } catch (IOException | UncheckedIOException | IllegalArgumentException | IndexOutOfBoundsException failure) {
            throw new InputException(file, "it cannot be read back", "Make the run again.", failure);
        }
    }

    private static List<@Nullable Object> values(CSVRecord row, Column.Type[] types) {
        List<@Nullable Object> values = new ArrayList<>(types.length);
        for (int column = 0; column < types.length; column++) {
            String cell = row.get(column);
            values.add(Cells.value(types[column] == Column.Type.TEXT ? CsvFile.unguarded(cell) : cell, types[column]));
        }
        return values;
    }
}
