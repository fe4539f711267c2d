package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code rank --where} and {@code --within}: what they write is what the whole run writes of these spans, rank for rank. */
class SelectionTest {
    @TempDir
    static Path runs;

    @TempDir
    Path folder;

    private static Path config;
    private static Path whole;

    @BeforeAll
    static void makeWholeRun() {
        CommandRun.of(
                "sample",
                "--spans",
                "150",
                "--seed",
                "5",
                "--output",
                runs.resolve("city").toString());
        config = runs.resolve("city").resolve("spanroom.yaml");
        whole = runs.resolve("whole");
        assertThat(rank(whole).exitCode()).isZero();
    }

    private static CommandRun rank(Path output, String... options) {
        List<String> args = new ArrayList<>(List.of(
                "rank",
                "--columns",
                "all",
                "--formats",
                "geopackage,csv,geojson,shapefile",
                "--config",
                config.toString(),
                "--output",
                output.toString()));
        args.addAll(List.of(options));
        return CommandRun.of(args.toArray(String[]::new));
    }

    private CommandRun again(String... options) {
        List<String> args = new ArrayList<>(List.of(
                "rank",
                "--from",
                whole.toString(),
                "--scoring",
                "config/scoring.yaml",
                "--output",
                folder.resolve("run").toString()));
        args.addAll(List.of(options));
        return CommandRun.of(args.toArray(String[]::new));
    }

    private static List<CSVRecord> rows(Path run, String table) throws IOException {
        try (var parser = CSVParser.parse(
                run.resolve(table + ".csv"),
                StandardCharsets.UTF_8,
                CSVFormat.DEFAULT
                        .builder()
                        .setHeader()
                        .setSkipHeaderRecord(true)
                        .get())) {
            return parser.getRecords();
        }
    }

    private static List<List<String>> of(List<CSVRecord> rows, Set<String> ids) {
        return rows.stream()
                .filter(row -> ids.contains(row.get("span_id")))
                .map(CSVRecord::toList)
                .toList();
    }

    private static Set<String> ids(List<CSVRecord> rows) {
        var ids = new HashSet<String>();
        rows.forEach(row -> ids.add(row.get("span_id")));
        return ids;
    }

    private static void assertIsPartOfTheWhole(Path run, Set<String> expected, boolean checks) throws IOException {
        assertThat(ids(rows(run, "spans"))).isEqualTo(expected);
        for (String table :
                checks ? List.of("spans", "pulls", "permits", "field_checks") : List.of("pulls", "permits")) {
            assertThat(rows(run, table).stream().map(CSVRecord::toList).toList())
                    .as(table)
                    .isEqualTo(of(rows(whole, table), expected));
        }
        assertThat(Files.readString(run.resolve("findings.csv")))
                .isEqualTo(Files.readString(whole.resolve("findings.csv")));
        Map<String, String> sectionOf = new HashMap<>();
        rows(whole, "spans").forEach(row -> sectionOf.put(row.get("span_id"), row.get("section_id")));
        var sections = new HashSet<String>();
        expected.forEach(id -> sections.add(sectionOf.get(id)));
        assertThat(rows(run, "sections").stream().map(CSVRecord::toList).toList())
                .isEqualTo(rows(whole, "sections").stream()
                        .filter(row -> sections.contains(row.get("section_id")))
                        .map(CSVRecord::toList)
                        .toList());
        JsonNode record = new ObjectMapper().readTree(run.resolve("run.json").toFile());
        JsonNode all = new ObjectMapper().readTree(whole.resolve("run.json").toFile());
        assertThat(record.at("/filter/spans_kept").asInt()).isEqualTo(expected.size());
        assertThat(record.at("/filter/spans_left_out").asInt())
                .isEqualTo(rows(whole, "spans").size() - expected.size());
        assertThat(record.at("/spans_ranked")).as("counts are of the whole run").isEqualTo(all.at("/spans_ranked"));
        assertThat(record.at("/spans_excluded")).isEqualTo(all.at("/spans_excluded"));
        assertThat(all.has("filter")).isFalse();
    }

    @Test
    void aConditionKeepsTheRowsThatMeetItWithTheirRanks() throws IOException {
        var expected = new HashSet<String>();
        for (CSVRecord row : rows(whole, "spans")) {
            if (!row.get("rank").isEmpty()
                    && Integer.parseInt(row.get("rank")) % 2 == 0
                    && Double.parseDouble(row.get("length_m")) > 60) {
                expected.add(row.get("span_id"));
            }
        }
        assertThat(expected).isNotEmpty();
        Path run = folder.resolve("run");

        CommandRun rank = rank(run, "--where", "rank IS NOT NULL AND IEEEremainder(rank, 2) = 0 AND length_m > 60");

        assertThat(rank.exitCode()).as(rank.err()).isZero();
        assertThat(rank.out())
                .contains("Rows of " + expected.size() + " of "
                        + rows(whole, "spans").size() + " spans");
        assertIsPartOfTheWhole(run, expected, true);
    }

    @Test
    void aConditionGoesWithAnotherScoringToo() throws IOException {
        var expected = new HashSet<String>();
        rows(whole, "spans").forEach(row -> {
            if (row.get("exclusion").equals("blocked") || row.get("rank").equals("3")) {
                expected.add(row.get("span_id"));
            }
        });

        CommandRun rank = again("--where", "exclusion = 'blocked' OR rank = 3");

        assertThat(rank.exitCode()).as(rank.err()).isZero();
        assertThat(ids(rows(folder.resolve("run"), "spans"))).isEqualTo(expected);
        assertThat(rows(folder.resolve("run"), "pulls").stream()
                        .map(CSVRecord::toList)
                        .toList())
                .isEqualTo(of(rows(whole, "pulls"), expected));
    }

    /** Membership is judged by places every 5 cm along each line, of the layer that the whole run wrote. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void areasKeepTheSpansThatTouchThem(boolean hole) throws IOException {
        JsonNode spans = new ObjectMapper()
                .readTree(whole.resolve("spans.geojson").toFile())
                .path("features");
        double[] box = middleOf(spans);
        Path areas = Files.writeString(folder.resolve("areas.geojson"), polygon(box, hole));
        var inside = new HashSet<String>();
        for (JsonNode span : spans) {
            if (touches(span.at("/geometry/coordinates"), box, hole)) {
                inside.add(span.at("/properties/span_id").asText());
            }
        }
        assertThat(inside.size()).isBetween(1, spans.size() - 1);

        CommandRun rank = rank(folder.resolve("run"), "--within", areas.toString());
        CommandRun rescored = CommandRun.of(
                "rank",
                "--from",
                whole.toString(),
                "--scoring",
                "config/scoring.yaml",
                "--within",
                areas.toString(),
                "--output",
                folder.resolve("again").toString());

        assertThat(rank.exitCode()).as(rank.err()).isZero();
        assertIsPartOfTheWhole(folder.resolve("run"), inside, true);
        assertThat(rescored.exitCode()).as(rescored.err()).isZero();
        assertIsPartOfTheWhole(folder.resolve("again"), inside, false);
        JsonNode record = new ObjectMapper()
                .readTree(folder.resolve("run").resolve("run.json").toFile());
        assertThat(record.at("/filter/within").asText()).isEqualTo(areas.toString());
        assertThat(record.at("/filter/within_sha256").asText()).hasSize(64);
    }

    private static double[] middleOf(JsonNode spans) {
        double[] box = {180, 90, -180, -90};
        for (JsonNode span : spans) {
            for (JsonNode place : span.at("/geometry/coordinates")) {
                box[0] = Math.min(box[0], place.get(0).asDouble());
                box[1] = Math.min(box[1], place.get(1).asDouble());
                box[2] = Math.max(box[2], place.get(0).asDouble());
                box[3] = Math.max(box[3], place.get(1).asDouble());
            }
        }
        double x = (box[2] - box[0]) / 4;
        double y = (box[3] - box[1]) / 4;
        return new double[] {box[0] + x, box[1] + y, box[2] - x, box[3] - y};
    }

    /** The hole takes the middle third of the box. */
    private static double[] holeOf(double[] box) {
        double x = (box[2] - box[0]) / 3;
        double y = (box[3] - box[1]) / 3;
        return new double[] {box[0] + x, box[1] + y, box[2] - x, box[3] - y};
    }

    private static String ring(double[] box) {
        return String.format(
                Locale.ROOT,
                "[[%1$.9f,%2$.9f],[%3$.9f,%2$.9f],[%3$.9f,%4$.9f],[%1$.9f,%4$.9f],[%1$.9f,%2$.9f]]",
                box[0],
                box[1],
                box[2],
                box[3]);
    }

    private static String polygon(double[] box, boolean hole) {
        return "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":{},\"geometry\":"
                + "{\"type\":\"Polygon\",\"coordinates\":[" + ring(box) + (hole ? "," + ring(holeOf(box)) : "")
                + "]}}]}";
    }

    private static boolean touches(JsonNode line, double[] box, boolean hole) {
        for (int i = 0; i + 1 < line.size(); i++) {
            double x = line.get(i).get(0).asDouble();
            double y = line.get(i).get(1).asDouble();
            double dx = line.get(i + 1).get(0).asDouble() - x;
            double dy = line.get(i + 1).get(1).asDouble() - y;
            int steps = (int) Math.ceil(Math.hypot(dx, dy) * 111_000 / 0.05) + 1;
            for (int step = 0; step <= steps; step++) {
                double px = x + dx * step / steps;
                double py = y + dy * step / steps;
                if (isIn(box, px, py) && !(hole && isIn(holeOf(box), px, py))) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean isIn(double[] box, double x, double y) {
        return x >= box[0] && x <= box[2] && y >= box[1] && y <= box[3];
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "rnak <= 20|did you mean 'rank'?",
                "lenght_m > 3|did you mean 'length_m'?",
                "rank <= 'many'|column rank holds numbers",
                "rank <=|cannot be read"
            })
    void aWrongConditionEndsBeforeAnythingIsReadOrWritten(String where, String message) {
        CommandRun rank = rank(folder.resolve("run"), "--where", where);
        CommandRun rescored = again("--where", where);

        for (CommandRun run : List.of(rank, rescored)) {
            assertThat(run.exitCode()).isEqualTo(2);
            assertThat(run.err()).contains(message).doesNotContain("\tat ");
            assertThat(folder.resolve("run")).doesNotExist();
        }
        assertThat(rank.err()).doesNotContain("read inputs");
    }

    @Test
    void areasThatCannotBeUsedAreRefusedByName() throws IOException {
        String point = "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":{},"
                + "\"geometry\":{\"type\":\"Point\",\"coordinates\":[1,2]}}]}";
        Path points = Files.writeString(folder.resolve("points.geojson"), point);
        Path empty =
                Files.writeString(folder.resolve("empty.geojson"), "{\"type\":\"FeatureCollection\",\"features\":[]}");

        for (Path file : List.of(points, empty, folder.resolve("missing.geojson"))) {
            CommandRun rank = rank(folder.resolve("run"), "--within", file.toString());

            assertThat(rank.exitCode()).isEqualTo(3);
            assertThat(rank.complaint()).contains(file.getFileName().toString());
            assertThat(folder.resolve("run")).doesNotExist();
        }
    }

    @Test
    void nothingKeptIsWrittenAsNothing() throws IOException {
        CommandRun rank = rank(folder.resolve("run"), "--where", "length_m > 1000000");

        assertThat(rank.exitCode()).as(rank.err()).isZero();
        assertThat(rank.out()).contains("Rows of 0 of");
        assertIsPartOfTheWhole(folder.resolve("run"), Set.of(), true);
    }

    @Test
    void aRunOfWhichOnlyAPartIsWrittenIsNotRankedAgain() {
        Path part = folder.resolve("part");
        rank(part, "--where", "rank <= 5");

        CommandRun rank = CommandRun.of(
                "rank",
                "--from",
                part.toString(),
                "--scoring",
                "config/scoring.yaml",
                "--output",
                folder.resolve("run").toString());

        assertThat(rank.exitCode()).isEqualTo(3);
        assertThat(rank.err()).contains("the run wrote some of its spans only");
    }
}
