package org.spanroom.pipeline;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import org.spanroom.input.RecordedLayer;
import org.spanroom.input.RecordedRow;
import org.spanroom.output.CopiedCsv;
import org.spanroom.output.CopiedTable;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.table.Shape;

/** Tables of an earlier run with their shapes: from its GeoPackage, or from its CSV files, without shapes, where it wrote none. */
final class RecordedTables {
    private RecordedTables() {}

    /**
     * Reads a table, if the run wrote it.
     *
     * @throws org.spanroom.finding.InputException if the file cannot be read back
     */
    static Optional<CopiedTable> find(Path run, String table) {
        return find(run, table, Integer.MAX_VALUE, columns -> row -> true);
    }

    /**
     * Reads a limited number of rows of a table, if the run wrote it.
     *
     * @param mostRows how many
     * @param preferred says of a table's columns which rows are taken before the others
     */
    static Optional<CopiedTable> find(
            Path run, String table, int mostRows, Function<List<String>, Predicate<CopiedTable.Row>> preferred) {
        Path file = run.resolve(RecordedRun.GEOPACKAGE);
        if (!Files.isRegularFile(file)) {
            return CopiedCsv.find(run, table).map(copied -> {
                var rows = new PreferredRows(mostRows, preferred.apply(copied.columns()));
                copied.rows().forEach(rows::add);
                return new CopiedTable(copied.columns(), rows.rows());
            });
        }
        try (var layer = RecordedLayer.find(file, table).orElse(null)) {
            if (layer == null) {
                return Optional.empty();
            }
            List<String> columns = layer.columns();
            var rows = new PreferredRows(mostRows, preferred.apply(columns));
            layer.read(columns, row -> rows.add(new CopiedTable.Row(row.values(), shape(row))));
            return Optional.of(new CopiedTable(columns, rows.rows()));
        }
    }

    private static Shape shape(RecordedRow row) {
        return row.lonLat()
                .map(Shape::line)
                .or(() -> row.place().map(place -> Shape.point(place.lonDeg(), place.latDeg())))
                .orElseGet(() -> Shape.polygons(row.polygons()));
    }
}
