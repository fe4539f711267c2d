package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What happens where standard output cannot take what is printed: a full device, a closed pipe. */
class StandardOutTest {
    private static final String DEMO = "check --config sample-gis/spanroom.yaml";

    @TempDir
    Path folder;

    /** Every command that prints, onto a device that is always full; short and long texts, in a process of its own. */
    @Test
    void aFullDeviceIsCode5AndOneLine() throws IOException, InterruptedException {
        assumeThat(Path.of("/dev/full")).as("a device that is always full").exists();
        String results = folder.resolve("run").toString();
        assertThat(CommandRun.of("rank", "--config", "sample-gis/spanroom.yaml", "--output", results, "--quiet")
                        .exitCode())
                .isZero();
        for (String line : List.of(
                "--help",
                "rank --help",
                "--version",
                "completion bash",
                DEMO,
                "explain --rank 1 --run " + results,
                "compare " + results + " " + results + " --json --output " + folder.resolve("moves"),
                "rank --config sample-gis/spanroom.yaml --formats csv --output " + folder.resolve("again"))) {
            Ended ended = run(line + " > /dev/full");
            // A summary that got lost is no loss of results, and the line says where they are.
            String committed = line.contains("--output ")
                    ? " The new results are complete and in place: " + line.substring(line.lastIndexOf(' ') + 1) + "."
                    : "";

            assertThat(ended.exitCode()).as(line).isEqualTo(ExitCode.OUTPUT);
            assertThat(ended.err().lines().filter(text -> text.startsWith("spanroom: ")))
                    .as(line)
                    .containsExactly("spanroom: standard output cannot be written: No space left on device."
                            + " Free some space, or send it somewhere else." + committed);
            assertThat(ended.err()).doesNotContain("Exception");
        }
        assertThat(folder.resolve("again").resolve("spans.csv")).exists();
    }

    /** As head does: it has what it wanted, so there is nothing to report. */
    @ParameterizedTest
    @ValueSource(strings = {"completion bash", "rank --help", DEMO + " --all"})
    void aReaderThatClosesThePipeIsNoError(String line) throws IOException, InterruptedException {
        Ended ended = run("{ " + program() + " " + line + "; echo code $? >&2; } | head -n 1 > /dev/null", false);

        assertThat(ended.err()).contains("code 0").doesNotContain("Exception", "spanroom: ");
    }

    /** Errors of any kind and of both lengths of output; a command that failed for another reason keeps its code. */
    @ParameterizedTest
    @ValueSource(strings = {"No space left on device", "Input/output error", "File too large"})
    void theReasonIsTheSystems(String reason) {
        var full = new OutputStream() {
            @Override
            public void write(int value) throws IOException {
                throw new IOException(reason);
            }
        };
        var err = new StringWriter();
        var console = new Console(new StandardOut(full), new PrintWriter(err, true), false);

        assertThat(SpanroomCommand.execute(console, "--help")).isEqualTo(ExitCode.OUTPUT);
        assertThat(err.toString()).startsWith("spanroom: standard output cannot be written: " + reason + ". ");
        assertThat(SpanroomCommand.execute(console, "--nonsense")).isEqualTo(ExitCode.USAGE);
    }

    private record Ended(int exitCode, String err) {}

    private static String program() {
        return "'" + Path.of(System.getProperty("java.home"), "bin", "java")
                + "' -XX:TieredStopAtLevel=1 -XX:+UseSerialGC -cp '" + System.getProperty("java.class.path")
                + "' org.spanroom.cli.Main";
    }

    private Ended run(String line) throws IOException, InterruptedException {
        return run(program() + " " + line, true);
    }

    private Ended run(String command, boolean alone) throws IOException, InterruptedException {
        Path err = folder.resolve("err.txt");
        Process shell = new ProcessBuilder("/bin/sh", "-c", alone ? "exec " + command : command)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(err.toFile())
                .start();
        assertThat(shell.waitFor(5, TimeUnit.MINUTES)).isTrue();
        return new Ended(shell.exitValue(), Files.readString(err));
    }
}
