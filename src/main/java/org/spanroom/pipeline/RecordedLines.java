package org.spanroom.pipeline;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanroom.finding.InputException;
import org.spanroom.input.RecordedLayer;
import org.spanroom.model.Line;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.RecordedSpans;
import org.spanroom.output.ResultTables;
import org.spanroom.output.columns.StandingColumns;

/** The lines of the spans of an earlier run: from the file that later commands read, or else from its GeoPackage, so that none has them twice. */
final class RecordedLines {
    private final Map<String, Line> fromLayer = new HashMap<>();

    private RecordedLines() {}

    /**
     * Finds the lines of a run.
     *
     * @throws InputException if neither file has them
     */
    static RecordedLines of(Path run, RecordedSpans spans) {
        var lines = new RecordedLines();
        if (!spans.hasLines()) {
            lines.readLayer(run);
        }
        return lines;
    }

    private void readLayer(Path run) {
        Path file = run.resolve(RecordedRun.GEOPACKAGE);
        if (!Files.isRegularFile(file)) {
            throw new InputException(
                    run,
                    "the folder lacks " + RecordedRun.GEOPACKAGE + ", which has the lines of the spans",
                    "Bring it back, or make the run again.");
        }
        try (var layer = RecordedLayer.open(file, ResultTables.SPANS.name())) {
            layer.read(
                    List.of(StandingColumns.SPAN_ID.name()),
                    row -> row.lonLat().ifPresent(line -> fromLayer.put(row.text(0), line)));
        }
    }

    /** Returns the line of a span whose row has been read. */
    Optional<Line> of(String spanId, RecordedSpans.Row row) {
        return row.lonLat().or(() -> Optional.ofNullable(fromLayer.get(spanId)));
    }
}
