package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.testing.ForkedRun;
import org.spanroom.testing.SmallDisk;

/** Libraries unpack files into the temporary folder; where that cannot be, the message names it and no input. */
class TemporaryFolderTest {
    @TempDir
    Path folder;

    @Test
    void aMissingOneIsNamed() {
        demandOneLine(folder.resolve("none"), "it does not exist");
    }

    @Test
    void oneThatIsAFileIsNamed() throws IOException {
        demandOneLine(Files.writeString(folder.resolve("file"), "text"), "Not a directory");
    }

    @Test
    void oneThatMayNotBeWrittenIsNamed() throws IOException {
        Path locked = folder.resolve("locked");
        try (var disk = SmallDisk.mount(locked, 1024)) {
            disk.makeReadOnly();
            demandOneLine(locked, "Read-only file system");
        }
    }

    @Test
    void aFullOneIsNamed() throws IOException {
        Path full = folder.resolve("full");
        try (var disk = SmallDisk.mount(full, 64)) {
            assertThat(disk).isNotNull();
            demandOneLine(full, "No space left on device");
        }
    }

    private void demandOneLine(Path temporary, String reason) {
        Path results = folder.resolve("results");
        try (ForkedRun run = ForkedRun.start(
                List.of(),
                List.of("-Djava.io.tmpdir=" + temporary),
                Main.class,
                folder,
                List.of("rank", "--config", "sample-gis/spanroom.yaml", "--output", results.toString()))) {
            assertThat(run.exitCode()).as(run.err()).isEqualTo(ExitCode.OUTPUT);
            assertThat(run.err().lines().filter(line -> line.startsWith("spanroom: ")))
                    .singleElement()
                    .asString()
                    .contains("the temporary folder " + temporary + " cannot be used", reason, "-Djava.io.tmpdir=")
                    .doesNotContain("sample-gis");
            assertThat(run.err()).doesNotContain("Exception");
        }
        assertThat(results).doesNotExist();
    }
}
