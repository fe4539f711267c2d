package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Fields of the owner's that no term stands for go through a run as they are, and sums are made by them. */
class KeptFieldsTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    /** Values as real layers have them: missing, blank, numbers, flags, quotes, separators, other alphabets. */
    private static final Object[] STREETS = {
        "Mill Lane", "O'Hara \"Row\", north", null, "", "Straße 5; Hof", 17, 2.5, true, "улица Мира", "=SUM(A1)"
    };

    @TempDir
    static Path runs;

    @TempDir
    Path folder;

    private static Path config;
    private static Path whole;

    /** The recorded values by the name of the route; routes whose name occurs twice are left out. */
    private static final Map<String, String> RECORDED = new HashMap<>();

    @BeforeAll
    static void makeRun() throws IOException {
        Path city = runs.resolve("city");
        CommandRun.of("sample", "--spans", "200", "--seed", "8", "--output", city.toString());
        Path ducts = city.resolve("ducts.geojson");
        JsonNode layer = JSON.readTree(ducts.toFile());
        Set<String> twice = new HashSet<>();
        int number = 0;
        for (JsonNode feature : layer.path("features")) {
            ObjectNode properties = (ObjectNode) feature.path("properties");
            Object street = STREETS[number++ % STREETS.length];
            properties.set("Street", JSON.valueToTree(street));
            properties.put("street no", number % 3);
            String route = properties.path("route_id").asText();
            String text = street == null ? "" : street.toString();
            if (RECORDED.put(route, text) != null) {
                twice.add(route);
            }
        }
        twice.forEach(RECORDED::remove);
        JSON.writeValue(ducts.toFile(), layer);
        config = city.resolve("spanroom.yaml");
        String text = Files.readString(config);
        Files.writeString(config, text.replaceFirst("(?m)^  routes:$", "  routes:\n    keep: [Street, \"street no\"]"));
        whole = runs.resolve("whole");
        CommandRun rank = CommandRun.of(
                "rank",
                "--columns",
                "all",
                "--formats",
                "geopackage,csv,geojson,shapefile",
                "--config",
                config.toString(),
                "--output",
                whole.toString());
        assertThat(rank.exitCode()).as(rank.err()).isZero();
        assertThat(rank.out()).contains("Ranked spans by Street, the 5 of ", "(not recorded)");
    }

    private static List<CSVRecord> spans(Path run) throws IOException {
        try (var parser = CSVParser.parse(
                run.resolve("spans.csv"),
                StandardCharsets.UTF_8,
                CSVFormat.DEFAULT
                        .builder()
                        .setHeader()
                        .setSkipHeaderRecord(true)
                        .get())) {
            return parser.getRecords();
        }
    }

    @Test
    void aSpanHasTheDistinctValuesOfItsRoutes() throws IOException {
        int compared = 0;
        for (CSVRecord span : spans(whole)) {
            var expected = new LinkedHashSet<String>();
            List<String> routes = List.of(span.get("routes").split(";", -1));
            if (RECORDED.keySet().containsAll(routes)) {
                routes.forEach(route -> expected.add(RECORDED.get(route)));
                expected.remove("");
                compared += expected.size() > 1 ? 1 : 0;
                // a CSV cell that a spreadsheet would take for a formula begins with an apostrophe
                assertThat(span.get("src_street").replaceAll("(?<=^|;)'(?==)", ""))
                        .isEqualTo(String.join(";", expected));
            }
        }
        assertThat(compared).as("spans of several routes with several values").isPositive();
        assertThat(spans(whole)).extracting(span -> span.get("src_street_no")).contains("0", "1", "2");
    }

    @Test
    void sumsByValueAreThoseOfTheRows() throws IOException {
        JsonNode run = JSON.readTree(whole.resolve("run.json").toFile());
        Map<String, double[]> expected = new TreeMap<>();
        JsonNode layer = JSON.readTree(whole.resolve("spans.geojson").toFile());
        for (JsonNode span : layer.path("features")) {
            JsonNode row = span.path("properties");
            if (!row.path("rank").isNull()) {
                double[] sum = expected.computeIfAbsent(row.path("src_street").asText(""), any -> new double[3]);
                sum[0]++;
                sum[1] += row.path("positions_gained").asInt();
                sum[2] += row.path("length_m").asDouble();
            }
        }
        JsonNode values = run.at("/kept_fields/Street/values");

        assertThat(values).hasSize(expected.size());
        int before = Integer.MAX_VALUE;
        for (JsonNode value : values) {
            String name = value.path("value").asText();
            double[] sum = expected.getOrDefault(name.equals("null") ? "" : name, new double[3]);
            assertThat(value.path("spans_ranked").asInt()).as(name).isEqualTo((int) sum[0]);
            assertThat(value.path("positions_gained").asInt())
                    .isEqualTo((int) sum[1])
                    .isLessThanOrEqualTo(before);
            assertThat(value.path("length_m").asDouble()).isCloseTo(sum[2], within(0.001 * (1 + sum[0])));
            before = value.path("positions_gained").asInt();
        }
        assertThat(run.at("/kept_fields/Street/others/spans_ranked").asInt()).isZero();
    }

    @Test
    void anotherScoringAndAConditionKnowThemToo() throws IOException {
        CommandRun again = CommandRun.of(
                "rank",
                "--from",
                whole.toString(),
                "--scoring",
                "config/scoring.yaml",
                "--output",
                folder.resolve("again").toString(),
                "--where",
                "src_street = 'Mill Lane'");

        assertThat(again.exitCode()).as(again.err()).isZero();
        List<List<String>> expected = spans(whole).stream()
                .filter(span -> span.get("src_street").equals("Mill Lane"))
                .map(span -> List.of(span.get("span_id"), span.get("src_street"), span.get("src_street_no")))
                .toList();
        assertThat(expected).isNotEmpty();
        assertThat(spans(folder.resolve("again")).stream()
                        .map(span -> List.of(span.get("span_id"), span.get("src_street"), span.get("src_street_no"))))
                .isEqualTo(expected);
        JsonNode before = JSON.readTree(whole.resolve("run.json").toFile()).at("/kept_fields/Street/values");
        JsonNode now = JSON.readTree(folder.resolve("again").resolve("run.json").toFile())
                .at("/kept_fields/Street/values");
        assertThat(now.findValuesAsText("value")).isEqualTo(before.findValuesAsText("value"));
        assertThat(now.findValuesAsText("positions_gained")).isEqualTo(before.findValuesAsText("positions_gained"));
        assertThat(now.findValuesAsText("spans_ranked")).isEqualTo(before.findValuesAsText("spans_ranked"));
    }

    @Test
    void aFieldThatTheLayerHasNotEndsTheRun() throws IOException {
        Path other = Files.writeString(
                config.resolveSibling("other.yaml"),
                Files.readString(config).replace("keep: [Street, \"street no\"]", "keep: [Stret]"));

        CommandRun check = CommandRun.of("check", "--config", other.toString());

        assertThat(check.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(check.err())
                .contains("it has no field 'Stret' (mapped to keep); did you mean 'Street'?")
                .contains("Correct inputs.routes.keep, or remove");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "keep: [a, a]|keep names a field twice",
                "keep: ['']|keep names a field without a name",
                "keep: [a,b,c,d,e,f,g,h,i,j,k,l,m,n,o,p,q,r,s,t,u]|the maximum is 20"
            })
    void aListThatCannotBeKeptIsRefused(String keep, String message) throws IOException {
        Path other = Files.writeString(
                config.resolveSibling("other.yaml"),
                Files.readString(config).replace("keep: [Street, \"street no\"]", keep));

        CommandRun check = CommandRun.of("check", "--config", other.toString());

        assertThat(check.exitCode()).isEqualTo(3);
        assertThat(check.err()).contains(message);
    }

    @Test
    void fieldsAreKeptOfRoutesOnly() throws IOException {
        Path other = Files.writeString(
                config.resolveSibling("other.yaml"),
                Files.readString(config).replaceFirst("(?m)^  vaults:$", "  vaults:\n    keep: [Street]"));

        CommandRun check = CommandRun.of("check", "--config", other.toString());

        assertThat(check.exitCode()).isEqualTo(3);
        assertThat(check.err()).contains("fields are kept of routes only");
    }
}
