package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.output.folder.OutputFolder;
import org.spanroom.testing.FolderState;
import org.spanroom.testing.ForkedRun;

/**
 * A run that is killed at any call of the system that changes a folder or a file, from its beginning to the end of its commit; and a
 * second one killed at the same call. The third succeeds, and at no time are earlier results lost.
 */
class KilledAtEveryCallTest {
    private static final List<String> CALLS =
            List.of("mkdir", "rename", "unlink", "unlinkat", "rmdir", "pwrite64", "fsync", "fdatasync");
    private static final int KILLED = 137;
    private static final int MOST_CALLS = 200;
    private static final String MARKER = "run.json";

    @TempDir
    Path folder;

    /** What every command does with its folder, without the work. */
    static final class Writing {
        private Writing() {}

        /** Writes a folder; the arguments are its path and what its file says. */
        public static void main(String[] arguments) throws IOException {
            try (var output = OutputFolder.create(Path.of(arguments[0]), true, MARKER)) {
                Files.writeString(output.path().resolve(MARKER), arguments[1]);
                output.commit();
            }
        }
    }

    @Test
    void theThirdRunSucceedsWhereverTwoWereKilled() throws IOException {
        assumeTrue(canTrace(), "strace is not on the PATH, or may not trace; test skipped");
        int kills = 0;
        for (String call : CALLS) {
            int time = 1;
            while (isKilledAt(call, time)) {
                kills++;
                time++;
                assertThat(time).isLessThan(MOST_CALLS);
            }
        }
        // Making and noting the folder, moving the old one away, the new one in, and removing the old one.
        assertThat(kills).isGreaterThan(10);
    }

    /** Tries one call of the system at its first, second or later time; returns whether it comes that often. */
    private boolean isKilledAt(String call, int time) throws IOException {
        Path results = Files.createDirectories(folder.resolve(call + "-" + time).resolve("run"));
        Files.writeString(results.resolve(MARKER), "earlier");

        boolean killed = exitCode(killing(call, time), results, "first") == KILLED;
        if (killed) {
            demandResults(results, "earlier", "first");
            exitCode(killing(call, time), results, "second");
            demandResults(results, "earlier", "first", "second");

            assertThat(exitCode(List.of(), results, "third"))
                    .as("after " + call + " " + time)
                    .isZero();
            assertThat(Files.readString(results.resolve(MARKER))).isEqualTo("third");
            assertThat(FolderState.names(results.getParent())).containsExactly("run");
        }
        return killed;
    }

    /** Results are in their place, or, for the instant between two moves, beside it where the next run finds them. */
    private static void demandResults(Path results, String... texts) throws IOException {
        Map<String, String> all = FolderState.of(results.getParent());
        Path inPlace = results.resolve(MARKER);
        if (Files.exists(inPlace)) {
            assertThat(Files.readString(inPlace)).isIn((Object[]) texts);
        } else {
            assertThat(all.keySet()).anyMatch(name -> name.startsWith(".run.old-") && name.endsWith(MARKER));
        }
    }

    private int exitCode(List<String> before, Path results, String text) {
        try (ForkedRun run = ForkedRun.start(
                before, List.of("-XX:-UsePerfData"), Writing.class, folder, List.of(results.toString(), text))) {
            return run.exitCode();
        }
    }

    private List<String> killing(String call, int time) {
        return List.of(
                "strace",
                "-f",
                "-qq",
                "-o",
                folder.resolve("trace.txt").toString(),
                "-e",
                "trace=" + call,
                "-e",
                "inject=" + call + ":signal=KILL:when=" + time);
    }

    private boolean canTrace() {
        try {
            return new ProcessBuilder(
                                    "strace",
                                    "-qq",
                                    "-o",
                                    folder.resolve("can.txt").toString(),
                                    "true")
                            .start()
                            .waitFor()
                    == 0;
        } catch (IOException missing) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
