package org.spanroom.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.spanroom.finding.UsageException;
import org.spanroom.model.UnitSystem;
import org.spanroom.output.report.TileSource;
import org.spanroom.pipeline.ReportRun;
import org.spanroom.pipeline.ReportRun.ReportSummary;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code report}: one page about a run that a browser shows. */
@Command(
        name = "report",
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        sortOptions = false,
        header = "Make one page about a run, for a browser.",
        description = {
            "Make one HTML file about a run: what there is to gain and what it costs, what",
            "to do first and why, what is uncertain; a map, the table of the spans, the",
            "calculation of the best, charts, and what other weights would change.",
            "The file needs a browser, no network and no other program.",
            ""
        },
        exitCodeListHeading = SpanroomCommand.EXIT_HEADING,
        exitCodeList = {
            SpanroomCommand.EXIT_0,
            SpanroomCommand.EXIT_1,
            SpanroomCommand.EXIT_2,
            "3:no run or program that can be read, or a program of another run",
            SpanroomCommand.EXIT_5,
            SpanroomCommand.EXIT_6
        },
        footerHeading = SpanroomCommand.EXAMPLES_HEADING,
        footer = {
            "  spanroom report output/demo --output output/demo.html",
            "  spanroom report output/demo --details 20 --units us \\",
            "      --output output/demo-us.html"
        })
final class ReportCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "RUN_FOLDER", description = "Results of the run; nothing in it is changed.")
    Path run = Path.of("");

    @Option(names = "--program", paramLabel = "FOLDER", description = "An annual program of this run, to show with it.")
    @Nullable
    Path program;

    @Option(
            names = "--streets",
            paramLabel = "FILE",
            description = "A layer of streets to draw below the spans; it decides nothing.")
    @Nullable
    Path streets;

    @Option(
            names = "--street-name",
            paramLabel = "FIELD",
            description = "The field of that layer with the streets' names.")
    @Nullable
    String streetName;

    @Option(
            names = "--tiles",
            paramLabel = "URL",
            description = {
                "Map tiles to draw below, as an address with {z}, {x} and {y}. The page then asks that"
                        + " server for pictures when a reader opens it; without this option it loads nothing."
            })
    @Nullable
    String tiles;

    @Option(
            names = "--details",
            paramLabel = "N",
            defaultValue = "300",
            converter = WholeNumber.OfDetails.class,
            description = {
                "Of how many of the best spans the page has the whole calculation, from 0. It is made from"
                        + " the files of the run; where they are gone or have changed, the page says so and does"
                        + " without. By default ${DEFAULT-VALUE}."
            })
    int details = 300;

    @Option(
            names = "--units",
            paramLabel = "SYSTEM",
            converter = OptionWord.OfUnits.class,
            completionCandidates = OptionWord.OfUnits.class,
            description = "What the page shows: metric or us; that of the run by default.")
    @Nullable
    UnitSystem units;

    @Option(
            names = "--output",
            paramLabel = "FILE",
            defaultValue = "output/report.html",
            description = "The page. By default ${DEFAULT-VALUE}.")
    Path file = Path.of("output", "report.html");

    @Option(names = "--overwrite", description = "Replace a page that exists.")
    boolean overwrite;

    @Option(
            names = "--json",
            description = "Print the summary as one JSON object and nothing else; progress is on standard error.")
    boolean json;

    private final Console console;

    ReportCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        if (streetName != null && streets == null) {
            throw new UsageException("--street-name needs --streets FILE");
        }
        var request = new ReportRun.Request(
                Optional.ofNullable(program),
                Optional.ofNullable(streets),
                Optional.ofNullable(streetName),
                Optional.ofNullable(tiles).map(ReportCommand::tiles),
                details,
                Optional.ofNullable(units),
                file,
                overwrite);
        ReportSummary summary = new ReportRun(run, console.progress(), request).run();
        if (json) {
            console.answer(ReportReport.json(summary));
        } else {
            console.summary(ReportReport.text(summary));
        }
        return ExitCode.OK;
    }

    private static TileSource tiles(String address) {
        try {
            return TileSource.of(address);
        } catch (IllegalArgumentException wrong) {
            throw new UsageException("--tiles " + address + ": " + wrong.getMessage());
        }
    }
}
