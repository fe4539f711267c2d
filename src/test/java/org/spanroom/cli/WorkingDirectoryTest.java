package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program started in several directories, on one project with its config beside its data. */
class WorkingDirectoryTest {
    @TempDir
    Path folder;

    private Path project;
    private Path elsewhere;

    @BeforeEach
    void writeAProject() throws IOException {
        folder = folder.toRealPath();
        project = Files.createDirectories(folder.resolve("project"));
        elsewhere = Files.createDirectories(folder.resolve("elsewhere"));
        Files.createDirectories(project.resolve("data"));
        Files.createDirectories(project.resolve("settings"));
        Files.writeString(project.resolve("data/ducts.geojson"), """
                {"type": "FeatureCollection", "features": [{"type": "Feature",
                 "properties": {"duct_id": "D-1", "bore": 100, "innerducts": 3, "cables": 1, "live": "yes"},
                 "geometry": {"type": "LineString", "coordinates": [[-30, 40], [-30, 40.001]]}}]}
                """);
        Files.writeString(project.resolve("data/vaults.geojson"), """
                {"type": "FeatureCollection", "features": [
                 {"type": "Feature", "properties": {"vault_id": "V-1"}, "geometry": {"type": "Point", "coordinates": [-30, 40]}},
                 {"type": "Feature", "properties": {"vault_id": "V-2"}, "geometry": {"type": "Point", "coordinates": [-30, 40.001]}}]}
                """);
        Files.writeString(project.resolve("settings/city.yaml"), """
                inputs:
                  routes:
                    file: ../data/ducts.geojson
                    fields: {duct: duct_id, inside_diameter: {field: bore, unit: mm}, innerduct_count: innerducts,
                      cable_count: cables, in_service: live}
                  vaults: {file: ../data/vaults.geojson, fields: {vault: vault_id}}
                output: {folder: results/first}
                """);
    }

    @Test
    void theConfigNamesFilesAndTheWorkingDirectoryTakesResults() throws Exception {
        start(project, "rank", "--config", "settings/city.yaml");
        start(elsewhere, "rank", "--config", "../project/settings/city.yaml");

        JsonNode inside = record(project.resolve("results/first"));
        JsonNode outside = record(elsewhere.resolve("results/first"));
        assertThat(inside.at("/inputs/0/file").asText()).isEqualTo("data/ducts.geojson");
        assertThat(inside.at("/config/inputs/vaults/file").asText()).isEqualTo("data/vaults.geojson");
        assertThat(outside.at("/inputs/0/file").asText())
                .isEqualTo(project.resolve("data/ducts.geojson").toString());
        assertThat(Files.readString(elsewhere.resolve("results/first/spans.csv")))
                .isEqualTo(Files.readString(project.resolve("results/first/spans.csv")));
    }

    @Test
    void anEarlierRunIsExplainedAndRankedFromAnyDirectory() throws Exception {
        start(project, "rank", "--config", "settings/city.yaml");
        Files.writeString(elsewhere.resolve("weights.yaml"), "criteria: {length: {weight_ratio: 3}}\n");
        String spans = Files.readString(project.resolve("results/first/spans.csv"));
        String span = spans.lines().skip(1).findFirst().orElseThrow().split(",", -1)[column(spans, "span_id")];

        String here = start(project, "explain", span, "--run", "results/first");
        String there = start(elsewhere, "explain", span, "--run", "../project/results/first");
        start(
                elsewhere,
                "rank",
                "--from",
                "../project/results/first",
                "--scoring",
                "weights.yaml",
                "--output",
                "other");

        assertThat(there).isEqualTo(here).contains(span);
        assertThat(record(elsewhere.resolve("other"))
                        .at("/config/scoring/criteria/length/weight_ratio")
                        .asDouble())
                .isEqualTo(3);
    }

    private static int column(String csv, String name) {
        return List.of(csv.lines()
                        .findFirst()
                        .orElseThrow()
                        .replace("\uFEFF", "")
                        .split(",", -1))
                .indexOf(name);
    }

    private static JsonNode record(Path results) throws IOException {
        return new ObjectMapper().readTree(Files.readString(results.resolve("run.json")));
    }

    /** Returns what it printed. */
    private String start(Path directory, String... arguments) throws Exception {
        String classPath = Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator, -1))
                .map(entry -> Path.of(entry).toAbsolutePath().toString())
                .collect(Collectors.joining(File.pathSeparator));
        var command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1"));
        command.addAll(List.of("-cp", classPath, Main.class.getName()));
        command.addAll(List.of(arguments));
        Path out = Files.createTempFile(folder, "out", ".txt");
        Path err = Files.createTempFile(folder, "err", ".txt");
        int exitCode = new ProcessBuilder(command)
                .directory(directory.toFile())
                .redirectOutput(out.toFile())
                .redirectError(err.toFile())
                .start()
                .waitFor();
        assertThat(exitCode).as(Files.readString(err)).isZero();
        return Files.readString(out);
    }
}
