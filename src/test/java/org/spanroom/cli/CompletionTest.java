package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The completion script, in a real bash. */
class CompletionTest {
    @TempDir
    Path folder;

    private Path script;

    @BeforeEach
    void writeScript() throws IOException {
        assumeThat(Path.of("/bin/bash")).as("bash").exists();
        CommandRun run = CommandRun.of("completion", "bash");
        assertThat(run.exitCode()).isZero();
        script = Files.writeString(folder.resolve("spanroom"), run.out());
    }

    @Test
    void isValidForBashAndSaysHowForZsh() throws IOException, InterruptedException {
        assertThat(bash("bash -n '" + script + "'")).isEmpty();
        assertThat(CommandRun.of("completion", "zsh").out())
                .isEqualTo(Files.readString(script))
                .contains("bashcompinit");
    }

    @ParameterizedTest
    @CsvSource({
        "spanroom ra, rank",
        "spanroom comp, compare completion",
        "spanroom rank --conf, --config",
        "spanroom rank --formats g, geopackage geojson",
        "spanroom explain --ra, --rank",
        "spanroom sample --format sha, shapefile"
    })
    void completesCommandsOptionsAndFormats(String line, String expected) throws IOException, InterruptedException {
        String[] words = line.split(" ", -1);
        String completed = bash("source '" + script + "'; COMP_WORDS=(" + line + "); COMP_CWORD=" + (words.length - 1)
                + "; { _complete_spanroom; } 2> /dev/null; echo \"${COMPREPLY[@]}\"");

        assertThat(completed.strip().split("\\s+")).containsExactlyInAnyOrder(expected.split(" ", -1));
    }

    @ParameterizedTest
    @ValueSource(strings = {"fish", "", "bash zsh"})
    void otherShellsAreRefused(String shell) {
        assertThat(CommandRun.of(("completion " + shell).split(" ", -1)).exitCode())
                .isEqualTo(ExitCode.USAGE);
    }

    private String bash(String command) throws IOException, InterruptedException {
        Process bash = new ProcessBuilder("/bin/bash", "--norc", "-c", command)
                .redirectErrorStream(true)
                .start();
        String out = new String(bash.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        bash.waitFor();
        return out;
    }
}
