package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
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
