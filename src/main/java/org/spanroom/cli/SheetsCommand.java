package org.spanroom.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.spanroom.model.UnitSystem;
import org.spanroom.output.sheet.SheetPaper;
import org.spanroom.pipeline.SheetRun;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code sheets}: pages to print for crews, and the close-out file of their blanks. */
@Command(
        name = "sheets",
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        sortOptions = false,
        header = "Make the crew's sheets: pages to print, with blanks.",
        description = {
            "Make pages for crews: for each section a cover page with its vaults, then two",
            "pages for each duct: limits at which work stops, vaults, order of pulls, steps,",
            "what to bring, how cables are identified, and blanks for what is found.",
            "Writes sheets.pdf, sheets.html (the same pages) and closeout.csv, which has a",
            "row for each blank. Name spans, or ask for the best of the run, or for",
            "those of a year of its annual program.",
            ""
        },
        exitCodeListHeading = SpanroomCommand.EXIT_HEADING,
        exitCodeList = {
            SpanroomCommand.EXIT_0,
            SpanroomCommand.EXIT_1,
            SpanroomCommand.EXIT_2,
            "3:no such span or year, a program of another run, or a file of the run is missing or has changed",
            SpanroomCommand.EXIT_5,
            SpanroomCommand.EXIT_6
        },
        footerHeading = SpanroomCommand.EXAMPLES_HEADING,
        footer = {
            "  spanroom sheets output/demo --top 10 --output output/sheets \\",
            "      --units us --paper letter --streets sample-gis/streets.geojson",
            "  spanroom sheets output/demo B185-1:V4-1049:V4-1040 \\",
            "      --output output/sheet-of-one"
        })
final class SheetsCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "RUN_FOLDER", description = "Results of the run; nothing in it is changed.")
    Path run = Path.of("");

    @Parameters(
            index = "1..*",
            arity = "0..*",
            paramLabel = "SPAN_ID",
            description = "The spans, as in the column span_id; one that is not a candidate gets a sheet that says so.")
    List<String> spanIds = new ArrayList<>();

    @Option(
            names = "--top",
            paramLabel = "N",
            converter = WholeNumber.OfSpans.class,
            description = "The best N spans of the run; up to 2000 spans go into one call.")
    @Nullable
    Integer top;

    @Option(
            names = "--program",
            paramLabel = "FOLDER",
            description = "An annual program of this run, for weeks, crews and days.")
    @Nullable
    Path program;

    @Option(
            names = "--year",
            paramLabel = "N",
            converter = WholeNumber.OfListed.class,
            description = "The spans of this year of the program, from 1, in the order of its calendar.")
    @Nullable
    Integer year;

    @Option(
            names = "--paper",
            paramLabel = "SIZE",
            converter = OptionWord.OfPaper.class,
            completionCandidates = OptionWord.OfPaper.class,
            description = "The paper: a4 or letter. By default letter for us units, else a4.")
    @Nullable
    SheetPaper paper;

    @Option(
            names = "--units",
            paramLabel = "SYSTEM",
            converter = OptionWord.OfUnits.class,
            completionCandidates = OptionWord.OfUnits.class,
            description = {
                "What crews read and write: metric or us; that of the run by default. Forces, radii, volumes of"
                        + " air and distances to stop at are given in both."
            })
    @Nullable
    UnitSystem units;

    @Option(
            names = "--streets",
            paramLabel = "FILE",
            description = "A layer of streets to draw in the sketch maps; it decides nothing.")
    @Nullable
    Path streets;

    @Option(
            names = "--street-name",
            paramLabel = "FIELD",
            description = "The field of that layer with the streets' names.")
    @Nullable
    String streetName;

    @Option(
            names = "--output",
            paramLabel = "FOLDER",
            defaultValue = "output/sheets",
            description = "Folder of the sheets. By default ${DEFAULT-VALUE}.")
    Path folder = Path.of("output", "sheets");

    @Option(names = "--overwrite", description = "Replace earlier sheets in that folder.")
    boolean overwrite;

    @Option(
            names = "--json",
            description = "Print the summary as one JSON object and nothing else; progress is on standard error.")
    boolean json;

    @Spec
    @Nullable
    CommandSpec spec;

    private final Console console;

    SheetsCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        demandOptions();
        var sheets = new SheetRun(run, console.progress());
        SheetRun.Summary summary = sheets.run(new SheetRun.Request(
                spanIds,
                optional(top),
                Optional.ofNullable(program),
                optional(year),
                Optional.ofNullable(units),
                Optional.ofNullable(paper),
                Optional.ofNullable(streets),
                Optional.ofNullable(streetName),
                folder,
                overwrite));
        if (!sheets.version().equals(SpanroomCommand.Version.text())) {
            console.warning(
                    "the run was made by version " + sheets.version() + ", so its figures may differ from these");
        }
        if (json) {
            console.answer(SheetsReport.json(summary));
        } else {
            console.summary(SheetsReport.text(summary));
        }
        return ExitCode.OK;
    }

    private static OptionalInt optional(@Nullable Integer number) {
        return number == null ? OptionalInt.empty() : OptionalInt.of(number);
    }

    private void demandOptions() {
        CommandSpec own = spec;
        String problem = problem();
        if (own != null && !problem.isEmpty()) {
            throw new ParameterException(own.commandLine(), problem);
        }
    }

    private String problem() {
        int ways = (spanIds.isEmpty() ? 0 : 1) + (top == null ? 0 : 1) + (year == null ? 0 : 1);
        if (year != null && program == null) {
            return "--year needs --program FOLDER";
        }
        if (streetName != null && streets == null) {
            return "--street-name needs --streets FILE";
        }
        if (ways == 0) {
            return "no span is named; give a SPAN_ID, --top N, or --program FOLDER --year N";
        }
        return ways == 1 ? "" : "name spans in one way only: by SPAN_ID, by --top N, or by --program FOLDER --year N";
    }
}
