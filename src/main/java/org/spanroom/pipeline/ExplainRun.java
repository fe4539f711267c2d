package org.spanroom.pipeline;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.InputException;
import org.spanroom.input.InputData;
import org.spanroom.input.layer.FileDigest;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.rank.RecordedStanding;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.RunRecord;
import org.spanroom.output.table.Text;

/**
 * Everything about some spans of an earlier run: calculated again from the same files with the same config, which the run's record
 * names, and put beside their ranks in the results. All files are read, once; of the routes only those are cut that a span depends on
 * ({@link SpanExplainer}), and that span alone is assessed.
 */
public final class ExplainRun {
    private static final String REMEDY = "Bring back what the run read, or make the run again and explain that one.";

    private final Path folder;
    private final Progress progress;
    private final RecordedRun recorded;
    private final Optional<UnitSystem> asked;

    /**
     * Reads the record of a run.
     *
     * @param folder the results of that run
     * @throws InputException if the folder holds no usable record
     */
    public ExplainRun(Path folder, Progress progress) {
        this(folder, progress, Optional.empty());
    }

    /**
     * Reads the record of a run.
     *
     * @param asked the units that people are shown, where not those of the run
     * @throws InputException if the folder holds no usable record
     */
    public ExplainRun(Path folder, Progress progress, Optional<UnitSystem> asked) {
        this.asked = asked;
        this.folder = folder;
        this.progress = progress;
        this.recorded = RecordedRun.read(folder);
    }

    /** Returns the version of the program that made the run. */
    public String version() {
        return recorded.version();
    }

    /** Returns the units that people are shown: those asked for, else those of the run. */
    public UnitSystem units() {
        return recordedConfig().units();
    }

    private RunConfig recordedConfig() {
        RunConfig config = ConfigReader.readRecorded(recorded.file());
        return asked.map(config::withUnits).orElse(config);
    }

    /**
     * Returns the ids of the spans at some ranks of the run, in the order of the ranks given.
     *
     * @throws InputException if no span has one of the ranks
     */
    public List<String> idsAt(List<Integer> ranks) {
        return RecordedStandings.idsAt(folder, recorded, ranks);
    }

    /**
     * Returns what there is to show of each span. The files are read once.
     *
     * @param spanIds as the data or as the results have them
     * @throws InputException if an input of the run is missing or has changed, or no span has one of the ids
     */
    public List<SpanExplanation> run(List<String> spanIds) {
        RunConfig asRecorded = recordedConfig();
        var files = new RecordedFiles(folder, asRecorded.output());
        RunConfig config = asRecorded.withInputs(files.find(asRecorded.inputs()));
        recorded.inputs().forEach(input -> input.files().forEach(part -> demandUnchanged(files.find(part))));
        InputData inputs = new RankRun(config, progress).read();
        demandSameFiles(inputs, files);
        var explainer = new SpanExplainer(config, inputs, progress);
        List<SpanExplainer.Found> found =
                spanIds.stream().map(id -> explainer.find(id, folder)).toList();
        List<RecordedStanding> standings = RecordedStandings.find(
                folder,
                recorded,
                found.stream().map(span -> Text.clean(span.id())).toList());
        return IntStream.range(0, found.size())
                .mapToObj(place -> explainer.explain(found.get(place), standings.get(place)))
                .toList();
    }

    private void demandUnchanged(RunRecord.Part part) {
        Path file = Path.of(part.file());
        if (!Files.isRegularFile(file)) {
            throw new InputException(
                    file,
                    "the run in " + folder + " read this file, and it is not there",
                    "Start from the folder that the run was started in, or bring the file back.");
        }
        if (!FileDigest.of(file).sha256Hex().equals(part.sha256())) {
            throw new InputException(
                    file, "it has changed since the run in " + folder + " (its SHA-256 is another)", REMEDY);
        }
    }

    /** A file that has come in beside the recorded ones, such as a Shapefile's code page, would be read too. */
    private void demandSameFiles(InputData inputs, RecordedFiles files) {
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
