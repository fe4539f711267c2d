package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.testing.FolderState;
import org.spanroom.testing.ForkedRun;

/** A city that is being laid out is there whole or not at all. */
class StoppedSampleTest {
    private static final String BEGINNING = ".city.writing-";
    private static final String FIRST_FILE = "ducts.geojson";

    @TempDir
    Path folder;

    private ForkedRun start() {
        return ForkedRun.start(List.of(), List.of(), Main.class, folder, List.of(arguments(300_000)));
    }

    private String[] arguments(int spans) {
        return new String[] {
            "sample",
            "--spans",
            "" + spans,
            "--output",
            folder.resolve("place/city").toString()
        };
    }

    private void stop(String signal, int code) {
        try (ForkedRun run = start()) {
            run.await(() -> FolderState.holds(folder.resolve("place"), BEGINNING, FIRST_FILE));
            run.signal(signal);
            assertThat(run.exitCode()).isEqualTo(code);
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void aStoppedOneLeavesNothing(boolean folderIsThere) throws IOException {
        if (folderIsThere) {
            Files.createDirectories(folder.resolve("place/city"));
        }

        stop("TERM", 143);

        if (folderIsThere) {
            assertThat(FolderState.names(folder.resolve("place"))).containsExactly("city");
            assertThat(FolderState.names(folder.resolve("place/city"))).isEmpty();
        } else {
            assertThat(folder.resolve("place")).doesNotExist();
        }
    }

    @Test
    void whatAKilledOneLeftIsClearedByTheNext() throws IOException {
        stop("KILL", 137);
        assertThat(FolderState.names(folder.resolve("place")))
                .contains(".city.lock")
                .anyMatch(name -> name.startsWith(BEGINNING));

        CommandRun next = CommandRun.of(arguments(60));

        assertThat(next.exitCode()).as(next.err()).isZero();
        assertThat(FolderState.names(folder.resolve("place"))).containsExactly("city");
        assertThat(FolderState.names(folder.resolve("place/city")))
                .contains(
                        "README.md",
                        "contents.csv",
                        "ducts.geojson",
                        "known-faults.csv",
                        "vaults.geojson",
                        "zones.gpkg");
    }

    @Test
    void aFolderWithSomethingInItIsRefusedAndStaysAsItIs() throws IOException {
        Path city = Files.createDirectories(folder.resolve("place/city"));
        Files.writeString(city.resolve("mine.txt"), "mine");

        CommandRun run = CommandRun.of(arguments(60));

        assertThat(run.exitCode()).isEqualTo(ExitCode.OUTPUT);
        assertThat(run.err())
                .isEqualTo("spanroom: " + city + ": exists and is not empty. Choose another folder."
                        + System.lineSeparator());
        assertThat(FolderState.names(city)).containsExactly("mine.txt");
    }
}
