package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.testing.ForkedRun;

/** The program ends with its own exit code, whatever happens to what clears up after it. */
class EndingTest {
    private static final int ITS_OWN_CODE = 3;

    @TempDir
    private Path folder;

    /** Ends as the program does, with a thread that fails while the end waits for it. */
    static final class Ending {
        private Ending() {}

        public static void main(String[] args) {
            var err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
            SpanroomCommand.endWithAnyThread(new Console(err, err, false), Stopping.tellOn(err));
            Runtime.getRuntime().addShutdownHook(new Thread(() -> {
                throw new NoClassDefFoundError("the jar was replaced");
            }));
            System.exit(ITS_OWN_CODE);
        }
    }

    @Test
    void aThreadThatFailsAtTheEndDoesNotKeepTheProgram() {
        try (ForkedRun run = ForkedRun.start(List.of(), List.of(), Ending.class, folder, List.of())) {
            assertThat(run.exitCode()).isEqualTo(ITS_OWN_CODE);
        }
    }
}
