package org.spanroom.cli;

import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.spanroom.corpus.PackingQuality;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code packing-quality}: how well and how fast circles are packed, beside published packings. */
@Command(
        name = "packing-quality",
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        sortOptions = false,
        description = {
            "Pack circles whose least bore is published, in bores a little wider and a",
            "little narrower, then crowded cross-sections, and print what was found and",
            "how long it took. Takes a minute or two. The same verdicts for the same seed.",
            ""
        },
        exitCodeListHeading = SpanroomCommand.EXIT_HEADING,
        exitCodeList = {SpanroomCommand.EXIT_0, SpanroomCommand.EXIT_1, SpanroomCommand.EXIT_2})
final class PackingQualityCommand implements Callable<Integer> {
    private static final int MOST_SECTIONS = 1_000_000;

    @Option(
            names = "--sections",
            paramLabel = "N",
            description = "How many crowded cross-sections; ${DEFAULT-VALUE} by default.")
    int sections = 1000;

    @Option(names = "--seed", paramLabel = "S", description = "Which cross-sections; ${DEFAULT-VALUE} by default.")
    long seed = 5;

    @Spec
    @Nullable
    CommandSpec spec;

    private final Console console;

    PackingQualityCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        if (sections < 1 || sections > MOST_SECTIONS) {
            if (spec == null) {
                throw new IllegalStateException("picocli has not injected the command's spec");
            }
            throw new ParameterException(spec.commandLine(), "--sections must lie in 1 to " + MOST_SECTIONS + ".");
        }
        console.out().print(PackingQuality.measure(sections, seed));
        console.out().flush();
        return ExitCode.OK;
    }
}
