package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;

/** The help of each command: whole sentences in 80 columns, and two examples that work. */
class HelpTest {
    @TempDir
    Path folder;

    @ParameterizedTest(name = "{0}")
    @MethodSource("commandNames")
    void everyDescriptionIsWholeSentences(String name) {
        CommandLine command = command(name);

        assertThat(command.getCommandSpec().args())
                .allSatisfy(argument -> assertThat(sentences(argument))
                        .as(argument.paramLabel())
                        .matches("(?s)[A-Z].*[.]")
                        .doesNotContain("  "));
        assertThat(String.join(" ", command.getCommandSpec().usageMessage().description())
                        .strip())
                .endsWith(".");
        assertThat(command.getUsageMessage().lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
        // A longer line would be broken again, which leaves its last word alone.
        assertThat(command.getCommandSpec().usageMessage().description())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
        // No word of a description got lost where its lines were broken.
        assertThat(words(command.getUsageMessage()))
                .contains(command.getCommandSpec().args().stream()
                        .map(HelpTest::sentences)
                        .map(HelpTest::words)
                        .toArray(String[]::new));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("commandNames")
    void everyCommandHasTwoExamples(String name) {
        assertThat(command(name).getUsageMessage()).contains("\nExamples:\n");
        assertThat(examples(name)).hasSize(2);
    }

    /** As the help has them, in the order in which a user would come to them; results go to a folder of the test. */
    @Test
    void examplesRunOnTheDemoCity() {
        var examples = new ArrayList<String>();
        Stream.of("rank", "check", "explain", "compare", "path", "corridors", "connect", "report", "sheets", "sample")
                .forEach(name -> examples.addAll(examples(name)));

        for (String example : examples) {
            String[] arguments = Arrays.stream(example.split(" +", -1))
                    .skip(1)
                    .map(word -> word.replaceFirst("^(output/|city)", folder + "/$1"))
                    .toArray(String[]::new);

            CommandRun run = CommandRun.of(arguments);

            assertThat(run.exitCode()).as(example + "\n" + run.err()).isZero();
            assertThat(run.out()).as(example).isNotEmpty();
        }
    }

    private static String sentences(ArgSpec argument) {
        return String.join(" ", argument.description());
    }

    private static String words(String text) {
        return text.replaceAll("\\s+", " ");
    }

    /** Returns the lines of the footer that are commands, those ending in a backslash joined with the next. */
    private static List<String> examples(String name) {
        String footer =
                String.join("\n", command(name).getCommandSpec().usageMessage().footer());
        return String.format(footer)
                .replace("\\\n", " ")
                .lines()
                .map(String::strip)
                .filter(line -> line.startsWith("spanroom ") || line.startsWith("source "))
                .toList();
    }

    private static CommandLine command(String name) {
        var nowhere = new PrintWriter(Writer.nullWriter());
        CommandLine top = SpanroomCommand.commandLine(nowhere, nowhere, false);
        return name.equals("spanroom") ? top : top.getSubcommands().get(name);
    }

    static Stream<String> commandNames() {
        return Stream.of(
                "spanroom",
                "rank",
                "check",
                "explain",
                "compare",
                "path",
                "corridors",
                "connect",
                "report",
                "sheets",
                "learn",
                "closeout",
                "sample",
                "completion");
    }
}
