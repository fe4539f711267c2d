package org.spanroom.cli;

import java.util.concurrent.Callable;
import org.spanroom.config.RunConfig;
import org.spanroom.pipeline.CheckRun;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code check}: what the data is worth, before anything is computed from it. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        sortOptions = false,
        header = "Tell what is missing or contradictory in the data.",
        description = {
            "Read the inputs and cut them into spans, and tell what is missing or",
            "contradicts itself; write nothing."
        },
        exitCodeListHeading = SpanroomCommand.EXIT_HEADING,
        exitCodeList = {
            SpanroomCommand.EXIT_0,
            SpanroomCommand.EXIT_1,
            SpanroomCommand.EXIT_2,
            SpanroomCommand.EXIT_3,
            SpanroomCommand.EXIT_4,
            SpanroomCommand.EXIT_6
        })
final class CheckCommand implements Callable<Integer> {
    @ArgGroup(validate = false, heading = "%nInput:%n", order = 1)
    InputOptions input = new InputOptions();

    @ArgGroup(validate = false, heading = "%nRun:%n", order = 2)
    RunOptions run = new RunOptions();

    @ArgGroup(validate = false, heading = "%nWhat to show:%n", order = 3)
    ShowOptions show = new ShowOptions();

    private final Console console;

    CheckCommand(Console console) {
        this.console = console;
    }

    /** The options that say what a check shows. */
    static final class ShowOptions {
        @Option(
                names = "--fields",
                description = "List the fields of each file with samples, and propose a field map; check nothing else.")
        boolean fields;

        @Option(names = "--all", description = "List every finding, not only the first few of each kind.")
        boolean all;
    }

    @Override
    public Integer call() {
        RunConfig config = run.apply(input.apply());
        if (show.fields) {
            console.out().print(FieldsReport.text(config));
            console.out().flush();
            return ExitCode.OK;
        }
        var summary = new CheckRun(config, console.progress()).run();
        console.out().print(CheckReport.text(summary, show.all));
        console.out().flush();
        return config.strict() && summary.findingsToMend() > 0 ? ExitCode.FINDINGS : ExitCode.OK;
    }
}
