package org.spanroom.output;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.finding.InputException;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.folder.OutputFolder;

/**
 * What the record of an earlier run says of its inputs.
 *
 * @param file the record
 * @param version of the program that made the run
 * @param lengths the account of the lengths that it cut
 * @param outputCrs name of the reference system of its layers
 * @param spans how many spans the run has
 * @param spansFormat version of the file that later commands read; 0 where the run has none
 * @param outputCrsDefinition definition of the reference system of its layers; empty where the record has none
 * @param filtered whether it wrote some of its spans only
 * @param inputs in the order of the record
 */
public record RecordedRun(
        Path file,
        String version,
        NetworkLengths lengths,
        String outputCrs,
        long spans,
        int spansFormat,
        String outputCrsDefinition,
        boolean filtered,
        List<RunRecord.Input> inputs) {
    /** Name of the GeoPackage in the folder of a run that wrote one. */
    public static final String GEOPACKAGE = OutputFolder.GEOPACKAGE;

    private static final String NAME_A_RUN = "Name the folder of a run with --run.";
    private static final String RUN_AGAIN = "Make the run again with this version.";

    public RecordedRun {
        inputs = List.copyOf(inputs);
    }

    /**
     * Reads the record in the folder of a run.
     *
     * @throws InputException if there is none, or it cannot be used
     */
    public static RecordedRun read(Path folder) {
        Path file = folder.resolve(RunJson.FILE);
        if (!Files.isRegularFile(file)) {
            throw new InputException(folder, "the folder holds no run (no run.json)", NAME_A_RUN);
        }
        try {
            JsonNode root = new ObjectMapper().readTree(Files.readString(file));
            var inputs = new ArrayList<RunRecord.Input>();
            for (JsonNode input : root.path("inputs")) {
                inputs.add(input(file, input));
            }
            if (inputs.isEmpty()) {
                throw new InputException(file, "it names no inputs", RUN_AGAIN);
            }
            return new RecordedRun(
                    file,
                    root.path("version").asText(),
                    lengths(root.path("lengths_m")),
                    root.path("output_crs").asText(),
                    root.path(SpanColumns.RUN_NAME).asLong(),
                    root.path(RunJson.RUN_SPANS_FORMAT).asInt(),
                    root.path(RunJson.OUTPUT_CRS_DEFINITION).asText(),
                    root.has(RunJson.FILTER),
                    inputs);
        } catch (JsonProcessingException failure) {
            throw new InputException(file, "it is no record of a run (not JSON)", NAME_A_RUN, failure);
        } catch (IOException failure) {
            throw new InputException(file, "it cannot be read", NAME_A_RUN, failure);
        }
    }

    /**
     * Returns the system that its layers are in.
     *
     * @throws InputException if the record's definition of it cannot be used
     */
    public ReferenceSystem outputSystem() {
        try {
            return outputCrsDefinition.isEmpty() ? ReferenceSystem.crs84() : ReferenceSystem.parse(outputCrsDefinition);
        } catch (IllegalArgumentException unusable) {
            String problem = "its " + RunJson.OUTPUT_CRS_DEFINITION + " cannot be used: " + unusable.getMessage();
            throw new InputException(file, problem, RUN_AGAIN, unusable);
        }
    }

    private static NetworkLengths lengths(JsonNode meters) {
        return new NetworkLengths(
                meters.path("routes").asDouble(),
                meters.path("spans").asDouble(),
                meters.path("remainders").asDouble());
    }

    private static RunRecord.Input input(Path file, JsonNode input) {
        var parts = new ArrayList<RunRecord.Part>();
        for (JsonNode part : input.path("parts")) {
            parts.add(new RunRecord.Part(text(file, part, "file"), text(file, part, "sha256")));
        }
        return new RunRecord.Input(
                text(file, input, "role"),
                text(file, input, "file"),
                input.path("layer").asText(),
                input.path("crs").asText(),
                text(file, input, "sha256"),
                parts,
                input.path("features_read").asLong(),
                input.path("features_used").asLong(),
                input.path("features_rejected").asLong(),
                counts(input.path("rejected_by_code")));
    }

    private static Map<String, Long> counts(JsonNode node) {
        var counts = new TreeMap<String, Long>();
        node.properties()
                .forEach(count -> counts.put(count.getKey(), count.getValue().asLong()));
        return counts;
    }

    private static String text(Path file, JsonNode node, String name) {
        String text = node.path(name).asText();
        if (text.isBlank()) {
            throw new InputException(file, "an input in it lacks its " + name, RUN_AGAIN);
        }
        return text;
    }
}
