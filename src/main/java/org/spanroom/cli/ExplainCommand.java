package org.spanroom.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.explain.Explanation;
import org.spanroom.output.explain.ExplanationJson;
import org.spanroom.output.explain.ExplanationText;
import org.spanroom.output.explain.SpanSheetSvg;
import org.spanroom.output.folder.TextFile;
import org.spanroom.pipeline.ExplainRun;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code explain}: everything that a run found out about one span. */
@Command(
        name = "explain",
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        sortOptions = false,
        header = "Show why: the whole calculation of one span.",
        description = {
            "Print the whole calculation of one span: pieces and vaults, bends, what was",
            "assumed, the force at every section both ways, every limit, the score.",
            "The span is calculated again from the files and the config of the run; its",
            "rank is the one in the results.",
            ""
        },
        exitCodeListHeading = SpanroomCommand.EXIT_HEADING,
        exitCodeList = {
            SpanroomCommand.EXIT_0,
            SpanroomCommand.EXIT_1,
            SpanroomCommand.EXIT_2,
            "3:no such span; or a file of the run is missing or has changed",
            SpanroomCommand.EXIT_5,
            SpanroomCommand.EXIT_6
        })
final class ExplainCommand implements Callable<Integer> {
    @Parameters(paramLabel = "SPAN_ID", description = "The span, as the column span_id has it.")
    String spanId = "";

    @Option(names = "--run", paramLabel = "FOLDER", required = true, description = "Results of the run.")
    Path folder = Path.of("");

    @Option(names = "--json", description = "Print JSON instead of text.")
    boolean json;

    @Option(
            names = "--svg",
            paramLabel = "FILE",
            description =
                    "Write a sheet as well: the plan with its bends, the forces along the span, the cross-section before and after.")
    @Nullable
    Path svg;

    @Option(names = "--overwrite", description = "Replace that sheet if it exists.")
    boolean overwrite;

    @Option(
            names = "--units",
            paramLabel = "SYSTEM",
            description = "What text and sheet show: metric or us; that of the run by default.")
    @Nullable
    UnitSystem units;

    private final Console console;

    ExplainCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        if (svg != null) {
            TextFile.check(svg, overwrite);
        }
        var run = new ExplainRun(folder, console.progress(), Optional.ofNullable(units));
        SpanExplanation explained = run.run(spanId);
        warnOfAnotherVersion(run.version());
        console.out()
                .print(
                        json
                                ? ExplanationJson.write(Explanation.of(explained))
                                : ExplanationText.write(Explanation.of(explained, run.units())));
        console.out().flush();
        if (svg != null) {
            TextFile.write(svg, SpanSheetSvg.draw(explained, run.units()), overwrite);
        }
        return ExitCode.OK;
    }

    private void warnOfAnotherVersion(String version) {
        if (!version.equals(SpanroomCommand.Version.text())) {
            console.err()
                    .println("spanroom: the run was made by version " + Printable.of(version)
                            + ", so its figures may differ from these");
        }
    }
}
