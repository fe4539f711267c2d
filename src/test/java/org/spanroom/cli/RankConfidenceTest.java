package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How sure the ranks of the demo city are. */
class RankConfidenceTest {
    private static final List<String> COLUMNS =
            List.of("feasible_chance_pct", "score_low_points", "score_high_points", "top_chance_pct");
    private static final List<String> MONEY = List.of("recovery", "build", "saving");
    private static final List<String> SIMULATED = Stream.concat(
                    COLUMNS.stream(),
                    MONEY.stream()
                            .flatMap(what ->
                                    Stream.of(what + "_low_money", what + "_likely_money", what + "_high_money")))
            .toList();

    @TempDir
    static Path runs;

    private static String printed = "";

    @BeforeAll
    static void makeRuns() {
        printed = rank("one", "--threads", "1");
        rank("three", "--threads", "3");
        rank("off", "--no-uncertainty");
    }

    @Test
    void theNumberOfThreadsDoesNotShow() {
        for (String file : List.of("spans.csv", "field_checks.csv")) {
            assertThat(runs.resolve("three").resolve(file))
                    .hasSameBinaryContentAs(runs.resolve("one").resolve(file));
        }
    }

    @Test
    void withoutTheSimulationAllElseIsTheSame() throws IOException {
        Map<String, CSVRecord> with = spans("one");
        spans("off").forEach((id, off) -> {
            Map<String, String> cells = off.toMap();
            SIMULATED.forEach(column -> assertThat(cells.get(column)).isEmpty());
            Map<String, String> expected = new TreeMap<>(with.get(id).toMap());
            SIMULATED.forEach(column -> expected.put(column, ""));
            assertThat(cells).isEqualTo(expected);
        });
        assertThat(table(runs.resolve("off").resolve("field_checks.csv"))).isEmpty();
    }

    /** In every sample there are twenty at the top, so that the chances add up to twenty where no two scores are equal. */
    @Test
    void theChancesOfBeingAtTheTopAddUpToItsPlaces() throws IOException {
        double sumPercent = 0;
        for (CSVRecord span : spans("one").values()) {
            boolean ranked = !span.get("rank").isEmpty();
            for (String column : SIMULATED) {
                assertThat(span.get(column).isEmpty()).isNotEqualTo(ranked);
            }
            if (ranked) {
                sumPercent += Double.parseDouble(span.get("top_chance_pct"));
                assertThat(Double.parseDouble(span.get("score_low_points")))
                        .isLessThanOrEqualTo(Double.parseDouble(span.get("score_high_points")));
            }
        }
        assertThat(sumPercent / 100).isEqualTo(20, within(2.0));
    }

    /** What is worth a look is a span of which it is open whether it belongs to the top, at one of its own vaults. */
    @Test
    void fieldChecksAreOfOpenSpansAndTheFirstChangesMost() throws IOException {
        List<CSVRecord> checks = table(runs.resolve("one").resolve("field_checks.csv"));
        Map<String, CSVRecord> spans = spans("one");

        assertThat(checks).isNotEmpty();
        assertThat(Double.parseDouble(checks.get(0).get("expected_change_pct"))).isGreaterThan(20);
        double before = 100;
        for (CSVRecord check : checks) {
            CSVRecord span = spans.get(check.get("span_id"));
            double changePercent = Double.parseDouble(check.get("expected_change_pct"));
            double topPercent = Double.parseDouble(check.get("top_chance_pct"));
            assertThat(changePercent).isLessThanOrEqualTo(before);
            assertThat(changePercent).isLessThanOrEqualTo(Math.min(topPercent, 100 - topPercent) + 0.1);
            assertThat(topPercent).isEqualTo(Double.parseDouble(span.get("top_chance_pct")), within(12.0));
            assertThat(check.get("vault")).isIn(span.get("vault_a"), span.get("vault_b"));
            before = changePercent;
        }
    }

    /**
     * Percentiles of the same drawings. With all rates at their values an amount is less than the likely one, since most rates can rise
     * farther than they can fall; it lies inside the whole range of the drawings, so below the high end always.
     */
    @Test
    void likelyMoneyLiesBetweenLowAndHigh() throws IOException {
        for (CSVRecord span : spans("one").values()) {
            for (String what : span.get("rank").isEmpty() ? List.<String>of() : MONEY) {
                assertThat(money(span, what + "_likely_money"))
                        .isBetween(money(span, what + "_low_money"), money(span, what + "_high_money"));
                assertThat(money(span, what + "_money")).isLessThanOrEqualTo(money(span, what + "_high_money"));
            }
        }
    }

    /** Percentiles of totals, which are no sums of the spans' own; the same whatever the threads. */
    @Test
    void theTotalsOfTheRunAreNotSumsOfLows() throws IOException {
        JsonNode one = new ObjectMapper()
                .readTree(runs.resolve("one").resolve("run.json").toFile())
                .get("money_ranked");
        JsonNode three = new ObjectMapper()
                .readTree(runs.resolve("three").resolve("run.json").toFile())
                .get("money_ranked");
        JsonNode off = new ObjectMapper()
                .readTree(runs.resolve("off").resolve("run.json").toFile())
                .get("money_ranked");

        assertThat(three).isEqualTo(one);
        assertThat(off.size()).isEqualTo(5);
        assertThat(off.get("build_shared_money")).isEqualTo(one.get("build_shared_money"));
        assertThat(off.get("build_shared_money").asDouble())
                .isLessThan(off.get("build_money").asDouble());
        for (String what : MONEY) {
            assertThat(off.get(what + "_money")).isEqualTo(one.get(what + "_money"));
            double atValues = sum(what + "_money");
            // Half a cent for each of the spans, whose columns are rounded.
            assertThat(one.get(what + "_money").asDouble()).isEqualTo(atValues, within(5.0));
            for (String end : List.of("_low_money", "_high_money")) {
                assertThat(one.get(what + end).asDouble())
                        .isNotCloseTo(sum(what + end), withinPercentage(0.1))
                        .isCloseTo(sum(what + end), withinPercentage(10));
            }
        }
    }

    @Test
    void theRunPrintsWhatItsRecordSays() throws IOException {
        JsonNode money = new ObjectMapper()
                .readTree(runs.resolve("one").resolve("run.json").toFile())
                .get("money_ranked");

        assertThat(printed)
                .contains("Totals over these spans, in USD, likely (low to high):")
                .contains(String.format(
                        Locale.ROOT,
                        "%,.0f (%,.0f to %,.0f) saving",
                        money.get("saving_likely_money").asDouble(),
                        money.get("saving_low_money").asDouble(),
                        money.get("saving_high_money").asDouble()));
    }

    private static double sum(String column) throws IOException {
        return spans("one").values().stream()
                .filter(span -> !span.get("rank").isEmpty())
                .mapToDouble(span -> money(span, column))
                .sum();
    }

    private static double money(CSVRecord span, String column) {
        return Double.parseDouble(span.get(column));
    }

    @Test
    void explainShowsTheMoneyOfTheTable() throws IOException {
        CSVRecord first = table(runs.resolve("one").resolve("spans.csv")).get(0);

        CommandRun explained = CommandRun.of(
                "explain",
                first.get("span_id"),
                "--json",
                "--run",
                runs.resolve("one").toString());

        JsonNode effort = new ObjectMapper().readTree(explained.out()).get("effort");
        for (String column : SIMULATED.subList(COLUMNS.size(), SIMULATED.size())) {
            assertThat(effort.get(column).asDouble()).as(column).isEqualTo(money(first, column));
        }
    }

    @Test
    void explainSaysHowSureTheRankIs() throws IOException {
        CSVRecord first = table(runs.resolve("one").resolve("spans.csv")).get(0);

        CommandRun explained = CommandRun.of(
                "explain", first.get("span_id"), "--run", runs.resolve("one").toString());

        assertThat(explained.out())
                .containsPattern("feasible chance +" + first.get("feasible_chance_pct") + " %\n")
                .containsPattern("probability among the top +" + first.get("top_chance_pct") + " %\n");
    }

    private static String rank(String name, String... more) {
        var words = new ArrayList<>(List.of(
                "rank",
                "--config",
                Path.of("sample-gis", "spanroom.yaml").toString(),
                "--formats",
                "csv",
                "--columns",
                "all",
                "--output",
                runs.resolve(name).toString()));
        words.addAll(List.of(more));
        CommandRun ranked = CommandRun.of(words.toArray(String[]::new));
        assertThat(ranked.exitCode()).as(ranked.err()).isZero();
        return ranked.out();
    }

    private static Map<String, CSVRecord> spans(String run) throws IOException {
        var byId = new TreeMap<String, CSVRecord>();
        table(runs.resolve(run).resolve("spans.csv")).forEach(row -> byId.put(row.get("span_id"), row));
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
