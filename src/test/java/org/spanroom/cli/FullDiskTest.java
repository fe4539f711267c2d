package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.sample.DemoCity;
import org.spanroom.testing.FolderState;
import org.spanroom.testing.SmallDisk;

/** Whole runs onto real disks that are too small or may not be written: one line, code 5, and what was there stays. */
class FullDiskTest {
    private static final int SPANS = 150;

    @TempDir
    static Path shared;

    /** Kibibytes of which the results need more than 400, so that another file is cut short at each size. */
    @ParameterizedTest(name = "{0} KiB")
    @ValueSource(ints = {16, 40, 80, 160, 240, 360})
    void diskThatFillsUpCostsNothingThatWasThere(int kibibytes) throws IOException {
        Path city = city();
        try (var disk = SmallDisk.mount(shared.resolve("disk" + kibibytes), kibibytes)) {
            assertThat(disk).isNotNull();
            Path place = shared.resolve("disk" + kibibytes);
            Path results = Files.createDirectory(place.resolve("run"));
            Files.writeString(results.resolve("run.json"), "{\"of\": \"an earlier run\"}");
            Map<String, String> before = FolderState.of(place);

            CommandRun run = rank(city, results);

            assertThat(run.exitCode()).as(run.err()).isEqualTo(ExitCode.OUTPUT);
            assertThat(run.complaint().lines())
                    .singleElement()
                    .asString()
                    .contains("the disk is full. Free some space or choose a folder on another disk.");
            assertThat(FolderState.of(place)).isEqualTo(before);
            assertThat(FolderState.names(place)).containsExactly("run");
        }
    }

    @Test
    void placeThatMayNotBeWrittenIsToldBeforeAnythingIsRead() throws IOException {
        Path city = city();
        try (var disk = SmallDisk.mount(shared.resolve("locked"), 1024)) {
            disk.makeReadOnly();

            CommandRun run = rank(city, shared.resolve("locked/deep/run"));

            assertThat(run.exitCode()).isEqualTo(ExitCode.OUTPUT);
            assertThat(run.err().lines()).singleElement().asString().contains("locked/deep/run: ", "Read-only");
        }
    }

    private static Path city() {
        Path city = shared.resolve("city");
        if (!Files.exists(city)) {
            DemoCity.write(SPANS, 1, city);
        }
        return city;
    }

    private static CommandRun rank(Path city, Path results) {
        return CommandRun.of(
                "rank",
                "--config",
                "sample-gis/spanroom.yaml",
                "--routes",
                city.resolve("ducts.geojson").toString(),
                "--vaults",
                city.resolve("vaults.geojson").toString(),
                "--contents",
                city.resolve("contents.csv").toString(),
                "--output",
                results.toString(),
                "--overwrite");
    }
}
