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
import org.spanroom.output.OutputFolder;
import org.spanroom.output.OutputSettings;
import org.spanroom.output.ResultWriter;
import org.spanroom.output.Results;
import org.spanroom.output.RunRecord;
import org.spanroom.output.WrittenResults;
import org.spanroom.permit.PermitAssessor;
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
        try (var folder = ResultWriter.begin(settings(overwrite, ReferenceSystem.crs84()))) {
            return run(new RunStart(version, startedAt, overwrite, folder), askedCrs);
        }
    }

    /** What a run begins with. */
    private record RunStart(String version, Instant startedAt, boolean overwrite, OutputFolder folder) {}

    private RankSummary run(RunStart start, Optional<ReferenceSystem> askedCrs) {
        InputData inputs = read();
        var permits = new PermitAssessor(inputs.zones(), config.permit());
        Network network = located(cut(inputs), permits);
        List<RankedSpan> ranked = rank(network, permits);
        var record = new RunRecord(
                start.version(),
                start.startedAt(),
                ConfigReader.asMap(config),
                inputs.records().stream().map(RankRun::recordOf).toList());
        var results = new Results(network, ranked, findings.all(), record);
        OutputSettings settings = settings(start.overwrite(), askedCrs.orElse(inputs.crs()));
        WrittenResults written = write(results, settings, start.folder());
        return new RankSummary(network, ranked, findings.countByCode(), findings.countToMend(), written);
    }

    InputData read() {
        return new SpanRun(config, findings, progress).read();
    }

    Network cut(InputData inputs) {
        return new SpanRun(config, findings, progress).cut(inputs);
    }

    /** Returns all spans, assessed, the best first. */
    List<RankedSpan> rank(Network network, PermitAssessor permits) {
        List<Assessment> assessed = assess(network.spans(), permits);
        new DataDoubts(config).report(assessed, findings);
        return rank(assessed);
    }

    /** Returns the network with the zones that its vaults lie in. */
    private static Network located(Network network, PermitAssessor permits) {
        return network.withVaults(network.vaults().stream()
                .map(use -> use.withZones(permits.zonesAt(use.vault())))
                .toList());
    }

    private List<Assessment> assess(List<Span> spans, PermitAssessor permits) {
        progress.begin("assess spans", spans.size());
        var assessor = new SpanAssessor(config, permits);
        List<Assessment> assessed = new Parallel(SpanRun.threads(config)).map(spans, assessor::assess, progress);
        progress.end(String.format(Locale.ROOT, "%,d spans: bends, room, pull", assessed.size()));
        return assessed;
    }

    static Ranking ranking(RunConfig config) {
        return config.permit()
                .findOnDate()
                .map(day -> new Ranking(config.scoring(), config.room(), day))
                .orElseGet(() -> new Ranking(config.scoring(), config.room()));
    }

    private List<RankedSpan> rank(List<Assessment> assessed) {
        progress.begin("rank spans", assessed.size());
        List<RankedSpan> ranked = ranking(config).rank(assessed);
        long excluded = ranked.stream().filter(span -> span.rank().isEmpty()).count();
        progress.end(String.format(Locale.ROOT, "%,d ranked, %,d excluded", ranked.size() - excluded, excluded));
        return ranked;
    }

    private WrittenResults write(Results results, OutputSettings settings, OutputFolder folder) {
        progress.begin("write results", -1);
        WrittenResults written = ResultWriter.write(results, settings, folder);
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
