package org.spanroom.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.Callable;
import org.spanroom.pipeline.CompareRun;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code compare}: which spans moved between two runs, and why. */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        sortOptions = false,
        header = "Show which spans moved between two runs, and why.",
        description = {
            "Compare the rankings of two runs: which spans are new or gone, gained or lost a",
            "rank, or moved; which parts of the score and which values changed; and how the",
            "runs themselves differ: files, config, version.",
            "Writes a layer (moves.gpkg) and a table (moves.csv).",
            ""
        },
        exitCodeListHeading = SpanroomCommand.EXIT_HEADING,
        exitCodeList = {
            SpanroomCommand.EXIT_0,
            SpanroomCommand.EXIT_1,
            SpanroomCommand.EXIT_2,
            "3:a folder holds no run that can be read",
            SpanroomCommand.EXIT_5
        },
        footerHeading = SpanroomCommand.EXAMPLES_HEADING,
        footer = {
            "  spanroom compare output/demo output/mine --output output/moves",
            "  spanroom compare output/demo output/mine --output output/moves-2 --json"
        })
final class CompareCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "RUN_A", description = "Results of the first run.")
    Path first = Path.of("");

    @Parameters(index = "1", paramLabel = "RUN_B", description = "Results of the second run.")
    Path second = Path.of("");

    @Option(
            names = "--output",
            paramLabel = "FOLDER",
            defaultValue = "output/comparison",
            description = "Folder of the comparison. By default ${DEFAULT-VALUE}.")
    Path folder = Path.of("output", "comparison");

    @Option(names = "--overwrite", description = "Replace an earlier comparison in that folder.")
    boolean overwrite;

    @Option(
            names = "--json",
            description = "Print the summary as one JSON object and nothing else; progress is on standard error.")
    boolean json;

    private final Console console;

    CompareCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        var summary = new CompareRun(first, second, console.progress()).run(folder, overwrite, Instant.now());
        if (json) {
            console.answer(SummaryJson.of(summary));
        } else {
            console.summary(CompareReport.text(summary));
        }
        return ExitCode.OK;
    }
}
