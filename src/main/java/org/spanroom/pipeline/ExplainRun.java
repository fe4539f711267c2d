package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.spanroom.finding.InputException;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.rank.RecordedStanding;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.table.Text;

/**
 * Everything about some spans of an earlier run: calculated again from the same files with the same config, which the run's record
 * names, and put beside their ranks in the results. All files are read, once; of the routes only those are cut that a span depends on
 * ({@link SpanExplainer}), and that span alone is assessed.
 */
public final class ExplainRun {
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
        return RecordedInputs.config(recorded, asked).units();
    }

    /**
     * Demands that an annual program was made of this run.
     *
     * @param program its folder
     * @throws InputException if it was made of another run, or the folder holds no program that can be read
     */
    public void demandProgram(Path program) {
        ProgramOfRun.demand(program, recorded);
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
        RecordedInputs read = RecordedInputs.read(folder, recorded, progress, asked);
        var explainer = new SpanExplainer(read.config(), read.inputs(), progress);
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
}
