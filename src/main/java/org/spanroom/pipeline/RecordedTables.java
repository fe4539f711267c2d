package org.spanroom.pipeline;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
        return find(run, table, Long.MAX_VALUE);
    }

    /** Reads the first rows of a table, if the run wrote it. */
    static Optional<CopiedTable> find(Path run, String table, long mostRows) {
        Path file = run.resolve(RecordedRun.GEOPACKAGE);
        if (!Files.isRegularFile(file)) {
            return CopiedCsv.find(run, table)
                    .map(copied -> new CopiedTable(
                            copied.columns(),
                            copied.rows().stream().limit(mostRows).toList()));
        }
        try (var layer = RecordedLayer.find(file, table).orElse(null)) {
            if (layer == null) {
                return Optional.empty();
            }
            var rows = new ArrayList<CopiedTable.Row>();
            List<String> columns = layer.columns();
            layer.read(columns, row -> {
                if (rows.size() < mostRows) {
                    rows.add(new CopiedTable.Row(row.values(), shape(row)));
                }
            });
            return Optional.of(new CopiedTable(columns, rows));
        }
    }

    private static Shape shape(RecordedRow row) {
        return row.lonLat()
                .map(Shape::line)
                .or(() -> row.place().map(place -> Shape.point(place.lonDeg(), place.latDeg())))
                .orElseGet(() -> Shape.polygons(row.polygons()));
    }
}
