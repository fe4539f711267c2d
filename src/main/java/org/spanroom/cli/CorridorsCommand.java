package org.spanroom.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import org.spanroom.pipeline.CorridorRun;
import org.spanroom.pipeline.CorridorRun.CorridorSummary;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code corridors}: where spans worth recovering line up. */
@Command(
        name = "corridors",
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        sortOptions = false,
        header = "Find where spans worth recovering line up.",
        description = {
            "Find corridors: sections that follow one another, over which cables can go",
            "together after the least recovery, ranked by the positions gained for their",
            "cost over their length; a single section is an island. And count for each",
            "section how often it is the narrowest on the ways between hubs.",
            "Writes layers (corridors.gpkg) and tables; scores and ranks stay as they are.",
            ""
        },
        exitCodeListHeading = SpanroomCommand.EXIT_HEADING,
        exitCodeList = {
            SpanroomCommand.EXIT_0,
            SpanroomCommand.EXIT_1,
            SpanroomCommand.EXIT_2,
            "3:the folder holds no run that can be read, or no such vault",
            SpanroomCommand.EXIT_5,
            SpanroomCommand.EXIT_6
        },
        footerHeading = SpanroomCommand.EXAMPLES_HEADING,
        footer = {
            "  spanroom corridors output/demo --cables 6 --output output/corridors",
            "  spanroom corridors output/demo --cables 6 --hubs V1-1001,V4-1049 \\",
            "      --output output/corridors-2"
        })
final class CorridorsCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "RUN_FOLDER", description = "Results of the run; nothing in it is changed.")
    Path run = Path.of("");

    @Option(
            names = "--cables",
            paramLabel = "N",
            defaultValue = "1",
            converter = WholeNumber.OfCables.class,
            description =
                    "Cables that go together: in each section one duct takes all of them. By default ${DEFAULT-VALUE}.")
    int cables = 1;

    @Option(
            names = "--hubs",
            paramLabel = "VAULT",
            split = ",",
            description = {
                "Vaults between which ways are counted, joined by commas; by default the 12 vaults"
                        + " that most sections end at."
            })
    List<String> hubs = new ArrayList<>();

    @Option(
            names = "--ignore-gate",
            paramLabel = "NAME",
            split = ",",
            converter = GateOption.class,
            description = {
                "Treat spans that this gate excludes as recoverable, for what-ifs; the name is"
                        + " that in the column exclusion. Several are joined by commas."
            })
    Set<String> ignoredGates = new LinkedHashSet<>();

    @Option(
            names = "--output",
            paramLabel = "FOLDER",
            defaultValue = "output/corridors",
            description = "Folder of the results. By default ${DEFAULT-VALUE}.")
    Path folder = Path.of("output", "corridors");

    @Option(names = "--overwrite", description = "Replace earlier results in that folder.")
    boolean overwrite;

    @Option(
            names = "--json",
            description = "Print the summary as one JSON object and nothing else; progress is on standard error.")
    boolean json;

    /** All pairs of these are 66 ways. */
    private static final int HUBS = 12;

    private final Console console;

    CorridorsCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        var request = new CorridorRun.Request(cables, hubs, HUBS, ignoredGates);
        CorridorSummary summary =
                new CorridorRun(run, console.progress()).run(request, folder, overwrite, Instant.now());
        if (json) {
            console.answer(CorridorReport.json(summary));
        } else {
            console.summary(CorridorReport.text(summary));
        }
        return ExitCode.OK;
    }
}
