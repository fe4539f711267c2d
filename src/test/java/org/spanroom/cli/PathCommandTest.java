package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.spanroom.cli.StreetOfCases.csv;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code path} over a street where each section is another case, from the inputs to the files. */
class PathCommandTest {
    private static final ObjectMapper JSON = new ObjectMapper().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);

    @TempDir
    static Path runs;

    @TempDir
    Path folder;

    private static Map<String, List<Byte>> before;

    @BeforeAll
    static void makeRuns() {
        Path config = StreetOfCases.write(runs);
        StreetOfCases.rank(config, runs.resolve("full"));
        StreetOfCases.rank(config, runs.resolve("csv"), "--formats", "csv");
        StreetOfCases.rank(config, runs.resolve("filtered"), "--where", "length_m > 1000");
        StreetOfCases.rank(config, runs.resolve("unsimulated"), "--no-uncertainty");
        StreetOfCases.rank(config, runs.resolve("us"), "--units", "us");
        CommandRun again = CommandRun.of(
                "rank",
                "--from",
                runs.resolve("full").toString(),
                "--scoring",
                Path.of("config", "scoring.yaml").toString(),
                "--output",
                runs.resolve("rescored").toString());
        assertThat(again.exitCode()).as(again.err()).isZero();
        before = StreetOfCases.bytes(runs);
    }

    private CommandRun path(String run, String from, String to, Object... options) {
        var args = new ArrayList<>(List.of(
                "path",
                runs.resolve(run).toString(),
                "--from",
                from,
                "--to",
                to,
                "--output",
                folder.resolve("path").toString(),
                "--overwrite"));
        for (Object option : options) {
            args.add(option.toString());
        }
        return CommandRun.of(args.toArray(String[]::new));
    }

    private List<CSVRecord> steps() {
        return csv(folder.resolve("path").resolve("path_sections.csv"));
    }

    /** The way through one case: how, and over which duct. */
    private String through(String run, String name, int cables, Object... options) {
        int number = StreetOfCases.CASES.indexOf(name);
        var words = new ArrayList<Object>(List.of("--cables", cables));
        words.addAll(List.of(options));
        CommandRun found = path(run, "V" + number, "V" + (number + 1), words.toArray());
        assertThat(found.exitCode()).as(found.err()).isZero();
        CSVRecord step = steps().get(0);
        return (step.get("action") + " " + step.get("span_id").split(":", -1)[0]).strip();
    }

    private static int positions(String duct, String column) {
        return csv(runs.resolve("full").resolve("spans.csv")).stream()
                .filter(row -> row.get("duct").equals(duct))
                .mapToInt(row -> Integer.parseInt(row.get(column)))
                .findFirst()
                .orElseThrow();
    }

    /** Excluded, and three innerducts are empty: a gate closes recovery, not use. In the others nothing can be placed, or may be. */
    @ParameterizedTest
    @CsvSource({
        "spliced, free spliced",
        "collapsed, build",
        "blocked, build",
        "refused, build",
        "unknown, build",
        "buried, build",
        "plain, recover plain"
    })
    void anExcludedSpanGivesItsPositionsOfTodayUnlessNothingCanBePlacedInIt(String name, String expected) {
        int cables = name.equals("plain") ? positions("plain", "positions_now") + 1 : 1;

        assertThat(through("full", name, cables)).isEqualTo(expected);
        assertThat(through("csv", name, cables)).isEqualTo(expected);
        assertThat(through("filtered", name, cables)).isEqualTo(expected);
        assertThat(through("rescored", name, cables)).isEqualTo(expected);
        assertThat(through("unsimulated", name, cables)).isEqualTo(expected);
    }

    /** The empty duct first; more cables than it takes open the recovery of the duct beside it, which the run excludes. */
    @Test
    void recoveryBesideAnEmptyDuctOpensOnceThatDoesNotTakeTheCables() {
        int empty = positions("E", "positions_now");
        assertThat(csv(runs.resolve("full").resolve("spans.csv")))
                .filteredOn(row -> row.get("duct").equals("R"))
                .extracting(row -> row.get("exclusion"))
                .containsExactly("empty_duct_in_bank");

        assertThat(through("full", "empty", 1)).isEqualTo("free E");
        assertThat(through("full", "empty", empty)).isEqualTo("free E");
        assertThat(through("full", "empty", empty + 1)).isEqualTo("recover R");
        assertThat(steps().get(0).get("rank")).isEmpty();
        assertThat(Double.parseDouble(steps().get(0).get("cost_money"))).isPositive();
        assertThat(csv(folder.resolve("path").resolve("paths.csv")).get(0).get("feasible_chance_pct"))
                .isNotEmpty();
    }

    /** Work begins the day after the embargo, later than its permits. */
    @Test
    void anEmbargoIsADayAndNoExclusion() {
        int cables = positions("embargo", "positions_now") + 1;

        assertThat(through("full", "embargo", cables)).isEqualTo("recover embargo");
        assertThat(csv(folder.resolve("path").resolve("paths.csv")).get(0).get("earliest_day"))
                .isEqualTo("2027-07-01");
        assertThat(through("full", "embargo", cables, "--ignore-gate", "embargo"))
                .isEqualTo("recover embargo");
        assertThat(csv(folder.resolve("path").resolve("paths.csv")).get(0).get("earliest_day"))
                .isLessThan("2027-07-01");
    }

    /** Three innerducts are empty and two positions are promised: the same duct without the promise gives exactly two more. */
    @Test
    void reservedPositionsAreNotGivenAway() {
        int open = positions("spliced", "positions_now");
        int left = positions("reserved", "positions_now");

        assertThat(left).isEqualTo(open - 2);
        assertThat(through("full", "spliced", open)).isEqualTo("free spliced");
        assertThat(through("full", "reserved", left)).isEqualTo("free reserved");
        assertThat(through("full", "reserved", left + 1)).isEqualTo("build");
    }

    /** The recovery of a span that a gate excludes for good was not simulated: its chance is empty, not zero. */
    @Test
    void anIgnoredGateOpensRecoveryForAWhatIf() {
        int cables = positions("spliced", "positions_now") + 1;

        assertThat(through("full", "spliced", cables)).isEqualTo("build");
        assertThat(through("full", "spliced", cables, "--ignore-gate", "splice_inside"))
                .isEqualTo("recover spliced");
        assertThat(csv(folder.resolve("path").resolve("paths.csv")).get(0).get("feasible_chance_pct"))
                .isEmpty();
        assertThat(through("full", "refused", 1, "--ignore-gate", "splice_inside,owner_consent_missing"))
                .isEqualTo("free refused");
    }

    @ParameterizedTest
    @ValueSource(strings = {"full", "csv", "filtered", "rescored", "unsimulated"})
    void theWholeStreetIsOneWayWhateverTheRunWrote(String run) throws IOException {
        CommandRun found = path(run, "V0", "V10", "--cables", 1, "--json");

        assertThat(found.exitCode()).as(found.err()).isZero();
        JsonNode json = JSON.readTree(found.out());
        assertThat(json.get("command").asText()).isEqualTo("path");
        assertThat(json.get("version").asText()).isNotEmpty();
        JsonNode way = json.get("ways").get(0);
        assertThat(way.get("steps")).hasSize(10);
        assertThat(way.get("length_m").asDouble()).isBetween(840.0, 870.0);
        assertThat(way.get("feasible_chance_pct").isNull()).isEqualTo(run.equals("unsimulated"));
        assertThat(way.get("cost_low_money").asDouble()).isPositive();
        assertThat(json.get("files")).hasSize(4);
        assertThat(steps())
                .hasSize(10)
                .allSatisfy(row -> assertThat(row.get("way")).isEqualTo("1"));
        assertThat(folder.resolve("path").resolve("path.gpkg")).isRegularFile();
        assertThat(StreetOfCases.bytes(runs)).isEqualTo(before);
    }

    @Test
    void theScreenIsInTheUnitsOfTheRun() {
        CommandRun us = path("us", "V0", "V10", "--cables", 1);
        CommandRun metric = path("full", "V0", "V10", "--cables", 1);
        CommandRun gap = path("us", "V0", "W0", "--cables", 1);

        assertThat(us.out()).contains("length ft").doesNotContain("length m").containsPattern("\\b2,8\\d\\d\\.\\d\\b");
        assertThat(metric.out()).contains("length m").doesNotContain(" ft");
        assertThat(gap.err()).containsPattern("1,82\\d ft apart");
    }

    @Test
    void aGapSaysWhereItIs() {
        CommandRun found = path("full", "V10", "W1", "--cables", 1);

        assertThat(found.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(found.complaint())
                .contains("no sections join vault V10 and vault W1; the gap is narrowest between vault V")
                .containsPattern("and vault W[01], 55\\d m apart");
        assertThat(folder.resolve("path")).doesNotExist();
    }

    /** A loop joins nothing, and its vault is known nevertheless. */
    @Test
    void aLoopIsNoSection() {
        assertThat(csv(runs.resolve("full").resolve("spans.csv")))
                .filteredOn(row -> row.get("exclusion").equals("loop"))
                .hasSize(2);
        CommandRun found = path("full", "L", "V0", "--cables", 1);
        assertThat(found.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(found.complaint())
                .containsPattern("the gap is narrowest between vault L and vault V10, 85\\d m apart");
    }

    @Test
    void moreCablesThanAnyDuctTakesSaysHowManyGo() {
        CommandRun found = path("full", "V0", "V10", "--cables", 99);

        assertThat(found.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(found.complaint()).containsPattern("takes 99 cables in one duct; at most \\d+ can go together");
        assertThat(found.complaint().lines()).hasSize(1);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "V0     | v11    | 3 | no span of the run ends at the vault 'v11' of --to. Name a vault as in the columns vault_a and vault_b; the nearest names are V1, V10, V0.",
                "V0-OLD | V1     | 3 | was treated as that vault. Name that vault.",
                "V1     | V0-OLD | 3 | from vault V0 and was treated as that vault",
                "V1     | V1     | 2 | --from and --to name the same vault, V1"
            })
    void wrongVaultsEndInOneHelpfulLine(String from, String to, int exitCode, String expected) {
        for (String run : List.of("full", "csv")) {
            CommandRun found = path(run, from, to, "--cables", 1);

            assertThat(found.exitCode()).isEqualTo(exitCode);
            assertThat(found.complaint()).contains(expected);
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--cables     | 0            | '0' is not a whole number from 1 to 10000",
                "--cables     | 1.5          | '1.5' is not a whole number",
                "--objective  | costs        | did you mean 'cost'?",
                "--objective  | cost=x       | 'cost=x' is not a word with a weight, such as days=200",
                "--objective  | cost=1,cost=2| 'cost' has two weights",
                "--objective  | cost=-1      | weights must be 0 or more, and one of them more than 0",
                "--objective  | days=NaN     | weights must be 0 or more",
                "--ignore-gate| pull_fail    | did you mean 'pull_fails'?",
                "--ignore-gate| zzzzzzzzzzzz | the gates are",
                "--alternatives| 0           | '0' is not a whole number from 1 to 1000"
            })
    void wrongWordsAreUsageErrors(String option, String word, String expected) {
        CommandRun found = option.equals("--cables")
                ? path("full", "V0", "V1", option, word)
                : path("full", "V0", "V1", "--cables", 1, option, word);

        assertThat(found.exitCode()).as(found.err()).isEqualTo(ExitCode.USAGE);
        assertThat(found.err()).contains(expected);
    }

    @Test
    void aChanceThatIsNotKnownIsNoObjective() {
        CommandRun found = path("unsimulated", "V0", "V1", "--cables", 1, "--objective", "cost=1,chance=9");

        assertThat(found.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(found.complaint()).contains("the chance of a way is not known");
    }

    /** Equal to the folder of the run, inside it, around it, or by a link; with and without leave to replace. */
    @Test
    void theFolderOfTheRunIsNeverWritten() throws IOException {
        Path run = runs.resolve("full");
        Path link = Files.createSymbolicLink(folder.resolve("link"), run);

        for (Path output :
                List.of(run, run.resolve("path"), run.resolve("a/../b/c"), link.resolve("x"), runs, run.resolve("."))) {
            for (String overwrite : List.of("--overwrite", "--quiet")) {
                CommandRun found = CommandRun.of(
                        "path",
                        run.toString(),
                        "--from",
                        "V0",
                        "--to",
                        "V1",
                        "--cables",
                        "1",
                        "--output",
                        output.toString(),
                        overwrite);
                assertThat(found.exitCode()).as(output.toString()).isEqualTo(ExitCode.USAGE);
                assertThat(found.complaint()).contains("the folder of the run");
            }
        }
        assertThat(StreetOfCases.bytes(runs)).isEqualTo(before);
    }

    @Test
    void earlierResultsAreReplacedOnlyWithLeaveAndOnlyWhatIsOurs() throws IOException {
        Path output = folder.resolve("path");
        String[] args = {
            "path",
            runs.resolve("full").toString(),
            "--from",
            "V0",
            "--to",
            "V1",
            "--cables",
            "1",
            "--output",
            output.toString()
        };
        assertThat(CommandRun.of(args).exitCode()).isZero();
        CommandRun second = CommandRun.of(args);
        assertThat(second.exitCode()).isEqualTo(ExitCode.OUTPUT);
        assertThat(second.complaint()).contains("--overwrite");
        assertThat(path("full", "V1", "V2", "--cables", 1).exitCode()).isZero();

        Files.writeString(output.resolve("mine.txt"), "mine");
        assertThat(path("full", "V0", "V1", "--cables", 1).exitCode()).isEqualTo(ExitCode.OUTPUT);
        assertThat(output.resolve("mine.txt")).hasContent("mine");
    }

    @Test
    void aFolderWithoutARunIsNamed() {
        CommandRun found = path("nowhere", "V0", "V1", "--cables", 1);

        assertThat(found.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(found.complaint()).contains("the folder holds no run (no run.json)");
    }
}
