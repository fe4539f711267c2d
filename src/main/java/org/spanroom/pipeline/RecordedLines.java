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
    private final Path file;
    private final int rank;
    private final boolean isInLayer;
    private final Map<String, Drawn> fromLayer = new HashMap<>();

    private RecordedLines(Path run, RecordedSpans spans) {
        this.file = run.resolve(RecordedRun.GEOPACKAGE);
        this.rank = spans.columns().indexOf(StandingColumns.RANK.name());
        this.isInLayer = !spans.hasLines();
    }

    /** A span of the layer. */
    private record Drawn(Optional<Line> lonLat, String rank) {}

    /**
     * Finds the lines of a run.
     *
     * @throws InputException if neither file has them
     */
    static RecordedLines of(Path run, RecordedSpans spans) {
        var lines = new RecordedLines(run, spans);
        if (lines.isInLayer) {
            lines.readLayer(run);
        }
        return lines;
    }

    private void readLayer(Path run) {
        if (!Files.isRegularFile(file)) {
            throw new InputException(
                    run,
                    "the folder lacks " + RecordedRun.GEOPACKAGE + ", which has the lines of the spans",
                    "Bring it back, or make the run again.");
        }
        try (var layer = RecordedLayer.open(file, ResultTables.SPANS.name())) {
            layer.read(
                    List.of(StandingColumns.SPAN_ID.name(), StandingColumns.RANK.name()),
                    row -> fromLayer.put(row.text(0), new Drawn(row.lonLat(), row.text(1))));
        }
    }

    /**
     * Returns the line of a span whose row has been read.
     *
     * @throws InputException if the layer does not have the span, or not at its rank: it was written by another run
     */
    Optional<Line> of(String spanId, RecordedSpans.Row row) {
        if (!isInLayer) {
            return row.lonLat();
        }
        Drawn drawn = fromLayer.get(spanId);
        if (drawn == null || !drawn.rank().equals(row.text(rank))) {
            throw new InputException(
                    file,
                    "it is of another run: the span '" + spanId + "' "
                            + (drawn == null ? "is missing" : "has another rank") + " in its layer "
                            + ResultTables.SPANS.name(),
                    "Bring back the file that this run wrote, or make the run again.");
        }
        return drawn.lonLat();
    }
}
