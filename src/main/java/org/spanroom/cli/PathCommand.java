package org.spanroom.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.concurrent.Callable;
import org.spanroom.model.program.PathObjective;
import org.spanroom.pipeline.PathRun;
import org.spanroom.pipeline.PathRun.PathSummary;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code path}: how cables get from one vault to another. */
@Command(
        name = "path",
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        sortOptions = false,
        header = "Find the best way for cables from one vault to another.",
        description = {
            "Find ways through the duct network of a run for cables that go together: which",
            "sections have free positions, which duct to recover where there are none, and",
            "where only a new duct is left; with cost, hours, permits and the chance that",
            "all of it works. Excluded spans still offer their free positions.",
            "Writes a layer (path.gpkg) and tables (paths.csv, path_sections.csv).",
            ""
        },
        exitCodeListHeading = SpanroomCommand.EXIT_HEADING,
        exitCodeList = {
            SpanroomCommand.EXIT_0,
            SpanroomCommand.EXIT_1,
            SpanroomCommand.EXIT_2,
            "3:the folder holds no run that can be read, no such vault, or no way",
            SpanroomCommand.EXIT_5,
            SpanroomCommand.EXIT_6
        },
        footerHeading = SpanroomCommand.EXAMPLES_HEADING,
        footer = {
            "  spanroom path output/demo --from V1-1001 --to V4-1049 --cables 2 \\",
            "      --output output/path",
            "  spanroom path output/demo --from V1-1001 --to V4-1049 --cables 2 \\",
            "      --objective days --output output/path-2"
        })
final class PathCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "RUN_FOLDER", description = "Results of the run; nothing in it is changed.")
    Path run = Path.of("");

    @Option(names = "--from", paramLabel = "VAULT", required = true, description = "Vault where the cables begin.")
    String from = "";

    @Option(names = "--to", paramLabel = "VAULT", required = true, description = "Vault where they end.")
    String to = "";

    @Option(
            names = "--cables",
            paramLabel = "N",
            required = true,
            converter = WholeNumber.OfCables.class,
            description = "Cables that go together: in each section one duct takes all of them.")
    int cables = 1;

    @Option(
            names = "--alternatives",
            paramLabel = "N",
            defaultValue = "3",
            converter = WholeNumber.OfListed.class,
            description = {
                "At most this many ways; each shares at most half of its length with every"
                        + " better one. By default ${DEFAULT-VALUE}."
            })
    int ways = 3;

    @Option(
            names = "--objective",
            paramLabel = "WORD",
            defaultValue = "cost",
            converter = ObjectiveOption.class,
            completionCandidates = ObjectiveOption.class,
            description = {
                "What counts: cost, length, days (until work can begin) or chance (that all of"
                        + " it works); or weights per unit of money, meter, day and percentage point,"
                        + " e.g. cost=1,days=200. By default ${DEFAULT-VALUE}."
            })
    PathObjective objective = PathObjective.COST;

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
            names = "--output",
            paramLabel = "FOLDER",
            defaultValue = "output/path",
            description = "Folder of the results. By default ${DEFAULT-VALUE}.")
    Path folder = Path.of("output", "path");

    @Option(names = "--overwrite", description = "Replace earlier results in that folder.")
    boolean overwrite;

    @Option(
            names = "--json",
            description = "Print the summary as one JSON object and nothing else; progress is on standard error.")
    boolean json;

    private final Console console;

    PathCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        var request = new PathRun.Request(from, to, cables, objective, ways, ignoredGates);
        PathSummary summary = new PathRun(run, console.progress()).run(request, folder, overwrite, Instant.now());
        if (json) {
            console.answer(PathReport.json(summary));
        } else {
            console.summary(PathReport.text(summary));
        }
        return ExitCode.OK;
    }
}
