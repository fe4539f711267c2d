package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Explains spans of a run over three ducts in open ocean, of which one is empty. */
class ExplainCommandTest {
    @TempDir
    Path folder;

    private Path run;

    @BeforeEach
    void makeARun() throws IOException {
        run = folder.resolve("run-1");
        Files.writeString(
                folder.resolve("ducts.geojson"),
                collection(
                        duct("D-1", 3, 1, "[-30, 40], [-30, 40.001], [-29.9989, 40.001]"),
                        duct("D-2", 2, 1, "[-29.9989, 40.001], [-29.9979, 40.001]"),
                        duct("D-3", 0, 0, "[-29.9979, 40.001], [-29.9979, 40.0018]")));
        Files.writeString(
                folder.resolve("vaults.geojson"),
                collection(
                        vault("V-1", "-30, 40"),
                        vault("V-2", "-29.9989, 40.001"),
                        vault("V-3", "-29.9979, 40.001"),
                        vault("V-4", "-29.9979, 40.0018")));
        Files.writeString(
                folder.resolve("config.yaml"), """
                inputs:
                  routes:
                    file: '%1$s/ducts.geojson'
                    fields:
                      duct: duct_id
                      inside_diameter: {field: bore, unit: mm}
                      innerduct_count: innerducts
                      cable_count: cables
                      in_service: live
                  vaults:
                    file: '%1$s/vaults.geojson'
                    fields:
                      vault: vault_id
                """.formatted(folder.toString().replace('\\', '/')));
        CommandRun ranked = CommandRun.of(
                "rank",
                "--columns",
                "all",
                "--config",
                folder.resolve("config.yaml").toString(),
                "--output",
                run.toString());
        assertThat(ranked.exitCode()).as(ranked.err()).isZero();
    }

    /** The same figures as the run wrote, though calculated again; the chances are the recorded ones. */
    @Test
    void theExplanationAgreesWithTheRunsTable() throws IOException {
        for (Map<String, String> row : spans()) {
            JsonNode json = new ObjectMapper()
                    .readTree(explain(row.get("span_id"), "--json").out());

            assertThat(json.at("/length_m").asText()).isEqualTo(number(row.get("length_m")));
            assertThat(json.at("/bend_total_deg").asText()).isEqualTo(number(row.get("bend_total_deg")));
            assertThat(json.at("/pull/outcome").asText()).isEqualTo(row.get("pull_outcome"));
            assertThat(json.at("/score/total_points").asText()).isEqualTo(number(row.get("score_points")));
            assertThat(json.at("/rank").asText("")).isEqualTo(row.get("rank"));
            assertThat(json.at("/spans_ranked").asInt()).isEqualTo(2);
            assertThat(json.at("/pull/innerducts")).hasSize(Integer.parseInt(row.get("pull_count")));
            if (!row.get("rank").isEmpty()) {
                assertThat(json.at("/sureness/feasible_chance_percent").asText())
                        .isEqualTo(number(row.get("feasible_chance_pct")));
                assertThat(json.at("/sureness/top_chance_percent").asText())
                        .isEqualTo(number(row.get("top_chance_pct")));
            }
        }
    }

    @Test
    void theTextGoesToTheOutputAndProgressDoesNot() throws IOException {
        String spanId = spans().get(0).get("span_id");

        CommandRun explained = explain(spanId);

        assertThat(explained.exitCode()).isZero();
        assertThat(explained.out())
                .startsWith("Span " + spanId + "\n")
                .contains("Pulling: ", "Pull 1: ", "Out at A", "Out at B", "Score\n")
                .doesNotContain("read inputs");
        assertThat(explained.complaint()).isEmpty();
    }

    @Test
    void theSheetIsWrittenAndReplacedOnlyWhenAsked() throws IOException {
        String spanId = spans().get(0).get("span_id");
        Path sheet = folder.resolve("sheet.svg");

        assertThat(explain(spanId, "--svg", sheet.toString()).exitCode()).isZero();
        assertThat(Files.readString(sheet)).startsWith("<svg ").endsWith("</svg>\n");

        Files.writeString(sheet, "mine");
        CommandRun refused = explain(spanId, "--svg", sheet.toString());
        assertThat(refused.exitCode()).isEqualTo(ExitCode.OUTPUT);
        assertThat(refused.complaint())
                .isEqualTo("spanroom: " + sheet + ": exists. Choose another name, or replace it with --overwrite.\n");
        assertThat(refused.out()).isEmpty();
        CommandRun foreign = explain(spanId, "--svg", sheet.toString(), "--overwrite");
        assertThat(foreign.exitCode()).isEqualTo(ExitCode.OUTPUT);
        assertThat(foreign.complaint()).contains("is not a sheet that explain wrote, and is never replaced");
        assertThat(sheet).hasContent("mine");

        Files.delete(sheet);
        assertThat(explain(spanId, "--svg", sheet.toString()).exitCode()).isZero();
        assertThat(explain(spanId, "--svg", sheet.toString(), "--overwrite").exitCode())
                .isZero();
        assertThat(Files.readString(sheet)).startsWith("<svg ");
        byte[] record = Files.readAllBytes(run.resolve("run.json"));
        CommandRun inside = explain(spanId, "--svg", run.resolve("run.json").toString(), "--overwrite");
        assertThat(inside.exitCode()).isEqualTo(ExitCode.USAGE);
        assertThat(inside.complaint()).contains("is in the folder of the run");
        assertThat(run.resolve("run.json")).hasBinaryContent(record);
        try (var files = Files.list(folder)) {
            assertThat(files.filter(file -> file.getFileName().toString().contains("writing")))
                    .isEmpty();
        }
    }

    @Test
    void aWrongIdIsAnsweredWithTheNearestOnes() throws IOException {
        List<String> ids =
                spans().stream().map(row -> row.get("span_id")).sorted().toList();
        String wrong = ids.get(1).substring(0, ids.get(1).length() - 1) + "?";

        CommandRun explained = explain(wrong);

        assertThat(explained.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(explained.complaint())
                .startsWith("spanroom: " + run + ": no span of this run has the id '" + wrong + "'. The nearest are: "
                        + ids.get(1))
                .hasLineCount(1);
        assertThat(explained.out()).isEmpty();
    }

    @Test
    void aChangedInputIsRefused() throws IOException {
        String spanId = spans().get(0).get("span_id");
        Path file = folder.resolve("vaults.geojson");
        Files.writeString(file, Files.readString(file) + "\n");

        CommandRun explained = explain(spanId);

        assertThat(explained.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(explained.complaint())
                .startsWith("spanroom: " + file + ": it has changed since the run in " + run)
                .contains("make the run again")
                .hasLineCount(1);
    }

    @Test
    void aMissingInputIsRefused() throws IOException {
        String spanId = spans().get(0).get("span_id");
        Path file = folder.resolve("ducts.geojson");
        Files.delete(file);

        CommandRun explained = explain(spanId);

        assertThat(explained.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(explained.complaint())
                .startsWith("spanroom: " + file + ": the run in " + run + " read this file, and it is not there.")
                .hasLineCount(1);
    }

    /** A Shapefile is several files; its attributes lie in the .dbf, and a .cst would change how they are read. */
    @Test
    void thePartsOfAShapefileCountToo() throws IOException {
        for (String ending : List.of("shp", "shx", "dbf", "prj", "cpg")) {
            Files.copy(Path.of("sample-gis", "harbor." + ending), folder.resolve("harbor." + ending));
        }
        Path shapes = folder.resolve("run-2");
        CommandRun ranked = CommandRun.of(
                "rank",
                "--routes",
                folder.resolve("harbor.shp").toString(),
                "--vaults",
                Path.of("sample-gis", "harbor_vaults.shp").toString(),
                "--output",
                shapes.toString());
        assertThat(ranked.exitCode()).as(ranked.err()).isZero();
        Path table = folder.resolve("harbor.dbf");
        byte[] before = Files.readAllBytes(table);

        before[before.length - 2] ^= 1;
        Files.write(table, before);
        CommandRun changed = CommandRun.of("explain", "S-1", "--run", shapes.toString());
        before[before.length - 2] ^= 1;
        Files.write(table, before);
        Files.writeString(folder.resolve("harbor.cst"), "UTF-8");
        CommandRun added = CommandRun.of("explain", "S-1", "--run", shapes.toString());

        assertThat(changed.complaint()).startsWith("spanroom: " + table + ": it has changed since the run in ");
        assertThat(added.complaint())
                .startsWith("spanroom: " + folder.resolve("harbor.cst") + ": the run in " + shapes
                        + " did not read this file as it is.");
    }

    @Test
    void aFolderWithoutARunIsRefused() throws IOException {
        CommandRun none = CommandRun.of("explain", "S-1", "--run", folder.toString());
        Files.writeString(run.resolve("run.json"), "[1, 2");
        CommandRun broken = CommandRun.of("explain", "S-1", "--run", run.toString());
        Files.writeString(run.resolve("run.json"), "{\"inputs\": [{\"role\": \"routes\"}]}");
        CommandRun hollow = CommandRun.of("explain", "S-1", "--run", run.toString());

        assertThat(List.of(none.exitCode(), broken.exitCode(), hollow.exitCode()))
                .containsOnly(ExitCode.INPUT);
        assertThat(none.complaint())
                .isEqualTo(
                        "spanroom: " + folder + ": the folder holds no run (no run.json). Name the folder of a run.\n");
        assertThat(broken.complaint())
                .contains("it is not the record of a run (not JSON)")
                .hasLineCount(1);
        assertThat(hollow.complaint())
                .contains("inputs.file must be a text, and is missing")
                .hasLineCount(1);
    }

    @Test
    void theHelpFitsATerminalOfEightyColumns() {
        CommandRun help = CommandRun.of("explain", "--help");

        assertThat(help.exitCode()).isZero();
        assertThat(help.out().lines())
                .hasSizeGreaterThan(10)
                .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    }

    @Test
    void theSpanAndTheRunMustBeNamed() {
        assertThat(CommandRun.of("explain", "S-1").exitCode()).isEqualTo(ExitCode.USAGE);
        assertThat(CommandRun.of("explain", "--run", run.toString()).exitCode()).isEqualTo(ExitCode.USAGE);
    }

    private CommandRun explain(String spanId, String... more) {
        var args = new ArrayList<>(List.of("explain", spanId, "--run", run.toString()));
        args.addAll(List.of(more));
        return CommandRun.of(args.toArray(String[]::new));
    }

    private List<Map<String, String>> spans() throws IOException {
        try (var parser = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(Files.newBufferedReader(run.resolve("spans.csv")))) {
            List<Map<String, String>> rows =
                    parser.getRecords().stream().map(row -> row.toMap()).toList();
            assertThat(rows).hasSize(3);
            return rows;
        }
    }

    /** Returns a table's number as the JSON reader prints it. */
    private static String number(String cell) {
        return Double.toString(Double.parseDouble(cell));
    }

    private static String collection(String... features) {
        return "{\"type\":\"FeatureCollection\",\"features\":[\n" + String.join(",\n", features) + "\n]}\n";
    }

    private static String duct(String id, int innerducts, int cables, String line) {
        return """
                {"type":"Feature","properties":{"duct_id":"%s","bore":102.3,"innerducts":%d,"cables":%d,"live":"yes"},\
                "geometry":{"type":"LineString","coordinates":[%s]}}""".formatted(id, innerducts, cables, line);
    }

    private static String vault(String id, String place) {
        return """
                {"type":"Feature","properties":{"vault_id":"%s"},"geometry":{"type":"Point","coordinates":[%s]}}""".formatted(id, place);
    }
}
