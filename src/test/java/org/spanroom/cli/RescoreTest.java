package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.output.ResultTable;
import org.spanroom.output.ResultTables;
import picocli.CommandLine.Model.OptionSpec;

/** Ranks the demo city again by another scoring, and compares that with a run that had this scoring from the beginning. */
class RescoreTest {
    private static final Path CONFIG = Path.of("sample-gis", "spanroom.yaml");

    /** What only a simulation of the new scoring could say. */
    private static final Set<String> SIMULATED = Set.of("score_low_points", "score_high_points", "top_chance_pct");

    private static final String FEASIBLE = "feasible_chance_pct";

    /** What no scoring has a part in, and only spans with a rank have. */
    private static final Set<String> DRAWN = Set.of(
            FEASIBLE,
            "recovery_low_money",
            "recovery_likely_money",
            "recovery_high_money",
            "build_low_money",
            "build_likely_money",
            "build_high_money",
            "saving_low_money",
            "saving_likely_money",
            "saving_high_money");

    @TempDir
    static Path runs;

    @TempDir
    Path folder;

    private static Path other;

    @BeforeAll
    static void makeRuns() throws IOException {
        other = runs.resolve("other.yaml");
        Files.writeString(other, """
                criteria:
                  room_gained: {weight_ratio: 0.1}
                  ease_bends: {weight_ratio: 0.7, curve: {0: 1, 45: 0}}
                  saving: {weight_ratio: 0}
                gates:
                  empty_duct_in_bank: false
                """);
        rank("first");
        rank("whole", "--scoring", other.toString());
        again("again", runs.resolve("first"), other, runs.resolve("again"));
    }

    @Test
    void theSameScoringGivesTheSameTables() throws SQLException {
        Path same = folder.resolve("same");
        again("same", runs.resolve("first"), Path.of("config", "scoring.yaml"), same);

        assertSameTables(same, runs.resolve("first"));
    }

    @Test
    void anotherScoringGivesTheTablesOfAWholeRunWithIt() throws SQLException {
        assertSameTables(runs.resolve("again"), runs.resolve("whole"));
        assertThat(rows(runs.resolve("whole"), "spans")).isNotEqualTo(rows(runs.resolve("first"), "spans"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"permits.csv", "pulls.csv", "findings.csv", "sections.csv", "vault_survey.csv"})
    void theTablesAsCsvAreThoseOfAWholeRunByteForByte(String file) {
        assertThat(runs.resolve("again").resolve(file))
                .hasSameBinaryContentAs(runs.resolve("whole").resolve(file));
    }

    /** Rounded lengths are added up: half a millimeter each at most. */
    @Test
    void theRecordCountsWhatTheRunItselfHolds() throws IOException {
        ObjectNode again = record(runs.resolve("again"));
        ObjectNode whole = record(runs.resolve("whole"));

        double ranked = again.path("spans_ranked").asDouble();
        assertThat(again.at("/lengths_m/spans_ranked").asDouble())
                .isCloseTo(whole.at("/lengths_m/spans_ranked").asDouble(), within(0.0005 * ranked));
        // What is kept of a span has seven digits, and columns have cents.
        assertThat(again.at("/money_ranked/build_shared_money").asDouble())
                .isCloseTo(whole.at("/money_ranked/build_shared_money").asDouble(), within(0.02 * ranked));
        assertThat(again.at("/contents/deciders")).hasSize(2);
        assertThat(again.path("rescored_from").asText())
                .isEqualTo(runs.resolve("first").toString());
        assertThat(again.path("notes"))
                .anySatisfy(note -> assertThat(note.asText())
                        .isEqualTo("field_checks is left out: it applies to the earlier scoring only. Run "
                                + "rank on the inputs with the new scoring to get it."));
        assertThat(whole.path("spans_excluded"))
                .isNotEqualTo(record(runs.resolve("first")).path("spans_excluded"));
        for (ObjectNode record : List.of(again, whole)) {
            record.remove(List.of("started_at", "rescored_from", "notes", "field_checks", "scenarios"));
            // What is missing and what it might be is for a whole run to say.
            ((ObjectNode) record.path("contents")).remove(List.of("missing", "to_assume", "by_scenario"));
            ((ObjectNode) record.path("lengths_m")).remove("spans_ranked");
            // The record of the other scoring has no totals of drawings.
            ((ObjectNode) record.path("money_ranked")).remove(DRAWN);
            ((ObjectNode) record.path("money_ranked")).remove("build_shared_money");
            ((ObjectNode) record.at("/config/output")).remove("folder");
        }
        assertThat(again).isEqualTo(whole);
    }

    /** What another scoring needs is recorded whatever columns were asked for. */
    @Test
    void columnsThatNeedNotBeAskedForAreEnoughForItsSums() throws IOException {
        Path plain = folder.resolve("plain");
        CommandRun ranked = CommandRun.of(
                "rank",
                "--config",
                CONFIG.toString(),
                "--formats",
                "csv",
                "--no-uncertainty",
                "--output",
                plain.toString());
        assertThat(ranked.exitCode()).as(ranked.err()).isZero();
        Path same = folder.resolve("same-sums");
        again("same sums", plain, Path.of("config", "scoring.yaml"), same, "--formats", "csv");

        assertThat(record(same).at("/money_ranked/build_shared_money").asDouble())
                .isCloseTo(
                        record(plain).at("/money_ranked/build_shared_money").asDouble(),
                        within(0.02 * record(plain).path("spans_ranked").asDouble()));
        assertThat(record(same).at("/contents/deciders"))
                .isEqualTo(record(plain).at("/contents/deciders"));
    }

    @Test
    void aRescoredRunCanBeRescored() throws SQLException {
        Path back = folder.resolve("back");
        again("back", runs.resolve("again"), Path.of("config", "scoring.yaml"), back);

        assertSameTables(back, runs.resolve("first"));
    }

    /** The folder is a run: it can be compared and explained. */
    @Test
    void theNewFolderIsARunOfItsOwn() throws SQLException {
        CommandRun compared = CommandRun.of(
                "compare",
                runs.resolve("first").toString(),
                runs.resolve("again").toString(),
                "--output",
                folder.resolve("moves").toString());
        String best = String.valueOf(rows(runs.resolve("again"), "spans").get(0).get("span_id"));
        CommandRun explained =
                CommandRun.of("explain", best, "--run", runs.resolve("again").toString());

        assertThat(compared.out()).contains("config scoring.criteria.ease_bends.weight_ratio: 0.05 to 0.7");
        assertThat(explained.out()).startsWith("Span " + best + "\n  ranking           rank 1 of ");
        assertThat(explained.exitCode()).isZero();
    }

    @Test
    void formatsAndReferenceSystemMayBeOthers() throws IOException, SQLException {
        Path csv = folder.resolve("csv");
        again("csv", runs.resolve("first"), other, csv, "--formats", "csv,geojson", "--threads", "2");
        Path meters = folder.resolve("meters");
        again("meters", runs.resolve("first"), other, meters, "--output-crs", "EPSG:32610");

        assertThat(names(csv))
                .containsExactly(
                        "choices.csv",
                        "cost_items.csv",
                        "findings.csv",
                        "permits.csv",
                        "permits.geojson",
                        "permits.qml",
                        "permits.sld",
                        "pulls.csv",
                        "run.json",
                        "run_spans.csv.gz",
                        "score_parts.csv",
                        "sections.csv",
                        "sections.geojson",
                        "sections.qml",
                        "sections.sld",
                        "spans.csv",
                        "spans.geojson",
                        "spans.qml",
                        "spans.sld",
                        "step_hours.csv",
                        "vault_survey.csv",
                        "zone_meters.csv",
                        "zones.geojson",
                        "zones.qml",
                        "zones.sld");
        assertThat(csv.resolve("pulls.csv"))
                .hasSameBinaryContentAs(runs.resolve("whole").resolve("pulls.csv"));
        assertThat(record(csv).at("/config/output/formats")).hasSize(2);
        assertThat(record(meters).path("output_crs").asText()).isEqualTo("WGS 84 / UTM zone 10N");
        assertThat(srsOfSpans(meters)).isEqualTo(32610);
    }

    @Test
    void whatTheEarlierRunHasNotIsNamed() throws IOException, SQLException {
        Path older = Files.createDirectory(folder.resolve("older"));
        for (String file : List.of("run.json", "run_spans.csv.gz", "spanroom.gpkg")) {
            Files.copy(runs.resolve("first").resolve(file), older.resolve(file));
        }
        try (Connection database = database(older);
                Statement statement = database.createStatement()) {
            statement.executeUpdate("DELETE FROM gpkg_contents WHERE table_name = 'pulls'");
        }

        CommandRun rescored = again("new", older, other, folder.resolve("new"));

        assertThat(rescored.out())
                .contains("Note: pulls is left out: the earlier run did not write it. Make that run with "
                        + "--columns pull.");
        assertThat(record(folder.resolve("new")).has("pulls")).isFalse();
        assertThat(names(folder.resolve("new"))).doesNotContain("pulls.csv").contains("permits.csv");
    }

    @Test
    void whatWouldNeedAnotherRunIsRefused() throws IOException {
        Path scoring = folder.resolve("mine.yaml");
        Files.writeString(scoring, "criteria:\n  length: {weight_ratio: 1}\nunknown_consent_excludes: true\n");

        CommandRun refused = CommandRun.of(words(runs.resolve("first"), scoring, folder.resolve("refused")));

        assertThat(refused.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(refused.complaint()).contains("make the run again").hasLineCount(1);
    }

    /** What only the inputs can give, e.g. field checks, would be lost with the earlier run. */
    @ParameterizedTest
    @ValueSource(strings = {"first", "first/again", "first/../first"})
    void theEarlierRunIsNeverReplaced(String output) throws IOException {
        byte[] record = Files.readAllBytes(runs.resolve("first/run.json"));

        CommandRun refused = CommandRun.of(words(runs.resolve("first"), other, runs.resolve(output), "--overwrite"));

        assertThat(refused.exitCode()).isEqualTo(ExitCode.USAGE);
        assertThat(refused.complaint()).contains("the folder of the run").hasLineCount(1);
        assertThat(runs.resolve("first/run.json")).hasBinaryContent(record);
        assertThat(runs.resolve("first/again")).doesNotExist();
    }

    @Test
    void withoutAScoringItIsAWrongUse() {
        CommandRun refused =
                CommandRun.of("rank", "--from", runs.resolve("first").toString());

        assertThat(refused.exitCode()).isEqualTo(ExitCode.USAGE);
        assertThat(refused.err()).contains("--from needs --scoring FILE");
    }

    /** Every option of the command is either refused or does what it says; none is ignored. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("unusedOptions")
    void anOptionThatItDoesNotUseIsRefused(String option, List<String> words) {
        Path output = folder.resolve("refused");
        CommandRun refused = CommandRun.of(words(runs.resolve("first"), other, output, words.toArray(String[]::new)));

        assertThat(refused.exitCode()).isEqualTo(ExitCode.USAGE);
        assertThat(refused.complaint()).contains("--from cannot be used with " + option + ":");
        assertThat(output).doesNotExist();
    }

    static Stream<Arguments> unusedOptions() {
        Set<String> used = Set.of(
                "--from",
                "--scoring",
                "--output",
                "--overwrite",
                "--output-crs",
                "--formats",
                "--columns",
                "--threads",
                "--units",
                "--where",
                "--within",
                "--json",
                "--quiet",
                "--help",
                "--version");
        var nowhere = new PrintWriter(new StringWriter());
        return SpanroomCommand.commandLine(nowhere, nowhere, false)
                .getSubcommands()
                .get("rank")
                .getCommandSpec()
                .options()
                .stream()
                .filter(option -> !used.contains(option.longestName()))
                .map(option -> Arguments.of(option.longestName(), words(option)));
    }

    private static List<String> words(OptionSpec option) {
        return option.arity().max() == 0 ? List.of(option.longestName()) : List.of(option.longestName(), "some");
    }

    /** Every table that does not hold for one scoring only, its shapes included. */
    private static void assertSameTables(Path rescored, Path whole) throws SQLException {
        for (ResultTable<?> table : ResultTables.ALL) {
            if (table.ofItsScoring()) {
                assertThat(tables(rescored)).doesNotContain(table.name());
                continue;
            }
            List<Map<String, Object>> found = rows(rescored, table.name());
            List<Map<String, Object>> expected = rows(whole, table.name());
            assertThat(expected).isNotEmpty();
            assertThat(found).as(table.name()).hasSameSizeAs(expected);
            for (int i = 0; i < found.size(); i++) {
                assertThat(known(found.get(i), found.get(i)))
                        .as(table.name())
                        .isEqualTo(known(expected.get(i), found.get(i)));
            }
        }
    }

    /** A row without what was simulated; the chance of being feasible and the ranges of money are not known of a span that had no rank before. */
    private static Map<String, Object> known(Map<String, Object> row, Map<String, Object> rescored) {
        var known = new LinkedHashMap<>(row);
        known.keySet().removeAll(SIMULATED);
        if (rescored.get(FEASIBLE) == null && row.get("rank") != null) {
            known.keySet().removeAll(DRAWN);
        }
        return known;
    }

    private static List<Map<String, Object>> rows(Path run, String table) throws SQLException {
        try (Connection database = database(run);
                Statement statement = database.createStatement();
                ResultSet rows = statement.executeQuery("SELECT * FROM " + table + " ORDER BY fid")) {
            var all = new ArrayList<Map<String, Object>>();
            while (rows.next()) {
                var row = new LinkedHashMap<String, Object>();
                for (int i = 1; i <= rows.getMetaData().getColumnCount(); i++) {
                    Object value = rows.getObject(i);
                    row.put(
                            rows.getMetaData().getColumnName(i),
                            value instanceof byte[] bytes ? HexFormat.of().formatHex(bytes) : value);
                }
                all.add(row);
            }
            return all;
        }
    }

    private static List<String> tables(Path run) throws SQLException {
        try (Connection database = database(run);
                Statement statement = database.createStatement();
                ResultSet rows = statement.executeQuery("SELECT table_name FROM gpkg_contents")) {
            var names = new ArrayList<String>();
            while (rows.next()) {
                names.add(rows.getString(1));
            }
            return names;
        }
    }

    private static int srsOfSpans(Path run) throws SQLException {
        try (Connection database = database(run);
                Statement statement = database.createStatement()) {
            return statement
                    .executeQuery("SELECT srs_id FROM gpkg_geometry_columns WHERE table_name = 'spans'")
                    .getInt(1);
        }
    }

    private static Connection database(Path run) throws SQLException {
        return DriverManager.getConnection("jdbc:sqlite:" + run.resolve("spanroom.gpkg"));
    }

    private static ObjectNode record(Path run) throws IOException {
        JsonNode record = new ObjectMapper().readTree(Files.readString(run.resolve("run.json")));
        return (ObjectNode) record;
    }

    private static List<String> names(Path run) throws IOException {
        try (Stream<Path> files = Files.list(run)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> !name.startsWith("."))
                    .sorted()
                    .toList();
        }
    }

    private static CommandRun again(String name, Path from, Path scoring, Path output, String... more) {
        CommandRun again = CommandRun.of(words(from, scoring, output, more));
        assertThat(again.exitCode()).as(name + ": " + again.err()).isZero();
        assertThat(again.out()).contains("The best of ");
        return again;
    }

    private static String[] words(Path from, Path scoring, Path output, String... more) {
        var words = new ArrayList<>(List.of(
                "rank", "--from", from.toString(), "--scoring", scoring.toString(), "--output", output.toString()));
        words.addAll(List.of(more));
        return words.toArray(String[]::new);
    }

    private static void rank(String name, String... more) {
        var words = new ArrayList<>(List.of(
                "rank",
                "--columns",
                "all",
                "--formats",
                "geopackage,csv,geojson,shapefile",
                "--config",
                CONFIG.toString(),
                "--formats",
                "csv,geopackage",
                "--output",
                runs.resolve(name).toString()));
        words.addAll(List.of(more));
        CommandRun ranked = CommandRun.of(words.toArray(String[]::new));
        assertThat(ranked.exitCode()).as(ranked.err()).isZero();
    }
}
