package org.spanroom.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.spanroom.config.OutputConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.pipeline.RankRun;
import org.spanroom.pipeline.RankSummary;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code rank}: the whole main job. */
@Command(
        name = "rank",
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        sortOptions = false,
        header = "Rank spans by the room that recovery gives back.",
        description = {
            "Rank the vault-to-vault spans of a network by the room that recovering",
            "rigid innerducts gives back."
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
        })
final class RankCommand implements Callable<Integer> {
    @ArgGroup(validate = false, heading = "%nInput:%n", order = 1)
    InputOptions input = new InputOptions();

    @ArgGroup(validate = false, heading = "%nOutput:%n", order = 2)
    OutputOptions output = new OutputOptions();

    @ArgGroup(validate = false, heading = "%nRun:%n", order = 3)
    RunOptions run = new RunOptions();

    private final Console console;

    RankCommand(Console console) {
        this.console = console;
    }

    /** The options that say where results go. */
    static final class OutputOptions {
        @Option(names = "--output", paramLabel = "FOLDER", description = "Folder of this run's results.")
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

        RunConfig apply(RunConfig base) {
            OutputConfig output = folder == null ? base.output() : base.output().withFolder(folder);
            return base.withOutput(crs == null ? output : output.withCrs(crs));
        }
    }

    /** Which zones have expired depends on the day, so it is settled here, once, and recorded with the config. */
    private static RunConfig dated(RunConfig config, Instant startedAt) {
        boolean dated = config.permit().findOnDate().isPresent();
        LocalDate today = LocalDate.ofInstant(startedAt, ZoneId.systemDefault());
        return dated ? config : config.withPermit(config.permit().withOnDate(today));
    }

    @Override
    public Integer call() {
        Instant startedAt = Instant.now();
        RunConfig config = dated(run.apply(output.apply(input.apply())), startedAt);
        RankSummary summary = new RankRun(config, console.progress())
                .run(output.overwrite, SpanroomCommand.Version.text(), startedAt);
        console.out().print(RankReport.text(summary));
        console.out().flush();
        return config.strict() && summary.findingsToMend() > 0 ? ExitCode.FINDINGS : ExitCode.OK;
    }
}
