package org.spanroom.pipeline;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.InputException;
import org.spanroom.input.InputData;
import org.spanroom.input.layer.FileDigest;
import org.spanroom.model.UnitSystem;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.RunRecord;

/**
 * What an earlier run read, read again: the same files with the same config.
 *
 * @param config of the run, with the files where they are now
 * @param inputs all features that the run read
 */
record RecordedInputs(RunConfig config, InputData inputs) {
    private static final String REMEDY = "Bring back what the run read, or make the run again and explain that one.";

    /** Returns the config of a run, with the units asked for, else its own. */
    static RunConfig config(RecordedRun recorded, Optional<UnitSystem> asked) {
        RunConfig config = ConfigReader.readRecorded(recorded.file());
        return asked.map(config::withUnits).orElse(config);
    }

    /**
     * Reads every input of a run.
     *
     * @param folder of the run
     * @param asked the units that people are shown, where not those of the run
     * @throws InputException if an input is missing or has changed since the run
     */
    static RecordedInputs read(Path folder, RecordedRun recorded, Progress progress, Optional<UnitSystem> asked) {
        RunConfig asRecorded = config(recorded, asked);
        var files = new RecordedFiles(folder, asRecorded.output());
        RunConfig config = asRecorded.withInputs(files.find(asRecorded.inputs()));
        for (RunRecord.Input input : recorded.inputs()) {
            for (RunRecord.Part part : input.files()) {
                demandThere(folder, files.find(part));
                if (!input.isFieldBook()) {
                    demandUnchanged(folder, files.find(part));
                }
            }
        }
        var run = new RankRun(config, progress);
        // Rows are added to a field book after a run: what the run has read is its beginning.
        InputData inputs = recorded.inputs().stream()
                .filter(RunRecord.Input::isFieldBook)
                .map(RunRecord.Input::sha256)
                .findFirst()
                .map(run::readAsOf)
                .orElseGet(run::read);
        demandSameFiles(folder, recorded, inputs, files);
        return new RecordedInputs(config, inputs);
    }

    private static void demandThere(Path folder, RunRecord.Part part) {
        Path file = Path.of(part.file());
        if (!Files.isRegularFile(file)) {
            throw new InputException(
                    file,
                    "the run in " + folder + " read this file, and it is not there",
                    "Start from the folder that the run was started in, or bring the file back.");
        }
    }

    private static void demandUnchanged(Path folder, RunRecord.Part part) {
        Path file = Path.of(part.file());
        if (!FileDigest.of(file).sha256Hex().equals(part.sha256())) {
            throw new InputException(
                    file, "it has changed since the run in " + folder + " (its SHA-256 is another)", REMEDY);
        }
    }

    /** A file that has come in beside the recorded ones, such as a Shapefile's code page, would be read too. */
    private static void demandSameFiles(Path folder, RecordedRun recorded, InputData inputs, RecordedFiles files) {
        List<RunRecord.Input> now =
                inputs.records().stream().map(RankRun::recordOf).toList();
        for (int i = 0; i < now.size(); i++) {
            Stream<RunRecord.Part> recordedParts =
                    i < recorded.inputs().size() ? recorded.inputs().get(i).files().stream() : Stream.empty();
            List<RunRecord.Part> before = recordedParts.map(files::find).toList();
            for (RunRecord.Part part : now.get(i).files()) {
                if (!before.contains(part)) {
                    throw new InputException(
                            Path.of(part.file()), "the run in " + folder + " did not read this file as it is", REMEDY);
                }
            }
        }
    }
}
