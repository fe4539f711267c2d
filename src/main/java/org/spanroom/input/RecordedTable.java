package org.spanroom.input;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.spanroom.finding.InputException;

/** Cells of a table that an earlier run wrote, without lines: from its GeoPackage, or else from its CSV file. */
public final class RecordedTable {
    private RecordedTable() {}

    /**
     * Reads all rows in the order in which they were written.
     *
     * @param geoPackage of the run; need not exist
     * @param csv the table as the run wrote it beside the GeoPackage; need not exist
     * @return whether the run wrote the table in one of the two formats
     * @throws InputException if the file cannot be read
     */
    public static boolean read(
            Path geoPackage, Path csv, String table, List<String> columns, Consumer<RecordedRow> sink) {
        if (Files.isRegularFile(geoPackage)) {
            try (var layer = RecordedLayer.open(geoPackage, table)) {
                layer.readValues(columns, sink);
            }
            return true;
        }
        boolean isThere = Files.isRegularFile(csv);
        if (isThere) {
            readCsv(csv, columns, sink);
        }
        return isThere;
    }

    private static void readCsv(Path file, List<String> columns, Consumer<RecordedRow> sink) {
        var format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (CSVParser rows = format.parse(Files.newBufferedReader(file))) {
            for (CSVRecord row : rows) {
                sink.accept(new RecordedRow(
                        columns.stream().map(column -> cell(row, column)).toList(),
                        Optional.empty(),
                        Optional.empty()));
            }
        } catch (IOException | RuntimeException failure) {
            throw new InputException(file, "it cannot be read", "Repeat the run.", failure);
        }
    }

    private static Object cell(CSVRecord row, String column) {
        return row.isSet(column) ? row.get(column) : "";
    }
}
