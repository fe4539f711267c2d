package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Names and kept fields that CSV, JSON, span ids and spreadsheets could trip over go through every file that a later command reads. */
class HostileTextsTest {
    private static final List<String> TEXTS = List.of(
            "D,1",
            "D\"2\"",
            "=SUM(A1)",
            "'apostrophe",
            "'=guarded",
            "@x",
            "-5",
            "+1+1",
            " ",
            "D\nline",
            "D\r\nx",
            "\uFFFD",
            "D:1:2",
            "D%3A",
            "%",
            "\u00e9\uD83D\uDE00",
            "a".repeat(3000),
            "tab\tx",
            "\\",
            "null",
            "NaN",
            "007",
            "<b>&amp;</b>",
            "\u00A0",
            "\uFF1Dx",
            "\u00A0=1",
            "\uFEFF@x",
            ";=1+1",
            "a;'=1; -x;-5",
            "\"=1",
            "");

    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    Path folder;

    @Test
    void laterCommandsReadBackWhatWasWritten() throws IOException {
        writeLayers();
        rank("whole", "1", "geopackage,csv");
        rank("threads", "2", "geopackage,csv");
        rank("csv", "1", "csv");
        rank("shapes", "2", "geojson");

        assertThat(Files.readAllBytes(folder.resolve("threads/run_spans.csv.gz")))
                .isEqualTo(Files.readAllBytes(folder.resolve("whole/run_spans.csv.gz")));
        assertThat(packed("shapes")).isEqualTo(packed("csv"));
        for (String run : List.of("whole", "csv", "shapes")) {
            again(run, run + "-again");
            again(run + "-again", run + "-twice");
            assertThat(folder.resolve(run + "-again/spans.csv"))
                    .hasSameBinaryContentAs(folder.resolve("whole/spans.csv"));
            assertThat(folder.resolve(run + "-twice/spans.csv"))
                    .hasSameBinaryContentAs(folder.resolve("whole/spans.csv"));
            assertThat(folder.resolve(run + "-twice/sections.csv"))
                    .hasSameBinaryContentAs(folder.resolve("whole/sections.csv"));
            CommandRun compared = run(
                    "compare",
                    "whole",
                    run,
                    "--json",
                    "--output",
                    folder.resolve("moves-" + run).toString());
            assertThat(JSON.readTree(compared.out()).toString()).contains("moves");
            assertThat(Files.readString(folder.resolve("moves-" + run + "/moves.csv"))
                            .lines())
                    .hasSize(1);
        }
    }

    private void writeLayers() throws IOException {
        List<String> ducts = new ArrayList<>();
        List<String> vaults = new ArrayList<>();
        for (int i = 0; i < TEXTS.size(); i++) {
            String text = JSON.writeValueAsString(TEXTS.get(i));
            double lat = 40 + 0.002 * i;
            ducts.add(
                    ("{\"type\":\"Feature\",\"properties\":{\"route\":%s,\"duct\":%s,\"street, \\\"of\\\"\":%s,\"n\":3},\"geometry\":"
                                    + "{\"type\":\"LineString\",\"coordinates\":[[-30,%s,10.5],[-29.9995,%s,11.25],[-29.999,%s,12]]}}")
                            .formatted(text, text, text, lat, lat + 0.0001, lat));
            for (String lon : List.of("-30", "-29.999")) {
                vaults.add(
                        "{\"type\":\"Feature\",\"properties\":{\"vault\":%s},\"geometry\":{\"type\":\"Point\",\"coordinates\":[%s,%s]}}"
                                .formatted(text, lon, lat));
            }
        }
        String collection = "{\"type\":\"FeatureCollection\",\"features\":[%s]}";
        Files.writeString(folder.resolve("ducts.geojson"), collection.formatted(String.join(",", ducts)));
        Files.writeString(folder.resolve("vaults.geojson"), collection.formatted(String.join(",", vaults)));
        Files.writeString(folder.resolve("config.yaml"), """
                inputs:
                  routes:
                    file: ducts.geojson
                    keep: ['street, "of"']
                    fields: {route: route, duct: duct, innerduct_count: n}
                  vaults: {file: vaults.geojson, fields: {vault: vault}}
                assumed: {in_service: dead, cable_count: 0}
                """);
    }

    private void rank(String name, String threads, String formats) {
        run(
                "rank",
                "--config",
                folder.resolve("config.yaml").toString(),
                "--threads",
                threads,
                "--formats",
                formats,
                "--no-uncertainty",
                "--output",
                folder.resolve(name).toString());
    }

    private void again(String from, String to) {
        run(
                "rank",
                "--from",
                folder.resolve(from).toString(),
                "--scoring",
                "config/scoring.yaml",
                "--formats",
                "csv",
                "--output",
                folder.resolve(to).toString());
    }

    private CommandRun run(String command, String... more) {
        List<String> words = new ArrayList<>(List.of(command));
        for (String word : more) {
            boolean isRun = command.equals("compare") && Files.isDirectory(folder.resolve(word));
            words.add(isRun ? folder.resolve(word).toString() : word);
        }
        CommandRun run = CommandRun.of(words.toArray(String[]::new));
        assertThat(run.exitCode()).as(run.err()).isZero();
        return run;
    }

    private byte[] packed(String run) throws IOException {
        try (var in =
                new GZIPInputStream(Files.newInputStream(folder.resolve(run).resolve("run_spans.csv.gz")))) {
            return in.readAllBytes();
        }
    }
}
