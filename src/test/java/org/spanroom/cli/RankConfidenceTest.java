package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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

/** How sure the ranks of the demo city are. */
class RankConfidenceTest {
    private static final List<String> COLUMNS =
            List.of("feasible_chance_pct", "score_low_points", "score_high_points", "top_chance_pct");

    @TempDir
    static Path runs;

    @BeforeAll
    static void makeRuns() {
        rank("one", "--threads", "1");
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
            COLUMNS.forEach(column -> assertThat(cells.get(column)).isEmpty());
            Map<String, String> expected = new TreeMap<>(with.get(id).toMap());
            COLUMNS.forEach(column -> expected.put(column, ""));
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
            for (String column : COLUMNS) {
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
            assertThat(check.get("vault")).isIn(span.get("from_vault"), span.get("to_vault"));
            before = changePercent;
        }
    }

    @Test
    void explainSaysHowSureTheRankIs() throws IOException {
        CSVRecord first = table(runs.resolve("one").resolve("spans.csv")).get(0);

        CommandRun explained = CommandRun.of(
                "explain", first.get("span_id"), "--run", runs.resolve("one").toString());

        assertThat(explained.out())
                .containsPattern("chance to be feasible +" + first.get("feasible_chance_pct") + " %\n")
                .containsPattern("chance to be among the top +" + first.get("top_chance_pct") + " %\n");
    }

    private static void rank(String name, String... more) {
        var words = new ArrayList<>(List.of(
                "rank",
                "--config",
                Path.of("config", "spanroom.yaml").toString(),
                "--formats",
                "csv",
                "--output",
                runs.resolve(name).toString()));
        words.addAll(List.of(more));
        CommandRun ranked = CommandRun.of(words.toArray(String[]::new));
        assertThat(ranked.exitCode()).as(ranked.err()).isZero();
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
