package org.spanroom.pipeline;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.NearestWord;
import org.spanroom.config.RunConfig;
import org.spanroom.effort.EffortAssessor;
import org.spanroom.finding.InputException;
import org.spanroom.input.FileDigest;
import org.spanroom.input.InputData;
import org.spanroom.model.Assessment;
import org.spanroom.model.EffortLine;
import org.spanroom.model.Network;
import org.spanroom.model.PullTrace;
import org.spanroom.model.RankedSpan;
import org.spanroom.model.Reckoning;
import org.spanroom.model.SpanList;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.RunRecord;
import org.spanroom.output.Text;
import org.spanroom.permit.PermitAssessor;
import org.spanroom.pull.PullAssessor;

/**
 * The whole reckoning of one span of an earlier run: the run once more, on the same files with the same config, which the run's
 * record tells.
 */
public final class ExplainRun {
    private static final int NEAREST_SHOWN = 3;
    private static final String REMEDY = "Bring back what the run read, or make the run again and explain that one.";

    private final Path folder;
    private final Progress progress;
    private final RecordedRun recorded;

    /**
     * Reads the record of a run.
     *
     * @param folder the results of that run
     * @throws InputException if the folder holds no usable record
     */
    public ExplainRun(Path folder, Progress progress) {
        this.folder = folder;
        this.progress = progress;
        this.recorded = RecordedRun.read(folder);
    }

    /** Returns the version of the program that made the run. */
    public String version() {
        return recorded.version();
    }

    /**
     * Returns the reckoning of a span.
     *
     * @throws InputException if an input of the run is missing or has changed, or no span has that id
     */
    public Reckoning run(String spanId) {
        RunConfig asRecorded = ConfigReader.readRecorded(recorded.file());
        var files = new RecordedFiles(folder, asRecorded.output());
        RunConfig config = asRecorded.withInputs(files.find(asRecorded.inputs()));
        recorded.inputs().forEach(input -> input.files().forEach(part -> demandUnchanged(files.find(part))));
        var run = new RankRun(config, progress);
        InputData inputs = run.read();
        demandSameFiles(inputs, files);
        Network network = run.cut(inputs);
        String wanted = idInRun(network, spanId);
        AssessedSpans ranked = run.rank(network, new PermitAssessor(inputs.zones(), config.permit()));
        RankedSpan row = ranked.withId(wanted);
        return new Reckoning(
                row,
                ranked.countRanked(),
                config.pull(),
                traces(row.assessment(), config),
                effortLines(row.assessment(), config),
                config.rates().currency(),
                RankRun.ranking(config).gates(row.assessment(), network.spans()));
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

    /** Returns the id that the data has for a span, given as that or as the results have it, where some characters are replaced. */
    private String idInRun(Network network, String spanId) {
        SpanList spans = network.spans();
        Supplier<Stream<String>> ids = () -> IntStream.range(0, spans.size()).mapToObj(spans::id);
        return ids.get()
                .filter(spanId::equals)
                .findFirst()
                .or(() -> ids.get().filter(id -> Text.clean(id).equals(spanId)).findFirst())
                .orElseThrow(() -> noSuchSpan(spanId, ids.get().toList()));
    }

    private InputException noSuchSpan(String spanId, List<String> ids) {
        List<String> nearest = NearestWord.nearest(spanId, ids, NEAREST_SHOWN);
        return new InputException(
                folder,
                "no span of this run has the id '" + spanId + "'",
                nearest.isEmpty()
                        ? "The run has no spans at all."
                        : "The nearest are: " + String.join(", ", nearest) + ".");
    }

    private static List<EffortLine> effortLines(Assessment assessed, RunConfig config) {
        return assessed.effort()
                .map(effort -> new EffortAssessor(config.rates()).lines(effort.quantities()))
                .orElse(List.of());
    }

    private static List<PullTrace> traces(Assessment assessed, RunConfig config) {
        var assessor = new PullAssessor(config.pull());
        var traces = new ArrayList<PullTrace>();
        int out = assessed.pull().pulls().size();
        for (int turn = 1; turn <= out; turn++) {
            traces.add(assessor.trace(
                    assessed.span(), assessed.bends(), out, turn, config.pull().judgedBy()));
        }
        return traces;
    }
}
