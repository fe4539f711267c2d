package org.spanroom.pipeline;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.spanroom.input.RecordedLayer;
import org.spanroom.output.CopiedCsv;
import org.spanroom.output.RecordedRun;

/** Rows of a table of an earlier run: from its GeoPackage, or from its CSV file where it wrote no GeoPackage. */
final class RecordedRows {
    private RecordedRows() {}

    /**
     * Reads a table, if the run wrote it.
     *
     * @param columns the columns that are wanted; the texts of a row come in their order, "" for an empty cell
     * @throws org.spanroom.finding.InputException if the file cannot be read back
     */
    static void read(Path run, String table, List<String> columns, Consumer<List<String>> sink) {
        Path file = run.resolve(RecordedRun.GEOPACKAGE);
        if (Files.isRegularFile(file)) {
            RecordedLayer.find(file, table).ifPresent(layer -> {
                try (layer) {
                    layer.read(columns, row -> {
                        var texts = new ArrayList<String>();
                        for (int column = 0; column < columns.size(); column++) {
                            texts.add(row.text(column));
                        }
                        sink.accept(texts);
                    });
                }
            });
            return;
        }
        CopiedCsv.find(run, table).ifPresent(copied -> copied.rows().forEach(row -> {
            var texts = new ArrayList<String>();
            for (String column : columns) {
                int place = copied.columns().indexOf(column);
                Object value = place < 0 ? null : row.values().get(place);
                texts.add(value == null ? "" : value.toString());
            }
            sink.accept(texts);
        }));
    }
}
