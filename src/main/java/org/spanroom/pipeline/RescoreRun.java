package org.spanroom.pipeline;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.finding.InputException;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.OutputFormat;
import org.spanroom.model.rank.CriterionInfo;
import org.spanroom.model.rank.RankedSection;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.RescoredSpan;
import org.spanroom.model.rank.ScoringSettings;
import org.spanroom.output.OutputSettings;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.RecordedSpans;
import org.spanroom.output.RescoredColumns;
import org.spanroom.output.RescoredWriter;
import org.spanroom.output.ResultWriter;
import org.spanroom.output.RunRecord;
import org.spanroom.output.Selection;
import org.spanroom.output.WrittenResults;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.output.columns.StandingColumns;
import org.spanroom.output.table.Table;
import org.spanroom.rank.Rescoring;

/**
 * Another scoring on the spans of an earlier run: weights, curves and gates may be others, everything else is read back as the run
 * wrote it. Holds all spans at once.
 */
public final class RescoreRun {
    private final Path from;
    private final Progress progress;
    private final SpanChoice choice;

    public RescoreRun(Path from, Progress progress) {
        this(from, progress, SpanChoice.ALL);
    }

    /** Writes only the rows of some spans. */
    public RescoreRun(Path from, Progress progress, SpanChoice choice) {
        this.from = from;
        this.progress = progress;
        this.choice = choice;
    }

    /**
     * What came out.
     *
     * @param spans the best first
     * @param sections the best first; empty where the earlier run did not write what they are made of
     */
    public record RescoreSummary(
            List<RescoredSpan> spans, Optional<List<RankedSection>> sections, WrittenResults written) {
        public RescoreSummary {
            spans = List.copyOf(spans);
        }
    }

    /**
     * Ranks again and writes.
     *
     * @param scoring a file of scoring, as the config's section
     * @param options puts what the user asks for into the config of the earlier run: where results go and how they are written
     * @throws InputException if the folder holds no such run, or the scoring asks for what the run did not calculate
     * @throws org.spanroom.finding.UsageException if the results would replace the earlier run or the file of scoring
     * @throws org.spanroom.output.folder.OutputException if the results cannot be written
     */
    public RescoreSummary run(Path scoring, UnaryOperator<RunConfig> options, boolean overwrite, Instant writtenAt) {
        RecordedRun earlier = RecordedRun.read(from);
        if (earlier.filtered()) {
            throw new InputException(
                    from,
                    "the run wrote some of its spans only (--where or --within), and ranks are those among all",
                    "Make the run again without them; --where and --within also work with --from.");
        }
        RunConfig recorded = ConfigReader.readRecorded(earlier.file());
        RunConfig config = options.apply(ConfigReader.withSection(recorded, "scoring", scoring));
        demandSameQuantities(recorded.scoring(), config.scoring(), scoring);
        RecordedSpans recordedSpans = RecordedScores.open(earlier);
        Optional<ReferenceSystem> asked = ConfiguredParts.askedCrs(config.output());
        OutputSettings settings = ConfiguredParts.settings(config, overwrite, asked.orElseGet(earlier::outputSystem));
        ProgramFolder.check(from, settings.folder(), List.of(scoring));
        demandShapes(settings, recordedSpans);
        try (var folder = ResultWriter.begin(settings)) {
            RescoredWriter.Rescored rescored = rescored(recordedSpans, config, scoring);
            var record = new RunRecord(earlier.version(), writtenAt, ConfigReader.asMap(config), earlier.inputs());
            String crsName = asked.map(ReferenceSystem::name).orElse(earlier.outputCrs());
            var origin = new RescoredWriter.Origin(from, earlier.lengths(), crsName, record);
            return new RescoreSummary(
                    rescored.kept(), rescored.sections(), RescoredWriter.write(rescored, origin, settings, folder));
        }
    }

    private RescoredWriter.Rescored rescored(RecordedSpans recorded, RunConfig config, Path scoring) {
        progress.begin("rank spans again", -1);
        var rescoring = new Rescoring(config.scoring(), config.room());
        List<String> fields = config.inputs().routes().keep();
        Table<RankedSpan> whole =
                SpanColumns.all(new SpanLayout(rescoring.criteria(), false, fields, ColumnGroup.all()));
        Table<RescoredSpan> table = RescoredColumns.of(whole, rescoring.criteria(), recorded.columns());
        Selection selection = choice.of(table, config);
        List<RescoredSpan> spans = Rescoring.ranked(read(recorded, rescoring, scoring));
        List<RescoredSpan> kept =
                spans.stream().filter(selection.of(table, RescoredSpan::lonLat)).toList();
        Set<String> keptIds = kept.stream().map(RescoredSpan::spanId).collect(Collectors.toSet());
        progress.end(String.format(Locale.ROOT, "%,d spans", spans.size()));
        var sums = new RescoredSums(recorded.columns(), spans);
        return new RescoredWriter.Rescored(
                rescoring.criteria(),
                recorded.columns(),
                spans,
                RescoredSections.find(recorded.columns(), spans, keptIds),
                name -> RecordedTables.find(from, name),
                config.rates().currency(),
                fields,
                selection.asked(),
                kept,
                config.scenarios().typical(),
                sums.sharedBuildMoney(),
                sums.deciders());
    }

    /** Of the files of a run only its GeoPackage has every table with its shapes; CSV files without shapes make other CSV files. */
    private void demandShapes(OutputSettings settings, RecordedSpans recorded) {
        if (!hasGeoPackage() && recorded.hasLines() && !settings.formats().equals(Set.of(OutputFormat.CSV))) {
            throw new InputException(
                    from,
                    "the run wrote no " + RecordedRun.GEOPACKAGE + ", which has the shapes of its layers",
                    "Choose --formats csv, or make the run again with GeoPackage among its formats.");
        }
    }

    private boolean hasGeoPackage() {
        return Files.isRegularFile(from.resolve(RecordedRun.GEOPACKAGE));
    }

    private List<RescoredSpan> read(RecordedSpans recorded, Rescoring rescoring, Path scoring) {
        List<String> columns = recorded.columns();
        demandQuantities(RecordedScores.missing(rescoring, columns), scoring);
        var scores = new RecordedScores(rescoring, columns);
        int id = columns.indexOf(StandingColumns.SPAN_ID.name());
        int exclusions = columns.indexOf(StandingColumns.REASONS.name());
        int cautions = columns.indexOf(StandingColumns.CAUTIONS.name());
        var spans = new ArrayList<RescoredSpan>();
        RecordedLines lines = RecordedLines.of(from, recorded);
        recorded.read(RecordedScores.types(), true, row -> {
            Set<String> reasons = new HashSet<>(keys(row, exclusions));
            reasons.addAll(keys(row, cautions));
            var verdict = rescoring.verdict(reasons);
            spans.add(new RescoredSpan(
                    row.text(id),
                    row.values(),
                    lines.of(row.text(id), row),
                    OptionalInt.empty(),
                    scores.of(row),
                    verdict));
        });
        return spans;
    }

    private static void demandQuantities(List<CriterionInfo> missing, Path scoring) {
        if (!missing.isEmpty()) {
            throw new InputException(
                    scoring,
                    "criterion '" + missing.get(0).key() + "' has a weight, and the run did not calculate its quantity",
                    "Make the run again with this scoring, or give the criterion the weight 0.");
        }
    }

    /** Reasons that excluded stand in one column, those whose gate was open in the other, among the cautions. */
    private static List<String> keys(RecordedSpans.Row row, int place) {
        return place < 0 ? List.of() : List.of(row.text(place).split(";", -1));
    }

    /** What quantities and reasons are calculated from cannot change without another run. */
    private void demandSameQuantities(ScoringSettings before, ScoringSettings now, Path scoring) {
        boolean same = before.unknownConsentExcludes() == now.unknownConsentExcludes()
                && before.hardVaultKinds().equals(now.hardVaultKinds())
                && before.hardVaultSurfaces().equals(now.hardVaultSurfaces())
                && before.knowledge().equals(now.knowledge());
        if (!same) {
            throw new InputException(
                    scoring,
                    "it changes unknown_consent_excludes, hard_vault_kinds, hard_vault_surfaces or knowledge, which the run in "
                            + from + " was calculated with",
                    "Change weights, curves and gates only, or make the run again.");
        }
    }
}
