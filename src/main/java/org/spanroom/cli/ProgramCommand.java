package org.spanroom.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.spanroom.config.ProgramConfig;
import org.spanroom.config.ProgramConfigReader;
import org.spanroom.pipeline.ProgramAccount;
import org.spanroom.pipeline.ProgramRun;
import org.spanroom.pipeline.ProgramRun.ProgramSummary;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code program}: what is recovered in which year, week and by which crew, within budgets. */
@Command(
        name = "program",
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        sortOptions = false,
        header = "Make the annual program: years, weeks and crews within budgets.",
        description = {
            "Choose which spans are recovered in which year, so that the program is worth",
            "most within the money and crew-hours of each year, and put them into weeks of",
            "crews: permits in time, stop windows, embargoes, zone dates, change freezes,",
            "vault set-ups shared by neighbors. The result comes with a bound: no year plan",
            "can be worth more. Also what other budgets buy, what each condition costs, how",
            "often each span stays chosen over the draws of the run, and a reserve in order.",
            "Writes layers (program.gpkg), tables, program.ics and program.json.",
            ""
        },
        exitCodeListHeading = SpanroomCommand.EXIT_HEADING,
        exitCodeList = {
            SpanroomCommand.EXIT_0,
            SpanroomCommand.EXIT_1,
            SpanroomCommand.EXIT_2,
            "3:the folder holds no run, the config cannot be used, or the musts cannot be kept",
            SpanroomCommand.EXIT_5,
            SpanroomCommand.EXIT_6
        },
        footerHeading = SpanroomCommand.EXAMPLES_HEADING,
        footer = {
            "  spanroom program output/demo --config sample-gis/program.yaml \\",
            "      --output output/program",
            "  spanroom program output/demo --config sample-gis/program.yaml \\",
            "      --failed B19-2:V1-1049:V1-1050 --output output/program-2"
        })
final class ProgramCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "RUN_FOLDER", description = "Results of the run; nothing in it is changed.")
    Path run = Path.of("");

    @Option(
            names = "--config",
            paramLabel = "FILE",
            description = {
                "Config of the program: budgets, crews, days without work, what the program is worth."
                        + " By default the shipped config/program.yaml."
            })
    @Nullable
    Path config;

    @Option(
            names = "--connections",
            paramLabel = "FILE",
            description = "Table of connections to serve, as CSV; by default that of the config, if it names one.")
    @Nullable
    Path connections;

    @Option(
            names = "--done",
            paramLabel = "SPAN_ID",
            split = ",",
            description = "Spans that have been recovered; separate several by commas.")
    Set<String> done = new LinkedHashSet<>();

    @Option(
            names = "--failed",
            paramLabel = "SPAN_ID",
            split = ",",
            description = "Spans whose recovery has failed; separate several by commas.")
    Set<String> failed = new LinkedHashSet<>();

    @Option(
            names = "--skip",
            paramLabel = "PART",
            split = ",",
            converter = OptionWord.OfParts.class,
            completionCandidates = OptionWord.OfParts.class,
            description = {
                "Leave out what takes time: curve (other budgets), prices (of conditions), draws (how"
                        + " often each span stays chosen); separate several by commas."
            })
    Set<ProgramRun.Part> skipped = EnumSet.noneOf(ProgramRun.Part.class);

    @Option(
            names = "--draws",
            paramLabel = "N",
            defaultValue = "16",
            converter = WholeNumber.OfSpans.class,
            description = "In how many of the run's draws the program is planned again. By default ${DEFAULT-VALUE}.")
    Integer draws = 16;

    @Option(
            names = "--seed",
            paramLabel = "N",
            defaultValue = "1",
            converter = WholeNumber.OfSeeds.class,
            description = "Where the search begins; the same seed gives the same result.")
    long seed = 1;

    @Option(
            names = "--threads",
            paramLabel = "N",
            converter = WholeNumber.OfThreads.class,
            description = "How many threads may work; by default one for each processor. The result is the same.")
    @Nullable
    Integer threads;

    @Option(
            names = "--output",
            paramLabel = "FOLDER",
            defaultValue = "output/program",
            description = "Folder of the results. By default ${DEFAULT-VALUE}.")
    Path folder = Path.of("output", "program");

    @Option(names = "--overwrite", description = "Replace earlier results in that folder.")
    boolean overwrite;

    @Option(
            names = "--json",
            description = "Print the summary as one JSON object and nothing else; progress is on standard error.")
    boolean json;

    private final Console console;

    ProgramCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        Optional<Path> file = Optional.ofNullable(config);
        ProgramConfig read = file.map(ProgramConfigReader::read).orElseGet(ProgramConfigReader::shipped);
        Path table = connections;
        Integer asked = threads;
        var request = new ProgramRun.Request(
                table == null ? read : read.withConnections(table),
                file,
                done,
                failed,
                skipped,
                draws,
                seed,
                asked == null ? Runtime.getRuntime().availableProcessors() : asked);
        ProgramSummary summary = new ProgramRun(run, console.progress()).run(request, folder, overwrite, Instant.now());
        if (json) {
            console.answer(ProgramAccount.addTo(SummaryJson.begin("program"), summary)
                    .texts("cautions", List.of(SummaryJson.CAUTION))
                    .write());
        } else {
            console.summary(ProgramReport.text(summary));
        }
        return ExitCode.OK;
    }
}
