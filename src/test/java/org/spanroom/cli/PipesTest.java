package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.testing.ExternalTool;

/** A config may come through a pipe, and is read once; data may not, and nothing waits for it. */
class PipesTest {
    private static final Duration LONGEST = Duration.ofSeconds(60);

    @TempDir
    private Path folder;

    private Path config;
    private Path pipe;

    @BeforeEach
    void makePipe() {
        config = StreetOfCases.write(folder);
        pipe = folder.resolve("pipe");
        ExternalTool.named("mkfifo").run(pipe.toString());
    }

    /** Writes into the pipe once; a second reading of it would wait forever. */
    private void pour(String text) {
        var writer = new Thread(() -> {
            try {
                Files.writeString(pipe, text);
            } catch (IOException failure) {
                throw new UncheckedIOException(failure);
            }
        });
        writer.setDaemon(true);
        writer.start();
    }

    @Test
    void aConfigComesThroughAPipe() throws IOException {
        String text = Files.readString(config);
        CommandRun plain = CommandRun.of("check", "--config", config.toString(), "--json");

        assertTimeoutPreemptively(LONGEST, () -> {
            pour(text);
            CommandRun piped = CommandRun.of("check", "--config", pipe.toString(), "--json");
            assertThat(piped.exitCode()).as(piped.err()).isZero();
            assertThat(piped.out()).isEqualTo(plain.out());
        });
    }

    @Test
    void whatAPipedConfigNamesIsRelativeToTheWorkingDirectory() throws IOException {
        String here =
                Path.of("").toAbsolutePath().relativize(folder.toRealPath()).toString();
        String text = Files.readString(config).replace(folder.toString(), here);

        assertTimeoutPreemptively(LONGEST, () -> {
            pour(text);
            CommandRun piped = CommandRun.of("check", "--config", pipe.toString(), "--json");
            assertThat(piped.exitCode()).as(piped.err()).isZero();
        });
    }

    @Test
    void aConfigWithoutAnEndIsRefused() {
        assertTimeoutPreemptively(LONGEST, () -> {
            CommandRun endless = CommandRun.of("check", "--config", "/dev/zero");
            assertThat(endless.exitCode()).isEqualTo(ExitCode.INPUT);
            assertThat(endless.complaint())
                    .isEqualTo("spanroom: /dev/zero: the file has more than 1000000 bytes. Is it a config?\n");
        });
    }

    @Test
    void aFolderIsNoConfig() {
        assertThat(CommandRun.of("check", "--config", folder.toString()).complaint())
                .isEqualTo("spanroom: " + folder + ": it is a folder. Name the config file in it.\n");
    }

    @ParameterizedTest
    @ValueSource(strings = {"--routes", "--vaults", "--contents", "--zones", "--field-book"})
    void dataThroughAPipeAreRefusedAtOnce(String option) {
        for (String other : new String[] {pipe.toString(), "/dev/null"}) {
            assertTimeoutPreemptively(LONGEST, () -> {
                CommandRun run = CommandRun.of("check", "--config", config.toString(), option, other);
                assertThat(run.exitCode()).isEqualTo(ExitCode.INPUT);
                assertThat(run.complaint())
                        .isEqualTo("spanroom: " + other
                                + ": it is not a regular file but a pipe or a device, which can be read"
                                + " only once. Save its contents as a file and name that.\n");
            });
        }
        CommandRun run = CommandRun.of("check", "--config", config.toString(), option, folder.toString());
        assertThat(run.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(run.complaint()).isEqualTo("spanroom: " + folder + ": it is a folder. Name the file in it.\n");
    }
}
