package org.spanroom.testing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.opentest4j.TestAbortedException;

/**
 * A program of the system, found on the PATH, that the tests let write or judge files.
 *
 * <p>Where it is not installed the test is skipped and says so; where the environment variable CI is "true" its absence
 * fails the test, so that a build server cannot pass by skipping.
 */
public final class ExternalTool {
    private static final int LONGEST_RUN_S = 120;

    private final Path program;

    private ExternalTool(Path program) {
        this.program = program;
    }

    /** What a program printed, both streams in one, and its exit code. */
    public record Outcome(int exitCode, String output) {}

    /** Returns the program of that name, or ends the test as skipped (failed on a build server). */
    public static ExternalTool named(String name) {
        List<Path> found = onPath(name);
        if (found.isEmpty() && "true".equals(System.getenv("CI"))) {
            throw new AssertionError(name + " is not on the PATH, and this is a build server (CI=true)");
        }
        assumeTrue(!found.isEmpty(), name + " is not on the PATH; test skipped");
        return new ExternalTool(found.get(0));
    }

    /** Returns the first Python that has a module, or ends the test as skipped (failed on a build server). */
    public static ExternalTool pythonWith(String module) {
        for (Path program : onPath("python3")) {
            var python = new ExternalTool(program);
            if (python.tryToRun("-c", "import " + module).exitCode() == 0) {
                return python;
            }
        }
        if ("true".equals(System.getenv("CI"))) {
            throw new AssertionError("no python3 with " + module + ", and this is a build server (CI=true)");
        }
        throw new TestAbortedException("no python3 on the PATH has the module " + module + "; test skipped");
    }

    /** Returns where the program is. */
    public Path path() {
        return program;
    }

    /** Runs the program, demands exit code 0, and returns what it printed. */
    public String run(Object... arguments) {
        Outcome outcome = tryToRun(arguments);
        assertThat(outcome.exitCode()).as(outcome.output()).isZero();
        return outcome.output();
    }

    /** Runs the program and returns how it ended. */
    public Outcome tryToRun(Object... arguments) {
        var command = new ArrayList<String>();
        command.add(program.toString());
        for (Object argument : arguments) {
            command.add(argument.toString());
        }
        try {
            Path output = Files.createTempFile("external-tool", ".txt");
            try {
                return run(command, output);
            } finally {
                Files.delete(output);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Outcome run(List<String> command, Path output) throws IOException {
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(output.toFile())
                .start();
        process.getOutputStream().close();
        try {
            if (!process.waitFor(LONGEST_RUN_S, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new AssertionError(command + " did not end within " + LONGEST_RUN_S + " s");
            }
        } catch (InterruptedException e) {
            process.destroyForcibly();
            Thread.currentThread().interrupt();
            throw new AssertionError("interrupted while waiting for " + command, e);
        }
        return new Outcome(process.exitValue(), Files.readString(output, StandardCharsets.UTF_8));
    }

    private static List<Path> onPath(String name) {
        String path = System.getenv("PATH");
        return path == null
                ? List.of()
                : List.of(path.split(File.pathSeparator, -1)).stream()
                        .filter(folder -> !folder.isEmpty())
                        .map(folder -> Path.of(folder, name))
                        .filter(Files::isExecutable)
                        .toList();
    }
}
