package org.spanroom.cli;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toList;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.testing.ExternalTool;

/** The sections of the demo city, with banks taken away from some ducts, against its table of spans. */
class SectionsTest {
    private static final Path CONFIG = Path.of("sample-gis", "spanroom.yaml");
    private static final Path ROUTES = Path.of("sample-gis", "ducts.geojson");
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Pattern LISTED = Pattern.compile("^ +(\\d+) .* ( {3}|\\+\\d+) {2}(\\S+)$", Pattern.MULTILINE);

    @TempDir
    static Path runs;

    private static String printed;

    @BeforeAll
    static void rankDemo() throws IOException {
        Files.writeString(runs.resolve("routes.geojson"), JSON.writeValueAsString(withoutSomeBanks()));
        printed = rank("first", "routes.geojson", "--threads", "1");
    }

    /** About every ninth duct loses its bank, on all its routes. */
    private static ObjectNode withoutSomeBanks() throws IOException {
        var layer = (ObjectNode) JSON.readTree(ROUTES.toFile());
        for (JsonNode route : layer.path("features")) {
            if (Math.floorMod(route.at("/properties/duct_id").asText().hashCode(), 9) == 0) {
                ((ObjectNode) route.path("properties")).putNull("bank_id");
            }
        }
        return layer;
    }

    @Test
    void everySpanIsInOneSectionOfItsBankAndVaults() throws IOException {
        List<CSVRecord> sections = csv("first", "sections.csv");
        Map<String, List<CSVRecord>> spans = spansBySection("first");

        assertThat(sections).extracting(row -> row.get("section_id")).doesNotHaveDuplicates();
        assertThat(spans.keySet())
                .isEqualTo(new HashSet<>(
                        sections.stream().map(row -> row.get("section_id")).toList()));
        for (CSVRecord section : sections) {
            assertThat(spans.get(section.get("section_id"))).isNotEmpty().allSatisfy(span -> {
                assertThat(span.get("duct_bank")).isEqualTo(section.get("bank_id"));
                assertThat(List.of(section.get("vault_a"), section.get("vault_b")))
                        .containsExactlyInAnyOrder(span.get("vault_a"), span.get("vault_b"));
            });
        }
        // The other way round: no two sections have the same bank and vaults.
        assertThat(sections)
                .filteredOn(row -> !row.get("bank_id").isEmpty())
                .extracting(row ->
                        List.of(row.get("bank_id"), new TreeSet<>(List.of(row.get("vault_a"), row.get("vault_b")))))
                .hasSizeGreaterThan(300)
                .doesNotHaveDuplicates();
    }

    @Test
    void aDuctWithoutABankIsASectionOfItsOwn() throws IOException {
        Map<String, List<CSVRecord>> spans = spansBySection("first");

        assertThat(csv("first", "sections.csv"))
                .filteredOn(row -> row.get("bank_id").isEmpty())
                .hasSizeGreaterThan(100)
                .allSatisfy(section -> {
                    assertThat(spans.get(section.get("section_id")))
                            .extracting(row -> row.get("duct"))
                            .containsOnly(ductOf(section.get("section_id")));
                    assertThat(section.get("section_id")).startsWith(":");
                });
    }

    /** What stands between the first two colons. */
    private static String ductOf(String sectionId) {
        return sectionId.substring(1, sectionId.indexOf(':', 1));
    }

    @Test
    void countsAndSumsAreThoseOfTheSpans() throws IOException {
        Map<String, List<CSVRecord>> spans = spansBySection("first");
        for (CSVRecord section : csv("first", "sections.csv")) {
            List<CSVRecord> its = spans.get(section.get("section_id"));
            List<CSVRecord> ranked = its.stream().filter(SectionsTest::isRanked).toList();

            assertThat(section.get("spans")).isEqualTo("" + its.size());
            assertThat(section.get("spans_ranked")).isEqualTo("" + ranked.size());
            assertThat(section.get("spans_excluded")).isEqualTo("" + (its.size() - ranked.size()));
            assertThat(section.get("spans_spare"))
                    .isEqualTo("" + its.stream().filter(SectionsTest::isSpare).count());
            assertThat(section.get("positions_now")).isEqualTo(sum(its, "positions_now"));
            List<CSVRecord> excluded =
                    its.stream().filter(row -> !isRanked(row)).toList();
            assertThat(section.get("positions_after"))
                    .isEqualTo(""
                            + (Long.parseLong(sum(ranked, "positions_after"))
                                    + Long.parseLong(sum(excluded, "positions_now"))));
            assertThat(section.get("positions_gained"))
                    .isEqualTo(""
                            + (Long.parseLong(section.get("positions_after"))
                                    - Long.parseLong(section.get("positions_now"))));
            assertThat(section.get("positions_gained")).isEqualTo(sum(ranked, "positions_gained"));
        }
    }

    /** One rule says what lies side by side: a gate that closes on an empty duct in the bank names one of the section. */
    @Test
    void whereASpareDuctExcludesASpanItIsOfTheSameSection() throws IOException {
        Map<String, List<CSVRecord>> spans = spansBySection("first");
        int excluded = 0;
        for (List<CSVRecord> section : spans.values()) {
            boolean hasSpare = section.stream().anyMatch(SectionsTest::isSpare);
            for (CSVRecord span : section) {
                boolean closed = span.get("exclusion_text").contains("sound empty duct available in the same bank");
                excluded += closed ? 1 : 0;
                assertThat(hasSpare || !closed).as(span.get("span_id")).isTrue();
            }
        }
        assertThat(excluded).isPositive();
    }

    @Test
    void theBestSpanStandsForItsSection() throws IOException {
        Map<String, List<CSVRecord>> spans = spansBySection("first");
        for (CSVRecord section : csv("first", "sections.csv")) {
            CSVRecord first = spans.get(section.get("section_id")).get(0);
            boolean ranked = !first.get("rank").isEmpty();

            assertThat(section.get("vault_a")).isEqualTo(first.get("vault_a"));
            assertThat(section.get("vault_b")).isEqualTo(first.get("vault_b"));
            assertThat(section.get("best_span")).isEqualTo(ranked ? first.get("span_id") : "");
            assertThat(section.get("best_rank")).isEqualTo(first.get("rank"));
            assertThat(section.get("best_score_points")).isEqualTo(ranked ? first.get("score_points") : "");
            assertThat(section.get("best_length_m")).isEqualTo(ranked ? first.get("length_m") : "");
            assertThat(section.get("best_cautions"))
                    .isEqualTo(ranked ? "" + keys(first.get("cautions")).size() : "");
        }
    }

    @Test
    void theBestSectionsAreFirstAndThoseWithoutARankByName() throws IOException {
        List<CSVRecord> sections = csv("first", "sections.csv");
        List<CSVRecord> ranked =
                sections.stream().filter(row -> !row.get("best_rank").isEmpty()).toList();
        List<CSVRecord> others = sections.subList(ranked.size(), sections.size());

        assertThat(ranked).hasSizeGreaterThan(100);
        assertThat(ranked)
                .extracting(row -> Integer.parseInt(row.get("best_rank")))
                .isSorted();
        for (int i = 0; i < ranked.size(); i++) {
            assertThat(ranked.get(i).get("section_rank")).isEqualTo("" + (i + 1));
        }
        assertThat(others).isNotEmpty().allMatch(row -> row.get("section_rank").isEmpty());
        assertThat(others).extracting(row -> row.get("section_id")).isSorted();
    }

    @Test
    void neitherThreadsNorTheOrderOfRoutesMatter() throws IOException {
        Files.writeString(runs.resolve("shuffled.geojson"), JSON.writeValueAsString(shuffled()));
        rank("threads", "routes.geojson", "--threads", "3");
        rank("shuffled", "shuffled.geojson", "--threads", "2");

        for (String run : List.of("threads", "shuffled")) {
            assertThat(runs.resolve(run).resolve("sections.csv"))
                    .hasSameBinaryContentAs(runs.resolve("first").resolve("sections.csv"));
        }
    }

    private static ObjectNode shuffled() throws IOException {
        var layer = (ObjectNode) JSON.readTree(runs.resolve("routes.geojson").toFile());
        var features = new ArrayList<JsonNode>();
        layer.path("features").forEach(features::add);
        // Routes of the same id are distinguished by their order.
        Map<String, List<JsonNode>> byId = features.stream()
                .collect(groupingBy(route -> route.at("/properties/route_id").asText(), LinkedHashMap::new, toList()));
        var ids = new ArrayList<>(byId.keySet());
        Collections.shuffle(ids, new Random(5));
        ArrayNode mixed = layer.putArray("features");
        ids.forEach(id -> mixed.addAll(byId.get(id)));
        return layer;
    }

    /** What recovery gains hangs on the pull, which is another one from the other end; what is there now does not. */
    @Test
    void theWayThatRoutesAreDrawnDoesNotMatter() throws IOException {
        Files.writeString(runs.resolve("turned.geojson"), JSON.writeValueAsString(turned()));
        rank("turned", "turned.geojson");

        var others = new TreeSet<>(standing("turned"));
        others.removeAll(standing("first"));
        assertThat(others).isEmpty();
        assertThat(standing("turned")).hasSameSizeAs(standing("first"));
        assertThat(csv("turned", "spans.csv"))
                .extracting(row -> row.get("span_id"))
                .isNotEqualTo(csv("first", "spans.csv").stream()
                        .map(row -> row.get("span_id"))
                        .toList());
    }

    private static ObjectNode turned() throws IOException {
        var layer = (ObjectNode) JSON.readTree(runs.resolve("routes.geojson").toFile());
        int number = 0;
        for (JsonNode route : layer.path("features")) {
            if (number++ % 2 == 0 && route.at("/geometry/type").asText().equals("LineString")) {
                var vertices = new ArrayList<JsonNode>();
                route.at("/geometry/coordinates").forEach(vertices::add);
                Collections.reverse(vertices);
                ((ObjectNode) route.path("geometry")).putArray("coordinates").addAll(vertices);
            }
        }
        return layer;
    }

    private static Set<String> standing(String run) throws IOException {
        var rows = new TreeSet<String>();
        csv(run, "sections.csv")
                .forEach(row -> rows.add(String.join(
                        " ",
                        row.get("section_id"),
                        row.get("spans"),
                        row.get("spans_spare"),
                        row.get("positions_now"))));
        return rows;
    }

    /** GDAL reads every format; names in a Shapefile are the short ones, in the same order. */
    @ParameterizedTest
    @ValueSource(strings = {"spanroom.gpkg", "sections.geojson", "sections.shp"})
    void everyFormatHasTheSameRows(String file) throws IOException {
        String text = ExternalTool.named("ogr2ogr")
                .run(
                        "-f",
                        "CSV",
                        "/vsistdout/",
                        runs.resolve("first").resolve(file),
                        "sections",
                        "-lco",
                        "GEOMETRY=AS_WKT");
        List<CSVRecord> back = parsed(text);
        List<CSVRecord> expected = csv("first", "sections.csv");
        Map<String, String> lines = lines();

        assertThat(back).hasSameSizeAs(expected);
        for (int i = 0; i < back.size(); i++) {
            CSVRecord row = back.get(i);
            assertThat(cells(row, 1)).isEqualTo(cells(expected.get(i), 0));
            String best = expected.get(i).get("best_span");
            assertThat(plane(row)).startsWith("LINESTRING (").isEqualTo(lines.getOrDefault(best, plane(row)));
        }
    }

    /** The lines of the spans, as GDAL reads them. */
    private static Map<String, String> lines() throws IOException {
        String text = ExternalTool.named("ogr2ogr")
                .run(
                        "-f",
                        "CSV",
                        "/vsistdout/",
                        runs.resolve("first").resolve("spanroom.gpkg"),
                        "spans",
                        "-select",
                        "span_id",
                        "-lco",
                        "GEOMETRY=AS_WKT");
        Map<String, String> lines = new HashMap<>();
        parsed(text).forEach(row -> lines.put(row.get("span_id"), plane(row)));
        return lines;
    }

    /** A line without elevations, which a Shapefile gives to all of its lines. */
    private static String plane(CSVRecord row) {
        return row.get("WKT")
                .replace("LINESTRING Z", "LINESTRING")
                .replaceAll("([-\\d.]+ [-\\d.]+) [-\\d.]+(?=[,)])", "$1");
    }

    /** Numbers as numbers: GDAL writes 91.9 for 91.90. */
    private static List<Object> cells(CSVRecord row, int from) {
        return row.stream().skip(from).map(SectionsTest::cell).toList();
    }

    private static Object cell(String text) {
        return text.matches("-?\\d+(\\.\\d+)?") ? (Object) Double.valueOf(text) : text;
    }

    @Test
    void theRecordCountsThem() throws IOException {
        JsonNode run = JSON.readTree(runs.resolve("first").resolve("run.json").toFile());

        assertThat(run.path("sections").asInt())
                .isEqualTo(csv("first", "sections.csv").size());
    }

    /** The printed list: distinct sections, the best first, each by its best span, with the ranked spans beside it. */
    @Test
    void thePrintedListShowsOneSpanOfASection() throws IOException {
        List<CSVRecord> sections = csv("first", "sections.csv");
        long ranked =
                sections.stream().filter(row -> !row.get("best_rank").isEmpty()).count();
        String list = printed.substring(printed.indexOf("The best of"));
        Matcher listed = LISTED.matcher(list.substring(0, list.indexOf("\n\n")));

        assertThat(list).startsWith("The best of " + ranked + " sections");
        for (int i = 0; i < 5; i++) {
            CSVRecord section = sections.get(i);
            int others = Integer.parseInt(section.get("spans_ranked")) - 1;
            assertThat(listed.find()).isTrue();
            assertThat(listed.group(1)).isEqualTo(section.get("best_rank"));
            assertThat(listed.group(2).trim()).isEqualTo(others == 0 ? "" : "+" + others);
            assertThat(listed.group(3)).isEqualTo(section.get("best_span"));
        }
        assertThat(listed.find()).isFalse();
    }

    private static boolean isRanked(CSVRecord row) {
        return !row.get("rank").isEmpty();
    }

    private static boolean isSpare(CSVRecord row) {
        return row.get("spare").equals("true");
    }

    private static String sum(List<CSVRecord> rows, String column) {
        return String.valueOf(rows.stream()
                .filter(row -> !row.get(column).isEmpty()) // unknown contents
                .mapToInt(row -> Integer.parseInt(row.get(column)))
                .sum());
    }

    private static List<String> keys(String joined) {
        return joined.isEmpty() ? List.of() : Arrays.asList(joined.split(";"));
    }

    /** The spans of each section in their order. */
    private static Map<String, List<CSVRecord>> spansBySection(String run) throws IOException {
        return csv(run, "spans.csv").stream().collect(groupingBy(row -> row.get("section_id")));
    }

    private static List<CSVRecord> csv(String run, String file) throws IOException {
        return parsed(Files.readString(runs.resolve(run).resolve(file)));
    }

    private static List<CSVRecord> parsed(String text) throws IOException {
        try (CSVParser parser = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new StringReader(text))) {
            return parser.getRecords();
        }
    }

    private static String rank(String run, String routes, String... more) {
        var words = new ArrayList<>(List.of(
                "rank",
                "--columns",
                "all",
                "--formats",
                "geopackage,csv,geojson,shapefile",
                "--config",
                CONFIG.toString(),
                "--routes",
                runs.resolve(routes).toString(),
                "--no-uncertainty",
                "--output",
                runs.resolve(run).toString()));
        words.addAll(List.of(more));
        CommandRun ranked = CommandRun.of(words.toArray(String[]::new));
        assertThat(ranked.exitCode()).as(ranked.err()).isZero();
        return ranked.out();
    }
}
