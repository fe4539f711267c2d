package org.spanroom.output;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.spanroom.model.CriterionInfo;
import org.spanroom.model.RescoredSpan;

/** Writes the spans of a run once more in the order of another scoring, into a folder of its own that is a run too. */
public final class RescoredWriter {
    private static final String MARKER = "run.json";

    private final OutputSettings settings;
    private final LayerOptions options;

    /**
     * Prepares.
     *
     * @throws OutputException if the folder exists and may not be replaced
     */
    public RescoredWriter(OutputSettings settings, LayerOptions options) {
        this.settings = settings;
        this.options = options;
        OutputFolder.check(settings.folder(), settings.overwrite(), MARKER);
    }

    /**
     * What is written.
     *
     * @param criteria those that have a weight now
     * @param columns the names of the columns that the run wrote
     * @param spans the best first
     */
    public record Rescored(List<CriterionInfo> criteria, List<String> columns, List<RescoredSpan> spans) {
        public Rescored {
            criteria = List.copyOf(criteria);
            columns = List.copyOf(columns);
            spans = List.copyOf(spans);
        }
    }

    /**
     * Writes GeoPackage, CSV and the record of the run, in which the config's scoring is the new one.
     *
     * @param from folder of the run that the spans are from
     * @param config the config as it would give these ranks
     * @return names in the folder
     */
    public List<String> write(Rescored rescored, Path from, Map<String, ?> config) {
        Table<RescoredSpan> table = RescoredColumns.table(rescored.criteria(), rescored.columns());
        try (var folder = OutputFolder.create(settings.folder(), settings.overwrite(), MARKER)) {
            try (var file = new GeoPackageWriter(folder.path().resolve("spanroom.gpkg"), options);
                    var layer = file.layer(table)) {
                rescored.spans().forEach(layer::write);
            }
            try (var file = new CsvWriter<>(folder.path().resolve("spans.csv"), table)) {
                rescored.spans().forEach(file::write);
            }
            record(folder.path().resolve(MARKER), rescored, from, config);
            folder.commit();
            return List.of(MARKER, "spanroom.gpkg", "spans.csv");
        }
    }

    private void record(Path file, Rescored rescored, Path from, Map<String, ?> config) {
        try {
            var mapper = new ObjectMapper();
            ObjectNode record = (ObjectNode) mapper.readTree(Files.readString(from.resolve(MARKER)));
            record.put("started_at", options.writtenAt().toString());
            record.put("rescored_from", from.toString().replace('\\', '/'));
            record.put(
                    "spans_ranked",
                    rescored.spans().stream()
                            .filter(span -> span.rank().isPresent())
                            .count());
            record.remove(List.of("spans_excluded", "notes"));
            record.set("config", mapper.valueToTree(config));
            String text = mapper.writerWithDefaultPrettyPrinter().writeValueAsString(record) + "\n";
            Files.write(file, text.getBytes(StandardCharsets.UTF_8));
        } catch (IOException failure) {
            throw OutputException.of(file, failure);
        }
    }
}
