package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.StringJoiner;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Lines without length are rejected once, and every count of the program says the same of them. */
class ZeroLengthTest {
    /** Lines whose vertices all lie at one place: two, many, to the last decimal that counts, and across the antimeridian. */
    private static final List<String> DOTS = List.of(
            "[[-30,40],[-30,40]]",
            "[[-30,40],[-30,40],[-30,40],[-30,40]]",
            "[[-30,40,1],[-30,40,7]]",
            "[[-30,40],[-30.0000000001,40.0000000002]]",
            "[[180,40],[-180,40]]");

    private static final List<String> LINES = List.of(
            "[[-30,40],[-30,40],[-30,40.001]]",
            "[[-30,40],[-30,40.001],[-30,40.001]]",
            "[[-30,40],[-30,40.001],[-30,40]]");

    @TempDir
    Path folder;

    private static String feature(String type, String coordinates) {
        return "{\"type\":\"Feature\",\"properties\":{},\"geometry\":{\"type\":\"" + type + "\",\"coordinates\":"
                + coordinates + "}}";
    }

    private Path file(String name, Iterable<String> features) throws IOException {
        var all = new StringJoiner(",", "{\"type\":\"FeatureCollection\",\"features\":[", "]}");
        features.forEach(all::add);
        return Files.writeString(folder.resolve(name), all.toString());
    }

    private Path vaults() throws IOException {
        return file("vaults.geojson", List.of(feature("Point", "[-30,40]"), feature("Point", "[-30,40.001]")));
    }

    @Test
    void everyCountRejectsALineWithoutLength() throws IOException {
        List<String> features = new java.util.ArrayList<>();
        LINES.forEach(line -> features.add(feature("LineString", line)));
        DOTS.forEach(dot -> features.add(feature("LineString", dot)));
        // a line of several parts is used for those that have length, and rejected where none has
        features.add(feature("MultiLineString", "[" + DOTS.get(0) + "," + LINES.get(0) + "]"));
        features.add(feature("MultiLineString", "[" + DOTS.get(0) + "," + DOTS.get(1) + "]"));
        Path routes = file("routes.geojson", features);
        Path results = folder.resolve("run");

        CommandRun rank = CommandRun.of(
                "rank", "--routes", routes.toString(), "--vaults", vaults().toString(), "--output", results.toString());
        CommandRun check = CommandRun.of("check", "--routes", routes.toString(), "--vaults", vaults().toString());

        assertThat(rank.exitCode()).as(rank.err()).isZero();
        JsonNode run = new ObjectMapper().readTree(results.resolve("run.json").toFile());
        JsonNode input = run.at("/inputs/0");
        assertThat(input.at("/features_read").asInt()).isEqualTo(10);
        assertThat(input.at("/features_used").asInt()).isEqualTo(LINES.size() + 1);
        assertThat(input.at("/features_rejected").asInt()).isEqualTo(DOTS.size() + 1);
        assertThat(input.at("/rejected_by_code/zero_length_part").asInt()).isEqualTo(DOTS.size() + 1);
        int parts = DOTS.size() + 3;
        assertThat(run.at("/findings_by_code/zero_length_part").asInt()).isEqualTo(parts);
        assertThat(Files.readAllLines(results.resolve("findings.csv")).stream()
                        .filter(line -> line.contains("zero_length_part")))
                .hasSize(parts);
        assertThat(rank.err()).contains("4 routes, 2 vaults");
        assertThat(check.out()).contains("zero_length_part (" + parts + ")");
        assertThat(check.out()).contains("Line ends that have a vault nearby, of 8:");
    }

    @Test
    void aLayerOfNothingButDotsEndsTheRun() throws IOException {
        Path routes = file(
                "routes.geojson",
                DOTS.stream().map(dot -> feature("LineString", dot)).toList());

        CommandRun check = CommandRun.of("check", "--routes", routes.toString(), "--vaults", vaults().toString());

        assertThat(check.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(check.err())
                .contains(
                        "none of its " + DOTS.size() + " features",
                        "All vertices of each line are at the same location",
                        "zero_length_part");
    }
}
