package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Compares runs on the demo city. */
class CompareCommandTest {
    @TempDir
    static Path runs;

    private static Path first;
    private static Path stricter;

    @TempDir
    Path folder;

    /** A stricter pull leaves the room as it is, so that only the ease of each span may change. */
    @BeforeAll
    static void makeRuns() throws IOException {
        first = run("first", "");
        stricter = run("stricter", "pull:\n  judged_by: bad\n");
    }

    @Test
    void equalRunsHaveNoMoves() throws IOException {
        CommandRun compared = compare(first, "comparison");

        assertThat(compared.exitCode()).as(compared.err()).isZero();
        assertThat(compared.out())
                .contains("Both runs read the same files with the same config.")
                .contains("0 spans changed");
        assertThat(rows("comparison")).isEmpty();
    }

    @Test
    void theMovesAgreeWithBothRunsTables() throws IOException {
        CommandRun compared = compare(stricter, "comparison");

        assertThat(compared.out()).contains("config pull.judged_by: dry to bad");
        List<CSVRecord> moves = rows("comparison");
        assertThat(moves).isNotEmpty();
        Map<String, CSVRecord> before = spans(first);
        Map<String, CSVRecord> after = spans(stricter);
        for (CSVRecord move : moves) {
            CSVRecord was = before.get(move.get("span_id"));
            CSVRecord is = after.get(move.get("span_id"));
            assertThat(move.get("rank_before")).isEqualTo(was.get("rank"));
            assertThat(move.get("rank_after")).isEqualTo(is.get("rank"));
            assertThat(move.get("score_after_points")).isEqualTo(is.get("score_points"));
            assertThat(move.get("value_changes")).doesNotContain("new_cables:");
        }
        assertThat(moves).anySatisfy(move -> {
            assertThat(move.get("cause")).isEqualTo("score");
            assertThat(move.get("value_changes")).contains("pull_friction: dry to bad");
        });
    }

    @Test
    void aFolderThatIsNoComparisonIsNotReplaced() throws IOException {
        Path mine = Files.createDirectory(folder.resolve("mine"));
        Files.writeString(mine.resolve("notes.txt"), "mine");

        CommandRun refused = compare(first, "mine", "--overwrite");

        assertThat(refused.exitCode()).isEqualTo(ExitCode.OUTPUT);
        assertThat(mine.resolve("notes.txt")).hasContent("mine");
    }

    @Test
    void aFolderWithoutARunIsRefusedInOneLine() {
        CommandRun refused = compare(folder.resolve("nothing"), "comparison");

        assertThat(refused.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(refused.complaint()).contains("the folder holds no run").hasLineCount(1);
    }

    /** Of a layer of two files each may be another one, the first as the last. */
    @ParameterizedTest
    @ValueSource(strings = {"a", "b"})
    void anotherFileOfALayerIsNamed(String changed) throws IOException {
        var runs = new ArrayList<String>();
        for (String run : List.of("before", "after")) {
            Path inputs = Files.createDirectory(folder.resolve(run));
            for (String file : List.of("a", "b")) {
                String title = run.equals("after") && file.equals(changed) ? "other" : "same";
                String lat = file.equals("a") ? "40" : "40.01";
                Files.writeString(inputs.resolve(file + ".geojson"), """
                        {"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {"title": "%s"},
                        "geometry": {"type": "LineString", "coordinates": [[-30, %s], [-29.999, %s]]}}]}""".formatted(title, lat, lat));
            }
            Files.writeString(inputs.resolve("vaults.geojson"), """
                    {"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {},
                    "geometry": {"type": "MultiPoint", "coordinates": [[-30, 40], [-29.999, 40], [-30, 40.01], [-29.999, 40.01]]}}]}""");
            Path config = Files.writeString(
                    inputs.resolve("config.yaml"),
                    "inputs: {routes: {file: [a.geojson, b.geojson]}, vaults: {file: vaults.geojson}}\n");
            runs.add(folder.resolve(run + "-run").toString());
            CommandRun ranked =
                    CommandRun.of("rank", "--config", config.toString(), "--output", runs.get(runs.size() - 1));
            assertThat(ranked.exitCode()).as(ranked.err()).isZero();
        }

        CommandRun compared = CommandRun.of("compare", runs.get(0), runs.get(1), "--output", folder + "/moves");

        assertThat(compared.exitCode()).as(compared.err()).isZero();
        assertThat(compared.out()).contains("the runs read different files of routes");
    }

    private CommandRun compare(Path second, String output, String... more) {
        var words = new ArrayList<>(List.of(
                "compare",
                first.toString(),
                second.toString(),
                "--output",
                folder.resolve(output).toString()));
        words.addAll(List.of(more));
        return CommandRun.of(words.toArray(String[]::new));
    }

    /** Makes a run of the demo city with more lines of config. */
    private static Path run(String name, String lines) throws IOException {
        String demo = Files.readString(Path.of("sample-gis", "spanroom.yaml"))
                .replace("file: ", "file: " + Path.of("sample-gis").toAbsolutePath() + "/");
        Path config = runs.resolve(name + ".yaml");
        Files.writeString(config, demo + lines);
        Path run = runs.resolve(name);
        CommandRun ranked =
                CommandRun.of("rank", "--columns", "all", "--config", config.toString(), "--output", run.toString());
        assertThat(ranked.exitCode()).as(ranked.err()).isZero();
        return run;
    }

    private List<CSVRecord> rows(String comparison) throws IOException {
        return table(folder.resolve(comparison).resolve("moves.csv"));
    }

    private static Map<String, CSVRecord> spans(Path run) throws IOException {
        var byId = new TreeMap<String, CSVRecord>();
        table(run.resolve("spans.csv")).forEach(row -> byId.put(row.get("span_id"), row));
        return byId;
    }

    private static List<CSVRecord> table(Path file) throws IOException {
        var format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (var parser = format.parse(Files.newBufferedReader(file))) {
            return parser.getRecords();
        }
    }
}
