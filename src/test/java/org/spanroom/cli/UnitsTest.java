package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A whole run of an invented city, shown in US units. */
class UnitsTest {
    private static final Pattern METRIC =
            Pattern.compile("(?<![\\w-])(mm2|mm|m3|m|km|N/m|N|kg/m3|kg/m|kg|MPa|rad/m|l|meters?)(?![\\w/])");

    /**
     * What stays metric: the tolerance that check helps to choose, a setting in meters; details of findings and of rejected values, which
     * are made where the data is read and are those of findings.csv; emissions, which are accounted for by rates in kilograms; and N for
     * north.
     */
    private static final List<Pattern> LISTED = List.of(
            Pattern.compile("within .* ft \\([\\d.]+ m\\)"),
            Pattern.compile("Emissions avoided, kg CO2e"),
            Pattern.compile("is outside the plausible range of .*"),
            Pattern.compile("it would be plausible in \\w+"));

    @TempDir
    static Path folder;

    private static Path config;
    private static Path run;
    private static CommandRun ranked;

    @BeforeAll
    static void rank() {
        Path city = folder.resolve("city");
        run = folder.resolve("us");
        config = city.resolve("spanroom.yaml");
        assertThat(CommandRun.of("sample", "--spans", "300", "--seed", "5", "--output", city.toString())
                        .exitCode())
                .isZero();
        ranked = rank(run, "--units", "us");
        assertThat(ranked.exitCode()).as(ranked.err()).isZero();
    }

    @Test
    void theScreenOfARunIsInUsUnits() {
        assertThat(ranked.out()).contains(" mi).", "length ft");
        assertThat(ranked.err()).contains(" mi not assigned to a span");
        assertThat(metricLines(ranked.out())).isEmpty();
        assertThat(metricLines(ranked.err())).isEmpty();
    }

    @Test
    void theScreenOfACheckIsInUsUnits() {
        CommandRun check = CommandRun.of("check", "--config", config.toString(), "--units", "us");

        List<String> beforeFindings = check.out()
                .lines()
                .takeWhile(line -> !line.contains(" findings, "))
                .toList();
        assertThat(beforeFindings).anyMatch(line -> line.endsWith(" ft in spans"));
        assertThat(metricLines(String.join("\n", beforeFindings))).isEmpty();
    }

    /** One span of each answer, ranked or excluded, with text, sheet and JSON. */
    @Test
    void everySpanIsExplainedInTheUnitsOfTheRun() throws IOException {
        for (String spanId : oneOfEachAnswer()) {
            Path sheet = folder.resolve("sheet.svg");
            CommandRun text = explain(spanId, "--svg", sheet.toString(), "--overwrite");

            assertThat(text.exitCode()).as(text.err()).isZero();
            // Limits at which work stops are given in both systems, since gauges show either.
            String words = text.out().replaceAll("\\s+", " ").replaceAll("lbf \\([\\d,]+ N\\)", "lbf");
            assertThat(metricLines(words.replaceAll("(?<=[.;:]) ", "\n")))
                    .as(spanId)
                    .isEmpty();
            List<String> labels = Pattern.compile("<text [^>]*>([^<]*)</text>")
                    .matcher(Files.readString(sheet))
                    .results()
                    .map(found -> found.group(1))
                    .filter(label -> !label.equals("N"))
                    .toList();
            assertThat(metricLines(String.join("\n", labels))).as(spanId).isEmpty();
            assertThat(labels).anyMatch(label -> label.contains(" ft"));
        }
    }

    /** JSON is for programs: its keys name the units. An option goes before the run's units. */
    @Test
    void jsonIsMetricAndTheOptionGoesBeforeTheRun() throws IOException {
        String spanId = oneOfEachAnswer().get(0);
        JsonNode us = new ObjectMapper().readTree(explain(spanId, "--json").out());
        JsonNode metric = new ObjectMapper()
                .readTree(explain(spanId, "--json", "--units", "metric").out());

        assertThat(us).isEqualTo(metric);
        assertThat(explain(spanId).out()).contains(" ft").doesNotContain("m from A");
        assertThat(explain(spanId, "--units", "Metric").out())
                .contains("m from A")
                .doesNotContain("ft from A");
    }

    @Test
    void theRunRemembersItsUnitsAndNothingElseDiffers() throws IOException {
        Path other = folder.resolve("metric");
        CommandRun metric = rank(other);

        assertThat(metric.out()).contains(" km).", "length m");
        assertThat(units(run)).isEqualTo("us");
        assertThat(units(other)).isEqualTo("metric");
        Path again = folder.resolve("again");
        CommandRun rescored = CommandRun.of(
                "rank",
                "--from",
                other.toString(),
                "--scoring",
                Path.of("config", "scoring.yaml").toString(),
                "--output",
                again.toString(),
                "--units",
                "us");
        assertThat(rescored.exitCode()).as(rescored.err()).isZero();
        assertThat(units(again)).isEqualTo("us");
        assertThat(metricLines(rescored.out())).isEmpty();
    }

    @Test
    void aConfigMayAskForThem() throws IOException {
        Path us = config.resolveSibling("us.yaml");
        Files.writeString(us, Files.readString(config) + "\nunits: us\n");

        CommandRun check = CommandRun.of("check", "--config", us.toString());

        assertThat(check.out()).contains(" ft in spans");
    }

    @Test
    void aWrongWordIsRefused() throws IOException {
        Path wrong = config.resolveSibling("wrong.yaml");
        Files.writeString(wrong, Files.readString(config) + "\nunits: imperial\n");

        CommandRun option = CommandRun.of("check", "--config", config.toString(), "--units", "imperial");
        CommandRun inConfig = CommandRun.of("check", "--config", wrong.toString());

        assertThat(option.exitCode()).isEqualTo(ExitCode.USAGE);
        assertThat(option.complaint()).containsIgnoringCase("--units").containsIgnoringCase("metric, us");
        assertThat(inConfig.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(inConfig.complaint()).contains("'imperial' is not a valid value for units", "metric", "us");
    }

    private static CommandRun rank(Path output, String... more) {
        var args = new ArrayList<>(List.of(
                "rank", "--config", config.toString(), "--output", output.toString(), "--formats", "csv,geopackage"));
        args.addAll(List.of(more));
        return CommandRun.of(args.toArray(String[]::new));
    }

    private static CommandRun explain(String spanId, String... more) {
        var args = new ArrayList<>(List.of("explain", spanId, "--run", run.toString()));
        args.addAll(List.of(more));
        return CommandRun.of(args.toArray(String[]::new));
    }

    private static List<String> metricLines(String text) {
        String rest = text;
        for (Pattern listed : LISTED) {
            rest = listed.matcher(rest).replaceAll("");
        }
        return rest.lines().filter(line -> METRIC.matcher(line).find()).toList();
    }

    private static String units(Path run) throws IOException {
        return new ObjectMapper()
                .readTree(run.resolve("run.json").toFile())
                .at("/config/units")
                .asText();
    }

    /** The first span of each reason of exclusion, or of none. Ids and reasons stand in columns without commas in them. */
    private static List<String> oneOfEachAnswer() throws IOException {
        List<String[]> rows;
        try (Stream<String> lines = Files.lines(run.resolve("spans.csv"))) {
            rows = lines.map(line -> line.split(",", 6)).toList();
        }
        int exclusion = List.of(rows.get(0)).indexOf("exclusion");
        assertThat(exclusion).isNotNegative();
        Map<String, String> first = new LinkedHashMap<>();
        rows.stream().skip(1).forEach(row -> first.putIfAbsent(row[exclusion], row[0]));
        return List.copyOf(first.values());
    }
}
