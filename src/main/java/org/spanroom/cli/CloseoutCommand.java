package org.spanroom.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.spanroom.pipeline.CloseoutRun;
import org.spanroom.pipeline.CloseoutRun.CloseoutSummary;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code closeout}: what crews found and did goes into the field book. */
@Command(
        name = "closeout",
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        sortOptions = false,
        header = "Enter what crews found and did into the field book.",
        description = {
            "Read a close-out file (CSV: code, span, vault, fact, item, planned, value, unit,",
            "by, date, supersedes, note) and add its facts to the field book, which the next",
            "rank reads. Every row that is not understood is listed with its line and the",
            "reason, and then nothing is entered, unless --partial is given. Entries are only",
            "added: a wrong one is corrected by a row that names it in supersedes.",
            ""
        },
        exitCodeListHeading = SpanroomCommand.EXIT_HEADING,
        exitCodeList = {
            "0:done",
            SpanroomCommand.EXIT_1,
            SpanroomCommand.EXIT_2,
            "3:nothing was entered: a row is not understood, or a file cannot be used",
            "4:done, but --partial left rows out",
            "5:the field book cannot be written"
        },
        footerHeading = SpanroomCommand.EXAMPLES_HEADING,
        footer = {
            "  spanroom closeout sample-gis/closeout.csv --run output/demo \\",
            "      --field-book output/field_book.csv --entered 2027-02-21 --check",
            "  spanroom closeout sample-gis/closeout.csv --run output/demo \\",
            "      --field-book output/field_book.csv --entered 2027-02-21"
        })
final class CloseoutCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "FILE", description = "The close-out file, as CSV.")
    Path file = Path.of("");

    @Option(
            names = "--run",
            paramLabel = "FOLDER",
            required = true,
            description = "Results of the run whose sheets were worked from; nothing in it is changed.")
    Path run = Path.of("");

    @Option(
            names = "--field-book",
            paramLabel = "FILE",
            description = {
                "The field book; made if it is missing. It cannot be in a folder of results. By default the one"
                        + " that the config of the run names."
            })
    @Nullable
    Path fieldBook;

    @Option(
            names = "--partial",
            description = "Enter the rows that are understood although others are not, or are entered already.")
    boolean partial;

    @Option(names = "--check", description = "Only report what would be entered, and what is wrong with the rows.")
    boolean check;

    @Option(
            names = "--entered",
            paramLabel = "DAY",
            description = "Day of entering, e.g. 2027-03-31. By default today. Facts of later days are refused.")
    @Nullable
    String entered;

    @Option(
            names = "--json",
            description = "Print the summary as one JSON object and nothing else; progress is on standard error.")
    boolean json;

    private final Console console;

    CloseoutCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        var request = new CloseoutRun.Request(file, run, Optional.ofNullable(fieldBook), partial, check, day());
        CloseoutSummary summary = new CloseoutRun(request, console.progress()).run();
        if (json) {
            console.answer(CloseoutReport.json(summary));
        } else if (summary.read().problems().isEmpty()) {
            console.summary(CloseoutReport.text(summary));
        } else {
            console.answer(CloseoutReport.text(summary));
        }
        if (summary.read().problems().isEmpty()) {
            return ExitCode.OK;
        }
        return summary.applied() ? ExitCode.FINDINGS : ExitCode.INPUT;
    }

    private LocalDate day() {
        return entered == null ? LocalDate.now(ZoneId.systemDefault()) : DayOption.of("--entered", entered);
    }
}
