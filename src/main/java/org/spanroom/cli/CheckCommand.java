package org.spanroom.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.spanroom.config.RunConfig;
import org.spanroom.input.FieldProposals;
import org.spanroom.input.proposal.FieldProposal;
import org.spanroom.pipeline.CheckRun;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code check}: what the data is worth, before anything is computed from it. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        sortOptions = false,
        header = "Report what is missing or contradictory in the data.",
        description = {
            "Read the inputs, cut them into spans, and report what is missing or",
            "contradictory. Writes no file except the config that --write names."
        },
        exitCodeListHeading = SpanroomCommand.EXIT_HEADING,
        exitCodeList = {
            SpanroomCommand.EXIT_0,
            SpanroomCommand.EXIT_1,
            SpanroomCommand.EXIT_2,
            SpanroomCommand.EXIT_3,
            SpanroomCommand.EXIT_4,
            SpanroomCommand.EXIT_5,
            SpanroomCommand.EXIT_6
        },
        footerHeading = SpanroomCommand.EXAMPLES_HEADING,
        footer = {
            "  spanroom check --config sample-gis/spanroom.yaml",
            "  spanroom check --fields --routes sample-gis/ducts.geojson \\",
            "      --vaults sample-gis/vaults.geojson"
        })
final class CheckCommand implements Callable<Integer> {
    @ArgGroup(validate = false, heading = "%nInput:%n", order = 1)
    InputOptions input = new InputOptions();

    @ArgGroup(validate = false, heading = "%nRun:%n", order = 2)
    RunOptions run = new RunOptions();

    @ArgGroup(validate = false, heading = "%nWhat to show:%n", order = 3)
    ShowOptions show = new ShowOptions();

    @Spec
    @Nullable
    CommandSpec spec;

    private final Console console;

    CheckCommand(Console console) {
        this.console = console;
    }

    /** The options that say what a check shows. */
    static final class ShowOptions {
        @Option(
                names = "--fields",
                description =
                        "List the fields of each file with samples, and propose a field map. Nothing else is checked.")
        boolean fields;

        @Option(
                names = "--write",
                paramLabel = "FILE",
                description = "With --fields: write the map as a new config, ready for rank --config FILE.")
        @Nullable
        Path write;

        @Option(names = "--overwrite", description = "With --write: replace an existing file.")
        boolean overwrite;

        @Option(names = "--all", description = "List every finding, not only the first few of each kind.")
        boolean all;
    }

    @Override
    public Integer call() {
        RunConfig config = run.apply(input.apply());
        if (show.fields) {
            if (spec != null && run.json) {
                throw new ParameterException(spec.commandLine(), "--json does not go with --fields");
            }
            return fields(config);
        }
        if (spec != null && (show.write != null || show.overwrite)) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--write and --overwrite need --fields: they write the field map that it proposes");
        }
        var summary = new CheckRun(config, console.progress()).run();
        console.answer(
                run.json ? SummaryJson.of(summary, show.all) : CheckReport.text(summary, show.all, config.units()));
        return config.strict() && summary.findingsToFix() > 0 ? ExitCode.FINDINGS : ExitCode.OK;
    }

    private int fields(RunConfig config) {
        if (show.write != null) {
            FieldsConfig.check(show.write, config, show.overwrite);
        }
        List<FieldProposal> proposals = FieldProposals.of(config);
        console.out().print(FieldsReport.text(proposals, config));
        List<String> missing = FieldsAdvice.missing(proposals, config);
        if (!missing.isEmpty()) {
            console.out().print(FieldsConfig.LACKING);
            missing.forEach(line -> console.out().print("#   " + line + "\n"));
        }
        console.out().flush();
        if (show.write != null) {
            FieldsConfig.write(show.write, proposals, missing, config, show.overwrite);
            String name = Printable.line(show.write.toString());
            console.out().print("# Written to " + name + ". Look over what is marked unsure, then:\n");
            console.out().print("#   spanroom check --config " + name + "\n#   spanroom rank --config " + name + "\n");
        } else if (!proposals.isEmpty()) {
            console.out().print("# Next: add --write FILE to have this as a config, or paste it into yours.\n");
        }
        console.out().flush();
        return ExitCode.OK;
    }
}
