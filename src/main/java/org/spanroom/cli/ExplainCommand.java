package org.spanroom.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.program.RecordedProgram;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.ProgramReader;
import org.spanroom.output.explain.Explanation;
import org.spanroom.output.explain.ExplanationJson;
import org.spanroom.output.explain.ExplanationProgram;
import org.spanroom.output.explain.ExplanationSection;
import org.spanroom.output.explain.ExplanationText;
import org.spanroom.output.explain.SpanSheetSvg;
import org.spanroom.pipeline.ExplainRun;
import org.spanroom.pipeline.ReportPlace;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code explain}: everything that a run found out about one span, or about each of several. */
@Command(
        name = "explain",
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        sortOptions = false,
        header = "Show why: the whole calculation of a span.",
        description = {
            "Print the whole calculation of one or more spans: pieces and vaults, bends,",
            "assumed values, the force at every section both ways, every limit, the score.",
            "Spans are calculated again from the files and the config of the run; their",
            "ranks are those in the results.",
            ""
        },
        exitCodeListHeading = SpanroomCommand.EXIT_HEADING,
        exitCodeList = {
            SpanroomCommand.EXIT_0,
            SpanroomCommand.EXIT_1,
            SpanroomCommand.EXIT_2,
            "3:no such span or rank, a program of another run, or a file of the run is missing or has changed",
            SpanroomCommand.EXIT_5,
            SpanroomCommand.EXIT_6
        },
        footerHeading = SpanroomCommand.EXAMPLES_HEADING,
        footer = {
            "  spanroom explain --rank 1 --run output/demo",
            "  spanroom explain B185-1:V4-1049:V4-1040 --run output/demo --json"
        })
final class ExplainCommand implements Callable<Integer> {
    @Parameters(
            arity = "0..*",
            paramLabel = "SPAN_ID",
            description = "The span, as in the column span_id. Several may be given.")
    List<String> spanIds = new ArrayList<>();

    @Option(
            names = "--rank",
            paramLabel = "N",
            split = ",",
            converter = WholeNumber.OfSpans.class,
            description = "The span with this rank; several are joined by commas: 1,2,5.")
    List<Integer> ranks = new ArrayList<>();

    @Option(names = "--run", paramLabel = "FOLDER", description = "Results of the run.")
    @Nullable
    Path folder;

    @Option(
            names = "--program",
            paramLabel = "FOLDER",
            description = {"An annual program: also show what it does with the span and why. Without --run, only that."
            })
    @Nullable
    Path program;

    @Option(names = "--json", description = "Print JSON instead of text: an object for one span, an array for several.")
    boolean json;

    @Option(
            names = "--svg",
            paramLabel = "FILE",
            description = {
                "Also write a sheet: the plan with its bends, the forces along the span, the"
                        + " cross-section before and after. For several spans, name a folder; each span"
                        + " gets a file named by its id."
            })
    @Nullable
    Path svg;

    @Option(names = "--overwrite", description = "Replace a sheet that exists.")
    boolean overwrite;

    @Option(
            names = "--units",
            paramLabel = "SYSTEM",
            converter = OptionWord.OfUnits.class,
            completionCandidates = OptionWord.OfUnits.class,
            description = "What text and sheet show: metric or us; that of the run by default.")
    @Nullable
    UnitSystem units;

    @Spec
    @Nullable
    CommandSpec spec;

    private final Console console;

    ExplainCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        demandOptions();
        Optional<RecordedProgram> planned = Optional.ofNullable(program).map(ProgramReader::read);
        Path named = folder;
        if (named == null) {
            console.answer(text(spanIds.stream()
                    .map(span -> ExplanationProgram.of(span, planned.orElseThrow()))
                    .toList()));
            return ExitCode.OK;
        }
        if (svg != null) {
            ReportPlace.check("--svg", svg, named, Optional.ofNullable(program));
        }
        var run = new ExplainRun(named, console.progress(), Optional.ofNullable(units));
        Optional.ofNullable(program).ifPresent(run::demandProgram);
        List<String> ids = ids(run);
        Optional<SheetFiles> sheets = Optional.ofNullable(svg).map(file -> SheetFiles.check(file, ids, overwrite));
        List<SpanExplanation> explained = run.run(ids);
        warnOfAnotherVersion(run.version());
        UnitSystem shown = json ? UnitSystem.METRIC : run.units();
        console.answer(
                text(explained.stream().map(span -> tree(span, shown, planned)).toList()));
        for (int i = 0; i < explained.size(); i++) {
            int place = i;
            sheets.ifPresent(files -> files.write(place, SpanSheetSvg.draw(explained.get(place), run.units())));
        }
        return ExitCode.OK;
    }

    private void demandOptions() {
        CommandSpec own = spec;
        if (own == null) {
            return;
        }
        if (folder == null && program == null) {
            throw new ParameterException(own.commandLine(), "option '--run FOLDER' is missing");
        }
        if (spanIds.isEmpty() && ranks.isEmpty()) {
            throw new ParameterException(own.commandLine(), "no span is named; give a SPAN_ID or --rank N");
        }
        if (folder == null && (!ranks.isEmpty() || svg != null)) {
            throw new ParameterException(own.commandLine(), "--rank and --svg need --run FOLDER");
        }
    }

    private static ExplanationSection tree(SpanExplanation span, UnitSystem shown, Optional<RecordedProgram> planned) {
        ExplanationSection tree = Explanation.of(span, shown);
        return planned.map(program -> ExplanationProgram.with(tree, span.ranked(), program))
                .orElse(tree);
    }

    private List<String> ids(ExplainRun run) {
        var ids = new LinkedHashSet<>(spanIds);
        if (!ranks.isEmpty()) {
            ids.addAll(run.idsAt(ranks));
        }
        return List.copyOf(ids);
    }

    private String text(List<ExplanationSection> trees) {
        if (json) {
            return trees.size() == 1 ? ExplanationJson.write(trees.get(0)) : ExplanationJson.write(trees);
        }
        return trees.stream().map(ExplanationText::write).collect(Collectors.joining("\n"));
    }

    private void warnOfAnotherVersion(String version) {
        if (!version.equals(SpanroomCommand.Version.text())) {
            console.warning("the run was made by version " + version + ", so its figures may differ from these");
        }
    }
}
