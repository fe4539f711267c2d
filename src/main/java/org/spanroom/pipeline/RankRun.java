package org.spanroom.pipeline;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.input.InputData;
import org.spanroom.input.InputRecord;
import org.spanroom.model.Assessment;
import org.spanroom.model.Network;
import org.spanroom.model.RankedSpan;
import org.spanroom.model.Span;
import org.spanroom.output.OutputSettings;
import org.spanroom.output.ResultWriter;
import org.spanroom.output.Results;
import org.spanroom.output.RunRecord;
import org.spanroom.output.WrittenResults;
import org.spanroom.rank.Ranking;

/** The whole main job, from layers to ranked layers. Read {@link #run} first: each line is a stage, each stage a package. */
public final class RankRun {
    private final RunConfig config;
    private final Progress progress;
    private final FindingLog findings = new FindingLog();

    public RankRun(RunConfig config, Progress progress) {
        this.config = config;
        this.progress = progress;
    }

    /**
     * Reads, cuts, assesses, ranks and writes.
     *
     * @param overwrite whether results of an earlier run may be replaced
     * @param version of the program, for the record
     * @param startedAt for the record; nothing else depends on it
     * @throws org.spanroom.finding.InputException if an input cannot be used
     * @throws org.spanroom.output.OutputException if results cannot be written
     */
    public RankSummary run(boolean overwrite, String version, Instant startedAt) {
        Optional<ReferenceSystem> askedCrs = askedCrs();
        ResultWriter.check(settings(overwrite, ReferenceSystem.crs84()));
        InputData inputs = read();
        Network network = cut(inputs);
        List<RankedSpan> ranked = rank(network);
        var record = new RunRecord(
                version,
                startedAt,
                ConfigReader.asMap(config),
                inputs.records().stream().map(RankRun::recordOf).toList());
        var results = new Results(network, ranked, findings.all(), record);
        WrittenResults written = write(results, settings(overwrite, askedCrs.orElse(inputs.crs())));
        return new RankSummary(network, ranked, findings.countByCode(), findings.countToMend(), written);
    }

    InputData read() {
        return new SpanRun(config, findings, progress).read();
    }

    Network cut(InputData inputs) {
        return new SpanRun(config, findings, progress).cut(inputs);
    }

    /** Returns all spans, assessed, the best first. */
    List<RankedSpan> rank(Network network) {
        List<Assessment> assessed = assess(network.spans());
        new DataDoubts(config).report(assessed, findings);
        return rank(assessed);
    }

    private List<Assessment> assess(List<Span> spans) {
        progress.begin("assess spans", spans.size());
        var assessor = new SpanAssessor(config);
        List<Assessment> assessed = new Parallel(SpanRun.threads(config)).map(spans, assessor::assess, progress);
        progress.end(String.format(Locale.ROOT, "%,d spans: bends, room, pull", assessed.size()));
        return assessed;
    }

    private List<RankedSpan> rank(List<Assessment> assessed) {
        progress.begin("rank spans", assessed.size());
        List<RankedSpan> ranked = new Ranking(config.scoring()).rank(assessed);
        long excluded = ranked.stream().filter(span -> span.rank().isEmpty()).count();
        progress.end(String.format(Locale.ROOT, "%,d ranked, %,d excluded", ranked.size() - excluded, excluded));
        return ranked;
    }

    private WrittenResults write(Results results, OutputSettings settings) {
        progress.begin("write results", -1);
        WrittenResults written = ResultWriter.write(results, settings);
        progress.end(written.files().size() + " files in " + written.folder());
        return written;
    }

    private OutputSettings settings(boolean overwrite, ReferenceSystem crs) {
        Path folder = config.output().folder().orElse(Path.of("output", "run"));
        return new OutputSettings(folder, overwrite, crs, SpanRun.threads(config));
    }

    static RunRecord.Input recordOf(InputRecord input) {
        return new RunRecord.Input(
                input.role(),
                input.file().toString(),
                input.layer(),
                input.crsName(),
                input.digests().isEmpty() ? "" : input.digests().get(0).sha256Hex(),
                input.digests().stream()
                        .skip(1)
                        .map(part -> new RunRecord.Part(part.file().toString(), part.sha256Hex()))
                        .toList(),
                input.featuresRead(),
                input.featuresUsed(),
                input.featuresRejected(),
                input.rejectedByCode().entrySet().stream()
                        .collect(Collectors.toMap(entry -> entry.getKey().key(), Map.Entry::getValue)));
    }

    /** Returns the reference system that results are asked in, before any work is done for them. */
    private Optional<ReferenceSystem> askedCrs() {
        try {
            return config.output().crs().map(ReferenceSystem::parse);
        } catch (IllegalArgumentException e) {
            String asked = config.output().crs().orElse("");
            throw new InputException(
                    Path.of("output.crs"),
                    "the reference system '" + asked + "' for the results is not known: " + e.getMessage(),
                    "Name one such as EPSG:2263 with --output-crs or output.crs.",
                    e);
        }
    }
}
