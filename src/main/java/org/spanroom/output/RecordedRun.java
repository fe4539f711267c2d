package org.spanroom.output;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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
            throw new InputException(folder, "the folder holds no run (no run.json)", RecordJson.NAME_A_RUN);
        }
        RecordJson root = RecordJson.read(file);
        List<RunRecord.Input> inputs =
                root.demandedItems("inputs").stream().map(RecordedRun::input).toList();
        if (inputs.isEmpty()) {
            throw new InputException(file, "it names no inputs", RecordJson.RUN_AGAIN);
        }
        root.time(RunJson.STARTED_AT);
        ResultTables.ALL.stream().map(ResultTable::name).filter(root::has).forEach(root::count);
        return new RecordedRun(
                file,
                root.version("version"),
                lengths(root.section("lengths_m")),
                root.text("output_crs"),
                root.count(SpanColumns.RUN_NAME),
                root.has(RunJson.RUN_SPANS_FORMAT)
                        ? (int) Math.min(Integer.MAX_VALUE, root.count(RunJson.RUN_SPANS_FORMAT))
                        : 0,
                root.text(RunJson.OUTPUT_CRS_DEFINITION),
                root.has(RunJson.FILTER),
                inputs);
    }

    /**
     * Returns the system that its layers are in.
     *
     * @throws InputException if the record's definition of it cannot be used
     */
    public ReferenceSystem outputSystem() {
        try {
            return outputCrsDefinition.isEmpty() ? ReferenceSystem.crs84() : ReferenceSystem.parse(outputCrsDefinition);
        } catch (IllegalArgumentException notASystem) {
            throw new InputException(
                    file,
                    RunJson.OUTPUT_CRS_DEFINITION + ": " + notASystem.getMessage(),
                    RecordJson.RUN_AGAIN,
                    notASystem);
        }
    }

    private static NetworkLengths lengths(RecordJson meters) {
        return new NetworkLengths(meters.amount("routes"), meters.amount("spans"), meters.amount("remainders"));
    }

    private static RunRecord.Input input(RecordJson input) {
        return new RunRecord.Input(
                input.someText("role"),
                input.fileName("file"),
                input.text("layer"),
                input.text("crs"),
                input.someText("sha256"),
                input.items("parts").stream()
                        .map(part -> new RunRecord.Part(part.fileName("file"), part.someText("sha256")))
                        .toList(),
                input.count("features_read"),
                input.count("features_used"),
                input.count("features_rejected"),
                input.section("rejected_by_code").counts());
    }
}
