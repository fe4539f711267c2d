package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.sample.DemoCity;
import org.spanroom.testing.FolderState;
import org.spanroom.testing.ForkedRun;

/**
 * Runs that are stopped, killed, or starved of memory, each in a process of its own: what was there before stays, byte for byte.
 * Exit codes of signals are 128 and their number, as shells have it (POSIX.1-2017, Shell 2.8.2, from memory).
 */
class StoppedRunTest {
    private static final int SPANS = 600;

    @TempDir
    static Path shared;

    @TempDir
    Path folder;

    private static Path city;

    @BeforeAll
    static void layOutACity() {
        city = shared.resolve("city");
        DemoCity.write(SPANS, 3, city);
    }

    @ParameterizedTest(name = "{0} when {1} is there")
    @CsvSource({
        "INT,  130, ''",
        "TERM, 143, ''",
        "INT,  130, spans.csv",
        "TERM, 143, spanroom.gpkg",
    })
    void stoppedRunLeavesEarlierResultsAndNothingElse(String signal, int code, String when) throws IOException {
        assumeFalse(signal.equals("INT") && isInterruptIgnored(), "Ctrl-C is ignored where these tests run; skipped");
        Path results = earlierResults();
        Map<String, String> before = FolderState.of(results);

        try (ForkedRun run = start(List.of(), results)) {
            run.await(() -> isWriting(results, when));
            run.signal(signal);

            assertThat(run.exitCode()).isEqualTo(code);
            assertThat(run.out()).isEmpty();
            assertThat(run.err()).contains("spanroom: stopped before the end").doesNotContain("Exception", "cannot");
        }
        assertThat(FolderState.of(results)).isEqualTo(before);
        assertThat(FolderState.names(results.getParent())).containsExactly("run");
        assertThat(FolderState.names(folder.resolve("tmp"))).isEmpty();
    }

    @Test
    void runIntoANewFolderThatIsStoppedLeavesNotEvenTheFoldersAboveIt() {
        Path results = folder.resolve("place/deep/run");

        try (ForkedRun run = start(List.of(), results)) {
            run.await(() -> isWriting(results, ""));
            run.signal("TERM");
            assertThat(run.exitCode()).isEqualTo(143);
        }
        assertThat(folder.resolve("place")).doesNotExist();
    }

    @ParameterizedTest(name = "kill -9 when {0} is there")
    @ValueSource(strings = {"spanroom.gpkg", "run.json"})
    void whatAKilledRunLeftIsClearedByTheNext(String when) throws IOException {
        Path results = earlierResults();
        Map<String, String> before = FolderState.of(results);
        try (ForkedRun run = start(List.of(), results)) {
            run.await(() -> isWriting(results, when));
            run.signal("KILL");
            assertThat(run.exitCode()).isEqualTo(137);
        }
        assertThat(FolderState.names(results.getParent())).contains(".run.lock").hasSizeGreaterThanOrEqualTo(2);
        if (isWriting(results, "")) {
            assertThat(FolderState.of(results)).isEqualTo(before);
        }

        CommandRun next = CommandRun.of(arguments(results).toArray(String[]::new));

        assertThat(next.exitCode()).as(next.err()).isZero();
        assertThat(FolderState.names(results.getParent())).containsExactly("run");
        assertThat(FolderState.names(results)).contains("run.json", "spans.csv", "spanroom.gpkg");
    }

    @Test
    void secondRunIntoTheSameFolderEndsAtOnceAndTheFirstIsWhole() throws IOException {
        Path results = earlierResults();

        try (ForkedRun first = start(List.of(), results)) {
            first.await(() -> isWriting(results, ""));
            CommandRun second = CommandRun.of(arguments(results).toArray(String[]::new));

            assertThat(second.exitCode()).isEqualTo(ExitCode.OUTPUT);
            assertThat(second.err())
                    .isEqualTo("spanroom: " + results + ": another run is writing into this folder (process "
                            + first.pid() + "). Wait until it has ended, or choose another folder."
                            + System.lineSeparator());
            assertThat(first.exitCode()).as(first.err()).isZero();
        }
        assertThat(FolderState.names(results.getParent())).containsExactly("run");
        assertThat(FolderState.names(results)).contains("run.json", "spans.csv", "spanroom.gpkg");
    }

    @ParameterizedTest(name = "-Xmx{0} for {1} spans")
    @CsvSource({"12m, 600, no results", "42m, 45000, during"})
    void tooLittleMemoryIsOneLineAndACodeOfItsOwn(String heap, int spans, String said) throws IOException {
        Path results = earlierResults();
        Map<String, String> before = FolderState.of(results);
        Path big = shared.resolve("city-of-" + spans);
        DemoCity.write(spans, 3, big);

        try (ForkedRun run = start(List.of("-Xmx" + heap, "-XX:+UseSerialGC"), big, results)) {
            assertThat(run.exitCode()).as(run.err()).isEqualTo(ExitCode.MEMORY);
            assertThat(run.err().lines().filter(line -> line.startsWith("spanroom: ")))
                    .singleElement()
                    .asString()
                    .containsIgnoringCase(said)
                    .contains("not enough memory", "MiB", "java -Xmx", "earlier ones are as they were");
            assertThat(run.err()).doesNotContain("Exception", "\tat ", "java.lang");
        }
        assertThat(FolderState.of(results)).isEqualTo(before);
        assertThat(FolderState.names(results.getParent())).containsExactly("run");
        assertThat(FolderState.names(folder.resolve("tmp"))).isEmpty();
    }

    /** Returns whether a run has begun to write, or its file of some name is there. */
    private static boolean isWriting(Path results, String file) {
        return FolderState.holds(results.getParent(), ".run.writing-", file);
    }

    private Path earlierResults() throws IOException {
        Path results = Files.createDirectories(folder.resolve("place/run"));
        Files.writeString(results.resolve("run.json"), "{\"of\": \"an earlier run\"}");
        Files.writeString(results.resolve("spans.csv"), "old");
        return results;
    }

    private ForkedRun start(List<String> java, Path results) {
        return start(java, city, results);
    }

    private ForkedRun start(List<String> java, Path layers, Path results) {
        var options = new ArrayList<>(java);
        try {
            options.add("-Djava.io.tmpdir=" + Files.createDirectories(folder.resolve("tmp")));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        return ForkedRun.start(List.of(), options, Main.class, folder, arguments(layers, results));
    }

    private static List<String> arguments(Path results) {
        return arguments(city, results);
    }

    private static List<String> arguments(Path layers, Path results) {
        return List.of(
                "rank",
                "--config",
                "sample-gis/spanroom.yaml",
                "--routes",
                layers.resolve("ducts.geojson").toString(),
                "--vaults",
                layers.resolve("vaults.geojson").toString(),
                "--contents",
                layers.resolve("contents.csv").toString(),
                "--output",
                results.toString(),
                "--overwrite",
                "--output-crs",
                "EPSG:3857");
    }

    /** A process started in the background of a script inherits that it ignores Ctrl-C. */
    private static boolean isInterruptIgnored() throws IOException {
        Path status = Path.of("/proc/self/status");
        return Files.exists(status)
                && Files.readAllLines(status).stream()
                        .filter(line -> line.startsWith("SigIgn:"))
                        .anyMatch(line ->
                                (Long.parseUnsignedLong(line.substring(7).strip(), 16) & 2) != 0);
    }
}
