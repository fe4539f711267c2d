package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.output.folder.OutputFolder;
import org.spanroom.testing.ExternalTool;

/** A run that is stopped while it prints its summary says that the new results are in place. */
class StoppedAfterCommitTest {
    private static final String COMMITTED = "test: results are in place";

    @TempDir
    private Path folder;

    /** The program with a full pipe as standard output, so that it can commit its results and cannot end. */
    static final class FullOut {
        private FullOut() {}

        public static void main(String[] arguments) {
            FileOutputStream err = new FileOutputStream(FileDescriptor.err);
            daemon(() -> {
                try (var out = new FileOutputStream(FileDescriptor.out)) {
                    while (true) {
                        out.write(new byte[4096]);
                    }
                }
            });
            daemon(() -> {
                while (OutputFolder.lastCommitted().isEmpty()) {
                    Thread.sleep(5);
                }
                err.write((COMMITTED + "\n").getBytes(StandardCharsets.UTF_8));
                return null;
            });
            Main.main(arguments);
        }

        private static void daemon(java.util.concurrent.Callable<?> work) {
            var thread = new Thread(() -> {
                try {
                    work.call();
                } catch (Exception ended) {
                    throw new IllegalStateException(ended);
                }
            });
            thread.setDaemon(true);
            thread.start();
        }
    }

    @Test
    void theMessageNamesTheNewResults() throws IOException, InterruptedException {
        Path kill = ExternalTool.named("kill").path();
        Path results = folder.resolve("run");
        Path err = folder.resolve("err.txt");
        var command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                FullOut.class.getName()));
        command.addAll(
                List.of("rank", "--config", StreetOfCases.write(folder).toString(), "--output", results.toString()));
        Process process =
                new ProcessBuilder(command).redirectError(err.toFile()).start();
        try {
            for (int wait = 0; wait < 1200 && !Files.readString(err).contains(COMMITTED); wait++) {
                Thread.sleep(100);
            }
            assertThat(Files.readString(err)).contains(COMMITTED);
            new ProcessBuilder(kill.toString(), "-TERM", Long.toString(process.pid()))
                    .start()
                    .waitFor();

            assertThat(process.waitFor(120, TimeUnit.SECONDS)).isTrue();
            assertThat(process.exitValue()).isEqualTo(143);
            assertThat(Files.readString(err))
                    .contains("spanroom: stopped after the new results were in place: " + results.toRealPath())
                    .doesNotContain("stopped before the end");
            assertThat(results.resolve("run.json")).isRegularFile();
        } finally {
            process.destroyForcibly();
        }
    }
}
