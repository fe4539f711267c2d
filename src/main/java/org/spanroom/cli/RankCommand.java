package org.spanroom.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.OutputConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.OutputFormat;
import org.spanroom.model.UnitSystem;
import org.spanroom.pipeline.RankRun;
import org.spanroom.pipeline.RankSummary;
import org.spanroom.pipeline.RescoreRun;
import org.spanroom.pipeline.SpanChoice;
import picocli.CommandLine;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code rank}: the whole main job. */
@Command(
        name = "rank",
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        sortOptions = false,
        header = "Rank spans by the room that recovery gives back.",
        description = {
            "Rank the vault-to-vault spans of a network by the room that recovering",
            "rigid innerducts gives back, and write the results as layers and tables.",
            "",
            "With --from and --scoring, rank the spans of an earlier run again with other",
            "weights, curves or gates; everything else stays as in that run. Only --output,",
            "--overwrite, --output-crs, --formats, --columns, --threads, --units, --where,",
            "--within, --json and --quiet can be used with --from."
        },
        exitCodeListHeading = SpanroomCommand.EXIT_HEADING,
        exitCodeList = {
            SpanroomCommand.EXIT_0,
            SpanroomCommand.EXIT_1,
            SpanroomCommand.EXIT_2,
            SpanroomCommand.EXIT_3,
            SpanroomCommand.EXIT_4,
            SpanroomCommand.EXIT_5,
            SpanroomCommand.EXIT_6
        },
        footerHeading = SpanroomCommand.EXAMPLES_HEADING,
        footer = {
            "  spanroom rank --config sample-gis/spanroom.yaml --output output/demo",
            "  spanroom rank --from output/demo --scoring config/scoring.yaml \\",
            "      --output output/mine"
        })
final class RankCommand implements Callable<Integer> {
    /** The options that have a meaning where the spans are those of an earlier run. */
    private static final Set<String> USED_WITH_FROM = Set.of(
            "--from",
            "--scoring",
            "--output",
            "--overwrite",
            "--output-crs",
            "--formats",
            "--columns",
            "--threads",
            "--units",
            "--where",
            "--within",
            "--json",
            "--quiet");

    @ArgGroup(validate = false, heading = "%nInput:%n", order = 1)
    InputOptions input = new InputOptions();

    @ArgGroup(validate = false, heading = "%nOutput:%n", order = 2)
    OutputOptions output = new OutputOptions();

    @ArgGroup(validate = false, heading = "%nRun:%n", order = 3)
    RunOptions run = new RunOptions();

    @ArgGroup(validate = false, heading = "%nScoring:%n", order = 4)
    ScoringOptions scoring = new ScoringOptions();

    @ArgGroup(validate = false, heading = "%nRows to write:%n", order = 5)
    RowOptions rows = new RowOptions();

    private final Console console;

    RankCommand(Console console) {
        this.console = console;
    }

    /** The options that say where results go. */
    static final class OutputOptions {
        @Option(
                names = "--output",
                paramLabel = "FOLDER",
                description = "Folder of this run's results. By default the one that the config names.")
        @Nullable
        Path folder;

        @Option(names = "--overwrite", description = "Replace the results of an earlier run in that folder.")
        boolean overwrite;

        @Option(
                names = "--output-crs",
                paramLabel = "CRS",
                description = "Reference system of GeoPackage and Shapefile; that of the routes by default.")
        @Nullable
        String crs;

        @Option(
                names = "--formats",
                paramLabel = "FORMAT",
                split = ",",
                converter = OptionWord.OfResults.class,
                completionCandidates = OptionWord.OfResults.class,
                description = "Formats of the results, joined by commas: ${COMPLETION-CANDIDATES}; or by file"
                        + " extension: gpkg, shp, json. GeoPackage and CSV by default.")
        @Nullable
        List<OutputFormat> formats;

        @Option(
                names = "--columns",
                paramLabel = "GROUP",
                split = ",",
                converter = OptionWord.OfColumns.class,
                completionCandidates = OptionWord.OfColumns.class,
                description = {
                    "Columns and tables in addition to the core columns, joined by commas:",
                    "${COMPLETION-CANDIDATES}. The data dictionary lists them."
                })
        @Nullable
        List<ColumnGroup> columns;

        RunConfig apply(RunConfig base) {
            OutputConfig output = folder == null ? base.output() : base.output().withFolder(folder);
            output = formats == null ? output : output.withFormats(formats);
            output = columns == null ? output : output.withColumns(columns);
            return base.withOutput(crs == null ? output : output.withCrs(crs));
        }
    }

    /** The options that choose spans. */
    static final class RowOptions {
        @Option(
                names = "--where",
                paramLabel = "EXPRESSION",
                description = "Write only spans that meet a condition on columns of spans.csv, in ECQL, such as"
                        + " \"rank <= 100 AND duct LIKE 'B18%%'\". Ranks stay those of the whole run.")
        @Nullable
        String where;

        @Option(
                names = "--within",
                paramLabel = "FILE",
                description = "Write only spans that are wholly or partly inside the polygons of this file.")
        @Nullable
        Path within;

        SpanChoice choice() {
            return new SpanChoice(Optional.ofNullable(where), Optional.ofNullable(within));
        }
    }

    /** The options that try another scoring. */
    static final class ScoringOptions {
        @Option(
                names = "--scoring",
                paramLabel = "FILE",
                description = "Weights, curves and gates, like config/scoring.yaml.")
        @Nullable
        Path file;

        @Option(
                names = "--from",
                paramLabel = "FOLDER",
                description = "Results of an earlier run. Its spans are ranked again with --scoring.")
        @Nullable
        Path from;

        RunConfig apply(RunConfig base) {
            return file == null ? base : ConfigReader.withSection(base, "scoring", file);
        }
    }

    @Spec
    @Nullable
    CommandSpec spec;

    /** Which zones have expired depends on the day, so it is settled here, once, and recorded with the config. */
    private static RunConfig dated(RunConfig config, Instant startedAt) {
        boolean dated = config.permit().findOnDate().isPresent();
        LocalDate today = LocalDate.ofInstant(startedAt, ZoneId.systemDefault());
        return dated ? config : config.withPermit(config.permit().withOnDate(today));
    }

    @Override
    public Integer call() {
        Instant startedAt = Instant.now();
        if (scoring.from != null) {
            return rankAgain(scoring.from, startedAt);
        }
        RunConfig config = dated(scoring.apply(run.apply(output.apply(input.apply()))), startedAt);
        RankSummary summary = new RankRun(config, console.progress(), rows.choice())
                .run(output.overwrite, SpanroomCommand.Version.text(), startedAt);
        show(run.json ? SummaryJson.of(summary) : RankReport.text(summary, config.units()));
        return config.strict() && summary.findingsToFix() > 0 ? ExitCode.FINDINGS : ExitCode.OK;
    }

    private int rankAgain(Path from, Instant startedAt) {
        if (scoring.file == null || output.folder == null) {
            throw new ParameterException(
                    commandLine(), "--from needs --scoring FILE, and --output FOLDER for the new results");
        }
        refuseUnused();
        UnitSystem[] units = {UnitSystem.METRIC};
        var summary = new RescoreRun(from, console.progress(), rows.choice())
                .run(
                        scoring.file,
                        config -> {
                            RunConfig applied = run.apply(output.apply(config));
                            units[0] = applied.units();
                            return applied;
                        },
                        output.overwrite,
                        startedAt);
        show(run.json ? SummaryJson.of(summary) : RescoreReport.text(summary, units[0]));
        return ExitCode.OK;
    }

    /** What a user asks for as JSON is shown even where he wants no summary. */
    private void show(String text) {
        if (run.json) {
            console.answer(text);
        } else {
            console.summary(text);
        }
    }

    /** An option that --from does not use must not be ignored silently. */
    private void refuseUnused() {
        List<String> unused = commandLine().getParseResult().matchedOptions().stream()
                .map(CommandLine.Model.OptionSpec::longestName)
                .filter(option -> !USED_WITH_FROM.contains(option))
                .toList();
        if (!unused.isEmpty()) {
            throw new ParameterException(
                    commandLine(),
                    "--from cannot be used with " + String.join(", ", unused)
                            + ": everything except the scoring is taken from the earlier run; run rank on the "
                            + "inputs to change it");
        }
    }

    private CommandLine commandLine() {
        if (spec == null) {
            throw new IllegalStateException("picocli has not injected the command's spec");
        }
        return spec.commandLine();
    }
}
