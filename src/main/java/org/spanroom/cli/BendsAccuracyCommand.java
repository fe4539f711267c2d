package org.spanroom.cli;

import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.spanroom.config.ShippedConfig;
import org.spanroom.corpus.BendAccuracy;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code bends-accuracy}: how well bends are found in drawn lines whose bends are known. */
@Command(
        name = "bends-accuracy",
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        sortOptions = false,
        description = {
            "Draw spans whose bends are known, with noise and missing vertices, find the",
            "bends again, and print how often they are right, beside what an ideal reader",
            "of the same lines could know. The same numbers for the same seed.",
            ""
        },
        exitCodeListHeading = SpanroomCommand.EXIT_HEADING,
        exitCodeList = {SpanroomCommand.EXIT_0, SpanroomCommand.EXIT_1, SpanroomCommand.EXIT_2})
final class BendsAccuracyCommand implements Callable<Integer> {
    private static final int MOST_SPANS = 10_000_000;

    @Option(names = "--spans", paramLabel = "N", description = "How many spans; ${DEFAULT-VALUE} by default.")
    int spans = 3000;

    @Option(names = "--seed", paramLabel = "S", description = "Which spans; ${DEFAULT-VALUE} by default.")
    long seed = 1;

    @Spec
    @Nullable
    CommandSpec spec;

    private final Console console;

    BendsAccuracyCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        if (spans < 1 || spans > MOST_SPANS) {
            if (spec == null) {
                throw new IllegalStateException("picocli has not injected the command's spec");
            }
            throw new ParameterException(spec.commandLine(), "--spans must lie in 1 to " + MOST_SPANS + ".");
        }
        console.out()
                .print(BendAccuracy.measure(seed, spans, ShippedConfig.get().bend())
                        .toText());
        console.out().flush();
        return ExitCode.OK;
    }
}
