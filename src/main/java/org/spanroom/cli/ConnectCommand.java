package org.spanroom.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.spanroom.pipeline.ConnectAccount;
import org.spanroom.pipeline.ConnectRun;
import org.spanroom.pipeline.ConnectRun.ConnectSummary;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code connect}: how connections are served together at least cost. */
@Command(
        name = "connect",
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        sortOptions = false,
        header = "Serve connections together at least total cost.",
        description = {
            "Find a way for each connection of a table (CSV: name, from, to, cables, value,",
            "needed_by, must), so that the total cost is least: a duct that is recovered or",
            "built is paid once and shared, up to its positions. The result comes with a",
            "bound: no plan can cost less, whatever ways it takes.",
            "Writes layers (connect.gpkg), tables and connect.json.",
            ""
        },
        exitCodeListHeading = SpanroomCommand.EXIT_HEADING,
        exitCodeList = {
            SpanroomCommand.EXIT_0,
            SpanroomCommand.EXIT_1,
            SpanroomCommand.EXIT_2,
            "3:the folder holds no run, or the table is no table of connections",
            SpanroomCommand.EXIT_5,
            SpanroomCommand.EXIT_6
        },
        footerHeading = SpanroomCommand.EXAMPLES_HEADING,
        footer = {
            "  spanroom connect output/demo --connections sample-gis/connections.csv \\",
            "      --output output/connect",
            "  spanroom connect output/demo --connections sample-gis/connections.csv \\",
            "      --serve worth --output output/connect-2"
        })
final class ConnectCommand implements Callable<Integer> {
    /** Which connections are served. */
    enum Served {
        ALL,
        WORTH
    }

    @Parameters(index = "0", paramLabel = "RUN_FOLDER", description = "Results of the run; nothing in it is changed.")
    Path run = Path.of("");

    @Option(
            names = "--connections",
            paramLabel = "FILE",
            required = true,
            description = "Table of connections, as CSV.")
    Path connections = Path.of("");

    @Option(
            names = "--serve",
            paramLabel = "WORD",
            defaultValue = "all",
            converter = OptionWord.OfServed.class,
            completionCandidates = OptionWord.OfServed.class,
            description = {
                "Which connections: all, whatever they cost; or worth, those that are a must, and"
                        + " others if they cost no more than their value. By default ${DEFAULT-VALUE}."
            })
    Served served = Served.ALL;

    @Option(
            names = "--ignore-gate",
            paramLabel = "NAME",
            split = ",",
            converter = GateOption.class,
            description = {
                "What if this gate did not exclude spans? Name it as in the column exclusion;"
                        + " separate several by commas."
            })
    Set<String> ignoredGates = new LinkedHashSet<>();

    @Option(
            names = "--iterations",
            paramLabel = "N",
            converter = WholeNumber.OfIterations.class,
            description = {
                "How long to search; more iterations find cheaper plans. By default 20000, and 200 for each"
                        + " connection where there are more than 100."
            })
    @Nullable
    Integer iterations;

    @Option(
            names = "--seed",
            paramLabel = "N",
            defaultValue = "1",
            converter = WholeNumber.OfSeeds.class,
            description = "Where the search begins; the same seed gives the same result.")
    long seed = 1;

    @Option(
            names = "--time-limit",
            paramLabel = "SECONDS",
            converter = WholeNumber.OfSpans.class,
            description = {
                "End after about this time with the best found so far. The result then depends on"
                        + " the machine, and says so."
            })
    @Nullable
    Integer mostSeconds;

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
            defaultValue = "output/connect",
            description = "Folder of the results. By default ${DEFAULT-VALUE}.")
    Path folder = Path.of("output", "connect");

    @Option(names = "--overwrite", description = "Replace earlier results in that folder.")
    boolean overwrite;

    @Option(
            names = "--json",
            description = "Print the summary as one JSON object and nothing else; progress is on standard error.")
    boolean json;

    private final Console console;

    ConnectCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        Integer asked = threads;
        Integer seconds = mostSeconds;
        Integer given = iterations;
        var request = new ConnectRun.Request(
                connections,
                served == Served.ALL,
                seed,
                given == null ? OptionalInt.empty() : OptionalInt.of(given),
                asked == null ? Runtime.getRuntime().availableProcessors() : asked,
                seconds == null ? OptionalDouble.empty() : OptionalDouble.of(seconds),
                ignoredGates);
        ConnectSummary summary = new ConnectRun(run, console.progress()).run(request, folder, overwrite, Instant.now());
        if (json) {
            console.answer(ConnectAccount.addTo(SummaryJson.begin("connect"), summary)
                    .texts("cautions", List.of(SummaryJson.CAUTION))
                    .write());
        } else {
            console.summary(ConnectReport.text(summary));
        }
        return ExitCode.OK;
    }
}
