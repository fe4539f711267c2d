package org.spanroom.crs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.testing.ForkedRun;

/** Whether GeoTools finds the files where they are placed: if it does not, it unpacks its own beside them, which only costs time. */
class EpsgFilesTest {
    @TempDir
    private Path folder;

    /** Opens the dataset for a system of its own, and notes what lies where it was unpacked. */
    static final class Opening {
        private Opening() {}

        public static void main(String[] args) throws IOException {
            String name = ReferenceSystem.parse("EPSG:2263").name();
            Path directory = Path.of(System.getProperty("EPSG-HSQL.directory"));
            try (Stream<Path> files = Files.walk(directory)) {
                List<String> found = files.map(
                                file -> directory.relativize(file).toString())
                        .filter(file -> file.endsWith(".data"))
                        .toList();
                Files.writeString(Path.of(args[0]), name + "\n" + String.join("\n", found));
            }
        }
    }

    /** Names and sizes are those that {@code unzip -l} lists of EPSG.zip in geotools-wrapper 1.8.1-33.1; the marker says that all are there. */
    @Test
    void filesArePlacedWholeAndMarked() throws IOException {
        EpsgFiles.place(folder);

        try (Stream<Path> files = Files.walk(folder)) {
            assertThat(files.filter(Files::isRegularFile))
                    .extracting(file -> file.getFileName() + " " + Files.size(file))
                    .containsExactlyInAnyOrder(
                            "EPSG.data 33554432",
                            "EPSG.properties 141",
                            "EPSG.script 22324",
                            "EPSG_creation_marker.txt 0");
        }
    }

    @Test
    void oneDatasetIsUnpacked() throws Exception {
        Path note = folder.resolve("note");
        ForkedRun run = ForkedRun.start(List.of(), List.of(), Opening.class, folder, List.of(note.toString()));
        assertThat(run.exitCode()).isZero();
        assertThat(Files.readAllLines(note)).hasSize(2).first().isEqualTo("NAD83 / New York Long Island (ftUS)");
    }
}
