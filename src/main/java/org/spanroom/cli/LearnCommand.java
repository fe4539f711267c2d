package org.spanroom.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.spanroom.pipeline.LearnRun;
import org.spanroom.pipeline.LearnRun.LearnSummary;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code learn}: what reports from the field say of rates, friction and contents. */
@Command(
        name = "learn",
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        sortOptions = false,
        header = "Learn rates, friction and contents from the field book.",
        description = {
            "Compare what crews reported with what a run planned, and propose rates, friction",
            "and chances of contents that follow it; and sum what was done to date. Each",
            "number moves by its number of spans, so that few reports move it little.",
            "Writes rates.yaml and friction.yaml, to be checked and named in the config, and",
            "tables; nothing of the run or its config changes.",
            ""
        },
        exitCodeListHeading = SpanroomCommand.EXIT_HEADING,
        exitCodeList = {
            SpanroomCommand.EXIT_0,
            SpanroomCommand.EXIT_1,
            "2:wrong options, or no field book is named",
            "3:the run, one of its inputs or the field book cannot be read",
            SpanroomCommand.EXIT_5,
            SpanroomCommand.EXIT_6
        },
        footerHeading = SpanroomCommand.EXAMPLES_HEADING,
        footer = {
            "  spanroom learn --run output/city --output output/learned",
            "  spanroom learn --run output/city --field-book field_book.csv \\",
            "      --as-of 2027-06-30 --output output/learned"
        })
final class LearnCommand implements Callable<Integer> {
    @Option(
            names = "--run",
            paramLabel = "FOLDER",
            required = true,
            description = "Results of the run whose sheets the crews worked from; nothing in it is changed.")
    Path run = Path.of("");

    @Option(
            names = "--field-book",
            paramLabel = "FILE",
            description = "The field book; by default that of the config of the run.")
    @Nullable
    Path fieldBook;

    @Option(
            names = "--as-of",
            paramLabel = "DAY",
            description = "Use only what was reported up to this day, e.g. 2027-06-30; by default all of it.")
    @Nullable
    String asOf;

    @Option(names = "--output", paramLabel = "FOLDER", required = true, description = "Folder of the proposals.")
    Path folder = Path.of("");

    @Option(names = "--overwrite", description = "Replace earlier proposals in that folder.")
    boolean overwrite;

    @Option(
            names = "--json",
            description = "Print the summary as one JSON object and nothing else; progress is on standard error.")
    boolean json;

    private final Console console;

    LearnCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        LearnSummary summary = new LearnRun(run, console.progress())
                .run(
                        Optional.ofNullable(fieldBook),
                        Optional.ofNullable(asOf).map(LearnCommand::day),
                        folder,
                        overwrite);
        if (json) {
            console.answer(LearnJson.text(summary));
        } else {
            console.summary(LearnReport.text(summary));
        }
        return ExitCode.OK;
    }

    private static LocalDate day(String text) {
        return DayOption.of("--as-of", text);
    }
}
