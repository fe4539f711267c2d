package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.testing.OpenData;

/** A town that records nothing of what lies in its ducts, from its files to a next step: nothing assumed, all assumed, and some recorded. */
class LittleRecordedTest {
    @TempDir
    static Path runs;

    private static CommandRun bare = new CommandRun(-1, "", "");
    private static CommandRun assumed = bare;

    @BeforeAll
    static void makeRuns() throws IOException {
        Path routes = Path.of("sample-gis", "oldtown.geojson").toAbsolutePath();
        Path vaults = Path.of("sample-gis", "oldtown_vaults.geojson").toAbsolutePath();
        String fields = fields(routes, vaults);
        bare = rank("bare", fields);
        assumed = rank("assumed", fields + pasted(bare.out()));
        Path some = runs.resolve("some.geojson");
        Files.writeString(some, withSomeRecorded(Files.readString(routes)));
        CommandRun mixed = rank("mixed", fields(some, vaults) + pasted(bare.out()));
        assertThat(mixed.exitCode()).as(mixed.err()).isZero();
    }

    private static String fields(Path routes, Path vaults) {
        return CommandRun.of("check", "--fields", "--routes", routes.toString(), "--vaults", vaults.toString())
                .out();
    }

    /** Every third conduit has two innerducts and two cables, another has cables only. */
    private static String withSomeRecorded(String routes) {
        var lines = new ArrayList<String>();
        for (String line : routes.split("\n", -1)) {
            String counts = lines.size() % 3 == 0 ? "\"innerducts\":2,\"cables\":2" : "\"cables\":1";
            lines.add(
                    lines.size() % 3 == 1
                            ? line
                            : line.replaceFirst("\"properties\":\\{", "\"properties\":{" + counts + ","));
        }
        return String.join("\n", lines);
    }

    private static CommandRun rank(String name, String config, String... options) throws IOException {
        Path file = Files.writeString(runs.resolve(name + ".yaml"), config);
        var args = new ArrayList<>(List.of(
                "rank",
                "--columns",
                "all",
                "--config",
                file.toString(),
                "--output",
                runs.resolve(name).toString()));
        args.addAll(List.of(options));
        return CommandRun.of(args.toArray(String[]::new));
    }

    /** Returns the lines that the screen says to paste. */
    private static String pasted(String out) {
        List<String> lines = out.lines().toList();
        int head = lines.indexOf("To see the results for typical contents, add these lines to your config:");
        assertThat(head).as(out).isPositive();
        return lines.subList(head + 1, lines.size()).stream()
                .takeWhile(line -> line.startsWith("    "))
                .map(line -> line.substring(4))
                .collect(Collectors.joining("\n", "", "\n"));
    }

    private static List<CSVRecord> table(String run, String file) throws IOException {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (CSVParser parser =
                CSVParser.parse(runs.resolve(run).resolve(file), java.nio.charset.StandardCharsets.UTF_8, format)) {
            return parser.getRecords();
        }
    }

    private static JsonNode contents(String run) throws IOException {
        return new ObjectMapper()
                .readTree(runs.resolve(run).resolve("run.json").toFile())
                .path("contents");
    }

    @Test
    void withoutContentsTheRunSaysWhatIsMissingAndWhatToAssume() throws IOException {
        int spans = table("bare", "spans.csv").size();

        assertThat(bare.exitCode()).isZero();
        assertThat(bare.out())
                .contains("0 of " + spans + " spans are candidates")
                .contains("The contents of the ducts are not recorded for " + spans + " of " + spans + " spans. "
                        + "Missing:")
                .contains("\n  innerduct_count: no field is mapped to it; no value is assumed\n")
                .contains("\n  cable_count: no field is mapped to it; no value is assumed\n")
                .containsPattern(
                        "\n  inside_diameter: the field 'diam_in' has no usable value in \\d+ of \\d+ routes; 101.6 mm")
                .contains("\n    scenarios:\n      assume_contents: true\n")
                .contains("Next: open 20 vaults");
        JsonNode record = contents("bare");
        assertThat(record.path("basis").asText()).isEqualTo("unknown");
        assertThat(record.path("spans_unknown").asInt()).isEqualTo(spans);
        assertThat(record.path("missing").get(0).path("term").asText()).isEqualTo("innerduct_count");
        assertThat(record.path("missing").get(0).path("without").asInt()).isEqualTo(spans);
        assertThat(record.path("to_assume").toString()).contains("assume_contents: true", "in_service: live");
        assertThat(table("bare", "scenarios.csv")).isEmpty();
        assertThat(table("bare", "spans.csv"))
                .extracting(row -> row.get("contents_source"))
                .containsOnly("unknown");
    }

    @Test
    void whatWasAssumedIsCalledAnAssumptionEverywhere() throws IOException {
        List<CSVRecord> spans = table("assumed", "spans.csv");
        long ranked = spans.stream().filter(row -> !row.get("rank").isEmpty()).count();

        assertThat(ranked).isPositive();
        assertThat(assumed.out())
                .contains(ranked + " of " + spans.size() + " spans are candidates IF the contents are as assumed")
                .contains("no innerduct count is recorded for " + ranked
                        + " of them; this is an assumption, not a result")
                .doesNotContain("could give room back");
        assertThat(contents("assumed").path("basis").asText()).isEqualTo("assumed");
        assertThat(contents("assumed").path("statement").asText()).contains("this is an assumption, not a result");
        assertThat(contents("assumed").path("spans_ranked_assumed").asLong()).isEqualTo(ranked);
        for (String file : List.of("spans.csv", "pulls.csv")) {
            assertThat(table("assumed", file))
                    .extracting(row -> row.get("contents_source"))
                    .containsOnly("assumed");
        }
        assertThat(table("assumed", "sections.csv"))
                .allSatisfy(row -> assertThat(row.get("spans_contents_assumed")).isEqualTo(row.get("spans_ranked")));
        String best = spans.get(0).get("span_id");
        Path sheet = runs.resolve("sheet.svg");
        CommandRun explained =
                CommandRun.of("explain", best, "--run", runs.resolve("assumed").toString(), "--svg", sheet.toString());
        assertThat(explained.out()).contains("an assumption, not a result: no innerduct count is recorded");
        assertThat(Files.readString(sheet)).contains("Contents: an assumption, not a result");
        // What is assumed never goes in where it cannot.
        assertThat(table("assumed", "findings.csv"))
                .extracting(row -> row.get("code"))
                .doesNotContain("contents_cannot_fit");
    }

    @Test
    void scenariosStandInsteadOfOneNumber() throws IOException {
        List<CSVRecord> rows = table("assumed", "scenarios.csv");
        List<CSVRecord> spans = table("assumed", "spans.csv").stream()
                .filter(row -> !row.get("rank").isEmpty())
                .toList();

        assertThat(rows).extracting(row -> row.get("scenario")).containsExactly("few", "typical", "many");
        assertThat(rows).extracting(row -> row.get("main_result")).containsExactly("false", "true", "false");
        CSVRecord typical = rows.get(1);
        assertThat(typical.get("spans_ranked")).isEqualTo(Integer.toString(spans.size()));
        assertThat(Long.parseLong(typical.get("positions_gained"))).isEqualTo(sum(spans, "positions_gained"));
        assertThat(number(rows.get(0), "positions_gained")).isLessThan(number(typical, "positions_gained"));
        for (CSVRecord row : rows) {
            assertThat(assumed.out()).containsPattern(row.get("scenario") + " +" + row.get("innerduct_count") + " ");
        }
        assertThat(contents("assumed").path("by_scenario")).hasSize(3);
        // On each span, too: with all scenarios on one count there is one number; recorded contents have one anyway.
        assertThat(spans)
                .anySatisfy(row ->
                        assertThat(row.get("positions_gained_few")).isNotEqualTo(row.get("positions_gained_many")));
        for (CSVRecord row : table("mixed", "spans.csv")) {
            if (row.get("contents_source").equals("recorded")) {
                assertThat(row.get("positions_gained_few")).isEqualTo(row.get("positions_gained"));
                assertThat(row.get("positions_gained_many")).isEqualTo(row.get("positions_gained"));
            }
        }
        assertThat(table("bare", "spans.csv"))
                .extracting(row -> row.get("positions_gained_few"))
                .containsOnly("");
    }

    /** Each scenario is what a run would say that assumes its counts. */
    @ParameterizedTest
    @ValueSource(ints = {0, 2})
    void aScenarioIsTheRunThatAssumesIt(int row) throws IOException {
        CSVRecord scenario = table("mixed", "scenarios.csv").get(row);
        String typical = "{innerduct_count: " + scenario.get("innerduct_count") + ", cable_count: "
                + scenario.get("cable_count") + "}";
        String config = Files.readString(runs.resolve("mixed.yaml"))
                .replaceAll(
                        "  typical: \\{[^}]*\\}",
                        "  few: " + typical + "\n  many: " + typical + "\n  typical: " + typical);
        rank("as" + row, config, "--no-uncertainty");

        CSVRecord alone = table("as" + row, "scenarios.csv").get(1);
        String gained = row == 0 ? "positions_gained_few" : "positions_gained_many";
        Map<String, String> ofScenario = table("mixed", "spans.csv").stream()
                .collect(Collectors.toMap(one -> one.get("span_id"), one -> one.get(gained)));
        assertThat(table("as" + row, "spans.csv"))
                .allSatisfy(
                        one -> assertThat(one.get("positions_gained")).isEqualTo(ofScenario.get(one.get("span_id"))));
        for (String column : List.of(
                "spans_ranked",
                "spans_contents_assumed",
                "length_m",
                "positions_gained",
                "recovery_money",
                "build_money")) {
            assertThat(scenario.get(column)).as(column).isEqualTo(alone.get(column));
        }
    }

    /** What is recorded is the same in each scenario, and not called assumed. */
    @Test
    void recordedContentsStayWhatTheyAre() throws IOException {
        List<CSVRecord> spans = table("mixed", "spans.csv");
        Set<String> sources = new HashSet<>();
        for (CSVRecord span : spans) {
            sources.add(span.get("contents_source"));
            boolean counted = !span.get("assumed").contains("innerduct_count")
                    && !span.get("assumed").contains("cable_count");
            assertThat(span.get("contents_source")).isEqualTo(counted ? "recorded" : "assumed");
        }
        assertThat(sources).containsExactlyInAnyOrder("recorded", "assumed");
        long rankedRecorded = spans.stream()
                .filter(row ->
                        !row.get("rank").isEmpty() && row.get("contents_source").equals("recorded"))
                .count();
        for (CSVRecord scenario : table("mixed", "scenarios.csv")) {
            assertThat(Long.parseLong(scenario.get("spans_ranked"))
                            - Long.parseLong(scenario.get("spans_contents_assumed")))
                    .isEqualTo(rankedRecorded);
        }
        Set<String> visited = table("mixed", "vault_survey.csv").stream()
                .flatMap(row -> List.of(row.get("ducts").split(";", -1)).stream())
                .collect(Collectors.toSet());
        Set<String> open = spans.stream()
                .filter(row -> row.get("contents_source").equals("assumed"))
                .map(row -> row.get("duct"))
                .collect(Collectors.toSet());
        assertThat(open).containsAll(visited);
    }

    /** Where the contents may be few or many, the score lies in a wider range than where they are recorded. */
    @Test
    void chancesReflectWhatWasAssumed() throws IOException {
        List<CSVRecord> ranked = table("mixed", "spans.csv").stream()
                .filter(row -> !row.get("rank").isEmpty())
                .toList();

        assertThat(meanWidth(ranked, "assumed")).isGreaterThan(1.5 * meanWidth(ranked, "recorded"));
    }

    private static double meanWidth(List<CSVRecord> rows, String source) {
        return rows.stream()
                .filter(row -> row.get("contents_source").equals(source))
                .mapToDouble(row -> number(row, "score_high_points") - number(row, "score_low_points"))
                .average()
                .orElseThrow();
    }

    @Test
    void theNumberOfThreadsDoesNotShow() throws IOException {
        rank("three", Files.readString(runs.resolve("assumed.yaml")), "--threads", "3");
        rank("one", Files.readString(runs.resolve("assumed.yaml")), "--threads", "1");

        for (String file : List.of("scenarios.csv", "vault_survey.csv", "spans.csv")) {
            assertThat(runs.resolve("three").resolve(file))
                    .hasSameBinaryContentAs(runs.resolve("one").resolve(file));
        }
    }

    /** Mains and manholes of a real city, which record no innerducts: two commands lead to a next step. */
    @ParameterizedTest
    @ValueSource(strings = {"victoria", "toronto"})
    void aRealLayerLeadsToANextStep(String city) throws IOException {
        Path folder = OpenData.at("city-mains/" + city).toAbsolutePath();

        CommandRun run = rank(city, fields(folder.resolve("mains.geojson"), folder.resolve("manholes.geojson")));

        assertThat(run.exitCode()).isZero();
        assertThat(run.out())
                .contains("Missing:", "  innerduct_count: no field is mapped to it", "assume_contents: true")
                .containsPattern(
                        "Next: open \\d+ vaults, which show [\\d,]+ of [\\d,]+ spans whose contents are not recorded");
        JsonNode record = contents(city);
        assertThat(StreamSupport.stream(record.path("missing").spliterator(), false)
                        .map(term -> term.path("term").asText()))
                .contains("innerduct_count", "cable_count");
        assertThat(table(city, "vault_survey.csv")).isNotEmpty();
    }

    private static double number(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
    }

    private static long sum(List<CSVRecord> rows, String column) {
        return rows.stream().mapToLong(row -> Long.parseLong(row.get(column))).sum();
    }
}
