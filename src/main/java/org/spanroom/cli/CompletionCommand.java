package org.spanroom.cli;

import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code completion}: a script that lets the shell complete commands and options. */
@Command(
        name = "completion",
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        sortOptions = false,
        header = "Print a completion script for bash or zsh.",
        description = {
            "Print a script that lets the shell complete commands, options and formats.",
            "Load it in the shell's startup file, or save it where bash-completion looks.",
            ""
        },
        exitCodeListHeading = SpanroomCommand.EXIT_HEADING,
        exitCodeList = {SpanroomCommand.EXIT_0, SpanroomCommand.EXIT_1, SpanroomCommand.EXIT_2, SpanroomCommand.EXIT_5},
        footerHeading = SpanroomCommand.EXAMPLES_HEADING,
        footer = {"  source <(spanroom completion bash)", "  source <(spanroom completion zsh)"})
final class CompletionCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "SHELL", description = "The shell: bash or zsh.")
    String shell = "";

    @Spec
    @Nullable
    CommandSpec spec;

    private final Console console;

    CompletionCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        if (spec == null) {
            throw new IllegalStateException("picocli has not injected the command's spec");
        }
        if (!shell.toLowerCase(Locale.ROOT).matches("bash|zsh")) {
            throw new ParameterException(
                    spec.commandLine(), "no completion for '" + shell + "'; the shells are bash and zsh");
        }
        console.answer(script(spec.root()));
        return ExitCode.OK;
    }

    /** Returns one script for both shells: zsh reads it by its own bashcompinit, which the script calls. */
    static String script(CommandSpec top) {
        return AutoComplete.bash(top.name(), top.commandLine()) + "\n";
    }
}
