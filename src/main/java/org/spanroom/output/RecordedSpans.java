package org.spanroom.output;

import java.io.BufferedReader;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;
import org.spanroom.finding.InputException;
import org.spanroom.model.Line;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.table.Column;
import org.spanroom.output.text.PackedCsvFile;

/** The spans of an earlier run, read back from the one file that every run writes for later commands. */
public final class RecordedSpans {
    /** Name of the file in the folder of a run. */
    public static final String FILE = SpanColumns.RUN_NAME + ".csv.gz";

    /** Version of the file: another one has columns of other names or meanings. */
    public static final int FORMAT = 5;

    static final String REMEDY = "Make the run again with this version.";
    private static final int BUFFER_BYTES = 1 << 16;

    private static final CSVFormat CSV = CSVFormat.RFC4180.builder().get();

    private final Path file;
    private final long rows;
    private final List<String> columns;
    private final boolean hasLine;
    private final RecordedCells cells;
    private boolean checked;

    private RecordedSpans(Path file, long rows, List<String> header, List<? extends Column<?>> known) {
        this.file = file;
        this.rows = rows;
        this.hasLine = header.contains(PackedCsvFile.LINE);
        this.columns =
                header.stream().filter(name -> !name.equals(PackedCsvFile.LINE)).toList();
        this.cells = new RecordedCells(file, columns, known);
    }

    /**
     * One span.
     *
     * @param values of all columns, in their order: String, Long, Double, Boolean, or null where the cell is empty
     * @param lonLat its line in degrees on WGS 84; empty where it was not asked for
     */
    public record Row(List<@Nullable Object> values, Optional<Line> lonLat) {
        public Row {
            values = Collections.unmodifiableList(values);
        }

        /** Returns a text; "" where the cell is empty or the column is none of the file's. */
        public String text(int column) {
            Object value = column < 0 ? null : values.get(column);
            return value == null ? "" : value.toString();
        }

        /** Returns a number; NaN where the cell is empty or the column is none of the file's. */
        public double number(int column) {
            return column >= 0 && values.get(column) instanceof Number number ? number.doubleValue() : Double.NaN;
        }
    }

    /**
     * Opens the file of a run.
     *
     * @param run the record in the same folder
     * @param known the columns that may be in the file, by whose ranges its cells are checked
     * @throws InputException if there is no such file, or another version of the program wrote it
     */
    public static RecordedSpans open(RecordedRun run, List<? extends Column<?>> known) {
        Path file = run.file().resolveSibling(FILE);
        if (!Files.isRegularFile(file)) {
            throw new InputException(file, "it is missing; later commands read the spans from it", REMEDY);
        }
        if (run.spansFormat() != FORMAT) {
            throw new InputException(
                    file,
                    "version " + run.spansFormat() + " of this file was written by Spanroom " + run.version()
                            + "; this program reads version " + FORMAT,
                    REMEDY);
        }
        try (CSVParser parser = parser(file)) {
            List<String> header = parser.stream()
                    .findFirst()
                    .map(CSVRecord::toList)
                    .orElseThrow(() -> new InputException(file, "it is empty", REMEDY));
            return new RecordedSpans(file, run.spans(), header, known);
        } catch (IOException | UncheckedIOException failure) {
            throw unreadable(file, failure);
        }
    }

    /** Returns whether the file has the lines; else the GeoPackage of the run has them. */
    public boolean hasLines() {
        return hasLine;
    }

    /** Returns the names of the columns that the run wrote, in their order, without that of the line. */
    public List<String> columns() {
        return columns;
    }

    /**
     * Reads all spans in the order of the ranking. The first time checks every cell, whatever is wanted of it.
     *
     * @param types the columns that may be in the file; one that is not among them is read as text
     * @param withLines whether the lines are wanted
     * @return how many there are
     * @throws InputException if the file is damaged, or a cell says what the program cannot have written
     */
    public long read(List<? extends Column<?>> types, boolean withLines, Consumer<Row> sink) {
        Column.Type[] kinds = kinds(types);
        long read = 0;
        try (CSVParser parser = parser(file)) {
            var records = parser.iterator();
            records.next();
            while (records.hasNext()) {
                sink.accept(row(records.next(), kinds, withLines));
                read++;
            }
        } catch (IOException | UncheckedIOException | IllegalArgumentException failure) {
            throw unreadable(file, failure);
        }
        if (read != rows) {
            throw new InputException(file, "it has " + read + " spans, and run.json counts " + rows, REMEDY);
        }
        checked = true;
        return read;
    }

    private Column.Type[] kinds(List<? extends Column<?>> types) {
        Map<String, Column.Type> byName = new HashMap<>();
        types.forEach(column -> byName.put(column.name(), column.type()));
        return columns.stream()
                .map(name -> byName.getOrDefault(name, Column.Type.TEXT))
                .toArray(Column.Type[]::new);
    }

    private Row row(CSVRecord record, Column.Type[] kinds, boolean withLines) {
        if (record.size() != kinds.length + (hasLine ? 1 : 0)) {
            throw new IllegalArgumentException("row " + record.getRecordNumber() + " has " + record.size() + " cells");
        }
        if (!checked) {
            cells.check(record);
        }
        List<@Nullable Object> values = new ArrayList<>(kinds.length);
        for (int column = 0; column < kinds.length; column++) {
            values.add(Cells.value(record.get(column), kinds[column]));
        }
        return new Row(values, withLines && hasLine ? line(record, kinds.length) : Optional.empty());
    }

    private Optional<Line> line(CSVRecord record, int column) {
        String cell = record.get(column);
        if (cell.isEmpty()) {
            return Optional.empty();
        }
        Optional<Line> line = RecordedLine.of(cell);
        if (line.isEmpty()) {
            throw cells.bad(record, PackedCsvFile.LINE, cell, RecordedLine.EXPECTED);
        }
        return line;
    }

    private static CSVParser parser(Path file) throws IOException {
        var unpacked = new GZIPInputStream(Files.newInputStream(file), BUFFER_BYTES);
        return CSV.parse(new BufferedReader(new InputStreamReader(unpacked, StandardCharsets.UTF_8), BUFFER_BYTES));
    }

    private static InputException unreadable(Path file, Exception failure) {
        Throwable cause = failure.getCause() == null ? failure : failure.getCause();
        boolean damaged = cause instanceof EOFException || cause instanceof ZipException;
        String why = damaged ? "it is damaged or cut off" : "it cannot be read back: " + cause.getMessage();
        return new InputException(file, why, REMEDY, failure);
    }
}
