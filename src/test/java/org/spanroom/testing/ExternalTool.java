package org.spanroom.testing;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** A program that we did not write and that judges our results; tests that need one are skipped where it is absent. */
public record ExternalTool(String name) {
    public static ExternalTool of(String name) {
        return new ExternalTool(name);
    }

    /** Skips the running test if the program is absent; on a build server, where it must be there, the test fails instead. */
    public void require() {
        if (find().isPresent()) {
            return;
        }
        if ("true".equals(System.getenv("CI"))) {
            throw new AssertionError(name + " is not installed, and CI=true demands it");
        }
        assumeTrue(false, name + " is not installed");
    }

    /** Runs the program and returns what it wrote to its standard output. */
    public String run(String input, String... arguments) {
        require();
        try {
            Path errors = Files.createTempFile("external-tool", ".txt");
            var command = new ArrayList<>(List.of(name));
            command.addAll(List.of(arguments));
            Process process = new ProcessBuilder(command).redirectError(errors.toFile()).start();
            try (var stdin = process.getOutputStream()) {
                stdin.write(input.getBytes(StandardCharsets.UTF_8));
            }
            String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            int exit = process.waitFor();
            String messages = Files.readString(errors);
            Files.delete(errors);
            if (exit != 0) {
                throw new AssertionError(command + " ended with " + exit + ": " + messages);
            }
            return output;
        } catch (IOException e) {
            throw new AssertionError(name + " cannot be run", e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError(name + " was interrupted", e);
        }
    }

    private Optional<Path> find() {
        return Stream.of(System.getenv().getOrDefault("PATH", "").split(":", -1))
                .map(directory -> Path.of(directory, name))
                .filter(Files::isExecutable)
                .findFirst();
    }
}
