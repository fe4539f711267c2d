package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the summary says of all candidates of the demo city, calculated again from its own table of spans; and of the same city without sizes of ducts. */
class SummaryOfSpansTest {
    @TempDir
    Path folder;

    @Test
    void oneRuleAndOneLimitDecideMostOfTheDemo() throws IOException {
        List<String> said = said(Path.of("sample-gis", "spanroom.yaml"));
        List<CSVRecord> ranked = ranked();
        long rule = ranked.stream()
                .filter(row -> row.get("binding_rule").equals("sleeves_per_duct"))
                .count();
        long limit = ranked.stream()
                .filter(row -> row.get("pull_tightest_limit").equals("innerduct_strength"))
                .count();

        assertThat(2 * rule).isGreaterThan(ranked.size());
        assertThat(2 * limit).isGreaterThan(ranked.size());
        assertThat(said)
                .containsExactly(
                        String.format(
                                Locale.ROOT,
                                "In %,d of %,d candidates, the sleeves-per-duct table (room.sleeves_by_duct) sets the number of cable positions",
                                rule,
                                ranked.size()),
                        String.format(
                                Locale.ROOT,
                                "In %,d of %,d candidates, innerduct tension comes closest to its limit",
                                limit,
                                ranked.size()));
    }

    @Test
    void sizesThatAreAssumedAreNamedFirst() throws IOException {
        String demo = Files.readString(Path.of("sample-gis", "spanroom.yaml"));
        String without = demo.replaceFirst("(?m)^ *inside_diameter:.*\n", "");
        assertThat(without).isNotEqualTo(demo);
        Path city = Files.createDirectory(folder.resolve("city"));
        try (Stream<Path> files = Files.list(Path.of("sample-gis"))) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, city.resolve(file.getFileName()));
            }
        }
        Path config = Files.writeString(city.resolve("without.yaml"), without);

        List<String> said = said(config);
        List<CSVRecord> ranked = ranked();
        long assumed = ranked.stream()
                .filter(row -> List.of(row.get("assumed").split(";")).contains("inside_diameter"))
                .count();

        assertThat(assumed).isGreaterThan(ranked.size() * 9L / 10);
        assertThat(said.get(0))
                .isEqualTo(String.format(
                        Locale.ROOT,
                        "In %,d of %,d candidates, the inside diameter is assumed because no usable one is recorded; their cable"
                                + " positions rest on that",
                        assumed,
                        ranked.size()));
    }

    /** Spans that only a bend stops are a line of their own, beside those that only lubrication lets through. */
    @Test
    void spansWithATightBendAreCounted() throws IOException {
        JsonNode summary = summary(Path.of("sample-gis", "spanroom.yaml"));
        long tight = withCaution("innerduct_radius");

        assertThat(tight).isPositive();
        assertThat(summary.path("spans_ranked_tight_bend").asLong()).isEqualTo(tight);
        assertThat(summary.path("spans_ranked_doubtful").asLong()).isEqualTo(withCaution("pull_doubtful"));
    }

    private long withCaution(String key) throws IOException {
        return ranked().stream()
                .filter(row -> List.of(row.get("cautions").split(";")).contains(key))
                .count();
    }

    /** The span that costs most digs, and the ducts of the others of its section lie beside: from the columns that a user has. */
    @Test
    void sharedBuildIsThatOfTheColumns() throws IOException {
        double shared = summary(Path.of("sample-gis", "spanroom.yaml"))
                .at("/money_ranked/build_shared_money")
                .asDouble();
        Map<String, List<CSVRecord>> sections =
                ranked().stream().collect(Collectors.groupingBy(row -> row.get("section_id")));
        double expected = 0;
        for (List<CSVRecord> section : sections.values()) {
            CSVRecord digs = Collections.max(section, Comparator.comparingDouble(row -> number(row, "build_money")));
            for (CSVRecord row : section) {
                double beside = number(row, "build_ducts") * number(row, "further_duct_money");
                expected +=
                        row.equals(digs) ? number(row, "build_money") : Math.min(number(row, "build_money"), beside);
            }
        }

        assertThat(sections.size()).isLessThan(ranked().size());
        // Columns are rounded to cents, and what is kept of a span to seven digits.
        assertThat(shared).isCloseTo(expected, within(0.02 * ranked().size()));
    }

    private static double number(CSVRecord row, String column) {
        return row.get(column).isEmpty() ? 0 : Double.parseDouble(row.get(column));
    }

    private List<String> said(Path config) throws IOException {
        return new ObjectMapper()
                .convertValue(
                        summary(config).path("deciders"),
                        new ObjectMapper().getTypeFactory().constructCollectionType(List.class, String.class));
    }

    private JsonNode summary(Path config) throws IOException {
        CommandRun run = CommandRun.of(
                "rank",
                "--config",
                config.toString(),
                "--output",
                folder.resolve("run").toString(),
                "--no-uncertainty",
                "--columns",
                "all",
                "--formats",
                "csv",
                "--json");
        assertThat(run.exitCode()).as(run.err()).isEqualTo(ExitCode.OK);
        return new ObjectMapper().readTree(run.out());
    }

    private List<CSVRecord> ranked() throws IOException {
        try (var parser = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(Files.newBufferedReader(folder.resolve("run").resolve("spans.csv")))) {
            return parser.stream().filter(row -> !row.get("rank").isEmpty()).toList();
        }
    }
}
