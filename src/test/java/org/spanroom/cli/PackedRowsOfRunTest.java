package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A run that writes all spans writes rows that were packed when each span was assessed for its place; a run with a condition assesses every span that
 * passes a second time. Where all pass, both write the same bytes.
 */
class PackedRowsOfRunTest {
    @TempDir
    static Path folder;

    private static Path config;

    @BeforeAll
    static void makeCity() {
        CommandRun.of(
                "sample",
                "--spans",
                "900",
                "--seed",
                "4",
                "--output",
                folder.resolve("city").toString());
        config = folder.resolve("city").resolve("spanroom.yaml");
    }

    @ParameterizedTest
    @ValueSource(strings = {"metric", "us"})
    void rowsAreThoseOfASecondAssessment(String units) throws IOException {
        Path packed = rank("packed-" + units, "--units", units);
        Path again = rank("again-" + units, "--units", units, "--where", "length_m > 0");

        assertThat(packed.resolve("spans.csv")).hasSameBinaryContentAs(again.resolve("spans.csv"));
        assertThat(unpacked(packed, "run_spans.csv.gz")).startsWith("span_id,rank");
        assertThat(withoutLines(unpacked(again, "run_spans.csv.gz"))).isEqualTo(unpacked(packed, "run_spans.csv.gz"));
    }

    @Test
    void rowsWithoutASimulationAreThoseOfASecondAssessment() throws IOException {
        Path packed = rank("packed", "--no-uncertainty");
        Path again = rank("again", "--no-uncertainty", "--where", "length_m > 0");

        assertThat(packed.resolve("spans.csv")).hasSameBinaryContentAs(again.resolve("spans.csv"));
        assertThat(packed.resolve("sections.csv")).hasSameBinaryContentAs(again.resolve("sections.csv"));
    }

    /** A heap that has no room for rows (MemoryNeedTest says so): they go through a file, which is not among the results. */
    @Test
    void rowsThatWentThroughAFileAreThoseFromMemory() throws Exception {
        String[] same = {"--no-uncertainty", "--formats", "csv", "--threads", "2"};
        Path packed = rank("memory", same);
        Path filed = rankInSmallHeap(folder.resolve("file"), same);

        assertThat(filed.toFile().list())
                .containsExactlyInAnyOrder(packed.toFile().list());
        assertThat(packed.resolve("spans.csv")).hasSameBinaryContentAs(filed.resolve("spans.csv"));
        assertThat(packed.resolve("sections.csv")).hasSameBinaryContentAs(filed.resolve("sections.csv"));
        assertThat(unpacked(filed, "run_spans.csv.gz")).isEqualTo(unpacked(packed, "run_spans.csv.gz"));
    }

    private static Path rankInSmallHeap(Path results, String... options) throws Exception {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx46m",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName(),
                "rank",
                "--config",
                config.toString(),
                "--output",
                results.toString()));
        command.addAll(List.of(options));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(said).isZero();
        return results;
    }

    private static Path rank(String name, String... options) {
        Path results = folder.resolve(name);
        String[] start = {"rank", "--config", config.toString(), "--output", results.toString()};
        String[] all =
                Stream.concat(Arrays.stream(start), Arrays.stream(options)).toArray(String[]::new);
        assertThat(CommandRun.of(all).exitCode()).as(name).isZero();
        return results;
    }

    private static String unpacked(Path results, String file) throws IOException {
        try (InputStream in = new GZIPInputStream(Files.newInputStream(results.resolve(file)))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** A run with a condition keeps the lines of all spans beside their cells; they are the last column. */
    private static String withoutLines(String csv) {
        return csv.replaceAll(",(line_wkt|\"LINESTRING[^\"]*\")?\r\n", "\r\n");
    }
}
