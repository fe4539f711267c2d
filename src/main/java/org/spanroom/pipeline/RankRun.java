package org.spanroom.pipeline;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.spanroom.bore.RoomAssessor;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.effort.VaultAssessor;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.UnitDoubts;
import org.spanroom.input.InputData;
import org.spanroom.input.InputRecord;
import org.spanroom.input.layer.Interner;
import org.spanroom.model.network.Network;
import org.spanroom.model.permit.Zone;
import org.spanroom.model.permit.ZoneUse;
import org.spanroom.model.rank.ContentsAccount;
import org.spanroom.model.rank.FieldCheck;
import org.spanroom.model.rank.LearnedChances;
import org.spanroom.model.survey.SurveyStop;
import org.spanroom.output.OutputSettings;
import org.spanroom.output.PackedSpans;
import org.spanroom.output.ResultWriter;
import org.spanroom.output.Results;
import org.spanroom.output.RunRecord;
import org.spanroom.output.Selection;
import org.spanroom.output.WrittenResults;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.folder.OutputFolder;
import org.spanroom.permit.PermitAssessor;
import org.spanroom.rank.Ranking;

/** The whole main job, from layers to ranked layers. Read {@link #run} first: each line is a stage, each stage a package. */
public final class RankRun {
    /** How many of the best sections a summary shows. */
    private static final int BEST = 5;

    private final RunConfig config;
    private final Progress progress;
    private final SpanChoice choice;
    private final FindingLog findings = new FindingLog();
    private final RoomAssessor rooms;

    public RankRun(RunConfig config, Progress progress) {
        this(config, progress, SpanChoice.ALL);
    }

    /** A run that writes only the rows of some spans; all else it does is as if it wrote all. */
    public RankRun(RunConfig config, Progress progress, SpanChoice choice) {
        this.config = config;
        this.progress = progress;
        this.choice = choice;
        this.rooms = new RoomAssessor(config.room());
    }

    /**
     * Reads, cuts, assesses, ranks and writes.
     *
     * @param overwrite whether results of an earlier run may be replaced
     * @param version of the program, for the record
     * @param startedAt for the record; nothing else depends on it
     * @throws org.spanroom.finding.InputException if an input cannot be used
     * @throws org.spanroom.finding.UsageException if the choice of spans cannot be used
     * @throws org.spanroom.output.folder.OutputException if results cannot be written
     */
    public RankSummary run(boolean overwrite, String version, Instant startedAt) {
        Optional<ReferenceSystem> askedCrs = ConfiguredParts.askedCrs(config.output());
        PackingMemory.check(config.output());
        ProgramFolder.demandOutside(config.output().resultsFolder(), filesRead());
        Selection selection = choice.of(SpanColumns.all(RowStore.layoutOfAll(config)), config);
        try (var folder = ResultWriter.begin(settings(overwrite, ReferenceSystem.crs84()))) {
            return runIn(new RunStart(version, startedAt, overwrite, selection, folder), askedCrs);
        }
    }

    /** What a run begins with. */
    private record RunStart(
            String version, Instant startedAt, boolean overwrite, Selection selection, OutputFolder folder) {}

    private List<Path> filesRead() {
        var files = new ArrayList<Path>();
        // Each file passes through once, and stays as it is.
        config.inputs().withFiles(file -> {
            files.add(file);
            return file;
        });
        choice.within().ifPresent(files::add);
        return files;
    }

    private RankSummary runIn(RunStart start, Optional<ReferenceSystem> askedCrs) {
        Spans spans = readAndCut();
        Optional<PackedSpans> rows = start.selection().isAll()
                ? RowStore.of(
                        config,
                        spans.network().spans(),
                        spans.roomForRows(),
                        start.folder().path())
                : Optional.empty();
        try {
            return rankAndWrite(start, askedCrs, spans, rows);
        } finally {
            rows.ifPresent(PackedSpans::close);
        }
    }

    private RankSummary rankAndWrite(
            RunStart start, Optional<ReferenceSystem> askedCrs, Spans spans, Optional<PackedSpans> rows) {
        Network network = spans.network();
        AssessedSpans ranked = rank(network, spans.permits(), spans.learned(), rows);
        var record = new RunRecord(start.version(), start.startedAt(), ConfigReader.asMap(config), spans.inputs());
        List<FieldCheck> checks = ranked.fieldChecks(SpanRun.threads(config), progress);
        progress.begin("form sections", -1);
        RunSections sections = ranked.sections();
        var stage = new ContentsStage(config, network, ranked);
        List<Finding> found = findings.all();
        ContentsAccount contents = stage.account(spans.routes(), found);
        List<SurveyStop> survey = stage.survey();
        progress.end(sectionWords(sections, survey));
        BankPlaces bankPlaces = sections.bankPlaces();
        var results = new Results(
                network,
                bankPlaces.among(ranked),
                ranked.money(sections),
                sections,
                found,
                checks,
                contents,
                survey,
                spans.zones(),
                record,
                config.inputs().routes().keep(),
                start.selection(),
                rows.flatMap(all -> RowStore.result(all, ranked, bankPlaces)));
        ReferenceSystem crs = askedCrs.orElse(spans.crs().identified());
        WrittenResults written = write(results, settings(start.overwrite(), crs), start.folder());
        return new RankSummary(
                network,
                best(ranked, sections),
                sections.countRanked(),
                written.totals(),
                findings.countByCode(),
                findings.countToFix(),
                UnitDoubts.sentences(found),
                contents,
                survey,
                written);
    }

    private static String sectionWords(RunSections sections, List<SurveyStop> survey) {
        return String.format(
                Locale.ROOT,
                "%,d sections with a ranked span, %,d vaults to survey",
                sections.countRanked(),
                survey.size());
    }

    private static List<RankSummary.Best> best(AssessedSpans ranked, RunSections sections) {
        return IntStream.range(0, Math.min(BEST, sections.countRanked()))
                .mapToObj(section -> new RankSummary.Best(ranked.at(sections.best(section)), sections.get(section)))
                .toList();
    }

    /**
     * What is needed of the inputs once they are cut: not the routes, which take as much memory as their spans.
     *
     * @param crs the reference system of the routes
     * @param routes the record of their layer
     * @param learned what opened ducts say of the others
     * @param roomForRows whether the heap has room for the packed rows of all spans
     */
    private record Spans(
            Network network,
            PermitAssessor permits,
            List<ZoneUse> zones,
            ReferenceSystem crs,
            InputRecord routes,
            List<RunRecord.Input> inputs,
            LearnedChances learned,
            boolean roomForRows) {}

    private Spans readAndCut() {
        var spanRun = new SpanRun(config, findings, progress);
        // A packing file may know the rooms sooner.
        boolean remembered = config.output().packingFile().isPresent();
        InputData inputs = remembered ? spanRun.read() : spanRun.read(new RoomsMeanwhile(rooms));
        var permits = new PermitAssessor(inputs.zones(), config.permit(), ConfiguredParts.access(config));
        Network network = cut(inputs);
        UsableInputs.demandSpans(inputs, network, findings, config.network().snapToleranceM());
        boolean roomForRows = MemoryNeed.demand(
                inputs.routes(),
                network,
                config.uncertainty().simulated(),
                Runtime.getRuntime().maxMemory());
        return new Spans(
                located(network, permits),
                permits,
                inputs.zones().stream()
                        .map(zone -> ZoneUse.of(zone, config.permit(), inputs.source("zones", zone.sequence())))
                        .toList(),
                inputs.crs(),
                routes(inputs),
                inputs.records().stream().map(RankRun::recordOf).toList(),
                LearnedOfRun.chances(config, inputs),
                roomForRows);
    }

    private static InputRecord routes(InputData inputs) {
        return inputs.records().stream()
                .filter(input -> input.role().equals("routes"))
                .findFirst()
                .orElseThrow();
    }

    InputData read() {
        return new SpanRun(config, findings, progress).read();
    }

    /** Reads again what an earlier run has read. */
    InputData readAsOf(String bookSha256) {
        return new SpanRun(config, findings, progress).readAsOf(bookSha256);
    }

    Network cut(InputData inputs) {
        return new SpanRun(config, findings, progress).cut(inputs);
    }

    /** Returns all spans, assessed, the best first. */
    AssessedSpans rank(Network network, PermitAssessor permits, LearnedChances learned) {
        return rank(network, permits, learned, Optional.empty());
    }

    /** @param rows packs the rows of the spans meanwhile */
    private AssessedSpans rank(
            Network network, PermitAssessor permits, LearnedChances learned, Optional<PackedSpans> rows) {
        progress.begin("assess spans", network.spans().size());
        var assessor = new SpanAssessor(config, permits, network.spans().size(), rooms);
        Ranking ranking = ConfiguredParts.ranking(config, learned);
        var look = new AssessedSpans.FirstLook(
                new DataDoubts(findings),
                RankConfidenceRun.of(
                        config,
                        Scenarios.of(config, assessor, ranking, learned),
                        network.spans().size()),
                new MoneyRun(config, assessor.rates(), network.spans().size()),
                new ScenarioRun(config, assessor),
                rows,
                progress,
                SpanRun.threads(config));
        var memory = new PackingMemory(config.output(), findings);
        memory.recall(assessor.rooms());
        AssessedSpans ranked = AssessedSpans.of(network.spans(), assessor, ranking, look);
        memory.keep(assessor.rooms());
        progress.end(String.format(
                Locale.ROOT, "%,d ranked, %,d excluded", ranked.countRanked(), ranked.size() - ranked.countRanked()));
        return ranked;
    }

    /** Returns the network with the zones that its vaults lie in, and what crews prepare for there. */
    Network located(Network network, PermitAssessor permits) {
        var assessor = new VaultAssessor(config.rates(), config.vaultKinds());
        // Most vaults need the same.
        var interner = new Interner();
        return network.withVaults(network.vaults().stream()
                .map(use -> {
                    List<Zone> zones = permits.zonesAt(use.vault());
                    return use.with(zones, interner.one(assessor.assess(use.vault(), zones)));
                })
                .toList());
    }

    private WrittenResults write(Results results, OutputSettings settings, OutputFolder folder) {
        progress.begin("write results", results.spans().size());
        WrittenResults written = ResultWriter.write(results, settings, folder, progress::advance);
        progress.end(written.files().size() + " files in " + written.folder());
        if (results.packed().isEmpty()) {
            // Columns may have asked for evidence as they were written, which took searches.
            new PackingMemory(config.output(), new FindingLog()).keep(rooms);
        }
        return written;
    }

    private OutputSettings settings(boolean overwrite, ReferenceSystem crs) {
        return ConfiguredParts.settings(config, overwrite, crs);
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
}
