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

/** {@code connect} over a street where each section is another case, from the inputs to the files. */
class ConnectCommandTest {
    private static final ObjectMapper JSON = new ObjectMapper().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);
    private static final String HEADER = "name,from,to,cables,value,needed_by,must\n";

    @TempDir
    static Path runs;

    @TempDir
    Path folder;

    private static Map<String, List<Byte>> before;

    @BeforeAll
    static void makeRuns() {
        Path config = StreetOfCases.write(runs);
        StreetOfCases.rank(config, runs.resolve("full"));
        StreetOfCases.rank(
                config, runs.resolve("csv"), "--formats", "csv", "--no-uncertainty", "--where", "length_m > 1000");
        StreetOfCases.rank(config, runs.resolve("us"), "--units", "us");
        before = StreetOfCases.bytes(runs);
    }

    private CommandRun connect(String run, String table, String... options) throws IOException {
        Path file = Files.writeString(folder.resolve("table.csv"), table);
        var args = new ArrayList<>(List.of(
                "connect",
                runs.resolve(run).toString(),
                "--connections",
                file.toString(),
                "--iterations",
                "200",
                "--output",
                folder.resolve("out").toString(),
                "--overwrite"));
        args.addAll(List.of(options));
        return CommandRun.of(args.toArray(String[]::new));
    }

    private CSVRecord result(String name) {
        return csv(folder.resolve("out").resolve("connections.csv")).stream()
                .filter(row -> row.get("name").equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** Two that share the last section, one that needs none of it, and rows that cannot be used. */
    @ParameterizedTest
    @ValueSource(strings = {"full", "csv"})
    void connectionsShareWhatIsRecovered(String run) throws IOException {
        CommandRun found = connect(
                run,
                HEADER
                        + "a,V9,V10,4,,2027-01-01,\nb,V10,V8,2,,,yes\nc,V6,V7,1,,2030-01-01,\nself,V1,V1,1,,,\nold,V0-OLD,V1,1,,,\n"
                        + "gap,V0,W1,1,,,\nmany,V0,V10,99,,,\nnear,V01,V1,1,,,\nbad,V0,V1,x,,,\n");

        assertThat(found.exitCode()).as(found.err()).isZero();
        assertThat(found.out())
                .contains("3 of 9 connections served; recovery and new build cost")
                .contains("No plan costs less than")
                .containsPattern("a +4 .* late: needed by 2027-01-01")
                .contains("Not served:")
                .doesNotContain("NaN", "Infinity", "late: needed by 2030");
        assertThat(result("a").get("shared_with")).isEqualTo("b");
        assertThat(result("a").get("on_time")).isEqualTo("false");
        assertThat(result("c").get("on_time")).isEqualTo("true");
        assertThat(result("c").get("cost_share_money")).isEqualTo("0.00");
        assertThat(result("self").get("why_not")).isEqualTo("it connects vault V1 to itself");
        assertThat(result("old").get("why_not"))
                .startsWith("no span of the run ends at vault V0-OLD: it is ")
                .endsWith("from vault V0 and was treated as that vault; name that vault");
        assertThat(result("near").get("why_not")).isEqualTo("no span of the run ends at vault V01; did you mean V0?");
        assertThat(result("gap").get("why_not")).contains("no sections join its vaults; the gap is narrowest between");
        assertThat(result("many").get("why_not")).contains("no way takes 99 cables in one duct");
        assertThat(result("bad").get("why_not")).contains("cables is 'x'");
        double total = csv(folder.resolve("out").resolve("connections.csv")).stream()
                .filter(row -> row.get("served").equals("true"))
                .mapToDouble(row -> Double.parseDouble(row.get("cost_share_money")))
                .sum();
        JsonNode account = JSON.readTree(Files.readString(folder.resolve("out").resolve("connect.json")));
        assertThat(account.get("cost_money").asDouble()).isCloseTo(total, org.assertj.core.api.Assertions.within(0.03));
        assertThat(account.get("bound_money").asDouble())
                .isLessThanOrEqualTo(account.get("cost_money").asDouble() + 0.01);
        assertThat(account.get("not_served")).hasSize(6);
        assertThat(account.get("not_served").get(0).get("line").asInt()).isEqualTo(5);
        assertThat(StreetOfCases.bytes(runs)).isEqualTo(before);
    }

    /** What is only a new build: a must is served, no value is not, a value below the cost is not, one above is. */
    @Test
    void onlyWhatIsWorthItIsServedAndEveryMust() throws IOException {
        CommandRun found = connect(
                "full",
                HEADER
                        + "must,V1,V2,1,,,yes\nnone,V2,V3,1,,,\nlow,V3,V4,1,10,,no\nhigh,V4,V5,1,9999999,,\nfree,V6,V7,1,,,\n",
                "--serve",
                "worth",
                "--json");

        assertThat(found.exitCode()).as(found.err()).isZero();
        JsonNode json = JSON.readTree(found.out());
        assertThat(json.get("version").asText()).isNotEmpty();
        assertThat(json.get("connections_served").asInt()).isEqualTo(3);
        assertThat(json.get("value_not_served_money").asDouble()).isEqualTo(10);
        assertThat(result("must").get("served")).isEqualTo("true");
        assertThat(result("none").get("why_not")).endsWith(" in addition, and the table gives it no value");
        assertThat(result("low").get("why_not")).endsWith(" in addition, more than its value of 10");
        assertThat(Double.parseDouble(result("low").get("least_money"))).isGreaterThan(10);
        assertThat(result("high").get("served")).isEqualTo("true");
        assertThat(result("free").get("cost_share_money")).isEqualTo("0.00");
    }

    @Test
    void aThousandRowsAndTheSameResultWhateverTheThreads() throws IOException {
        var table = new StringBuilder(HEADER);
        for (int row = 0; row < 1000; row++) {
            String to = row % 7 == 0 ? "X" + row : "V" + (row * 3 + 1) % 11;
            table.append("r")
                    .append(row)
                    .append(",V")
                    .append(row % 11)
                    .append(',')
                    .append(to)
                    .append(",1,100,,\n");
        }
        CommandRun one = connect("full", table.toString(), "--serve", "worth", "--threads", "1", "--json");
        List<CSVRecord> rows = csv(folder.resolve("out").resolve("connections.csv"));
        CommandRun two = connect("full", table.toString(), "--serve", "worth", "--threads", "2", "--json");

        assertThat(one.exitCode()).as(one.err()).isZero();
        assertThat(two.out()).isEqualTo(one.out());
        assertThat(rows)
                .hasSize(1000)
                .allSatisfy(row -> assertThat(row.get("served").equals("true"))
                        .as(row.get("name"))
                        .isNotEqualTo(!row.get("why_not").isEmpty()));
        CommandRun shown = connect("full", table.toString(), "--serve", "worth");
        assertThat(shown.out().lines()).hasSizeLessThan(110);
        assertThat(shown.out()).containsPattern("and \\d+ more, in the results");
    }

    @Test
    void theScreenIsInTheUnitsOfTheRun() throws IOException {
        assertThat(connect("us", HEADER + "a,V9,V10,4,,,\n").out())
                .contains("length ft")
                .doesNotContain("length m")
                .containsPattern("a +4 +28\\d\\.\\d ");
    }

    @Test
    void ignoredGatesOpenRecovery() throws IOException {
        String table = HEADER + "a,V6,V7,9,,,\n";
        assertThat(connect("full", table).out()).contains("0 ducts recovered, 1 new duct built.");
        assertThat(connect("full", table, "--ignore-gate", "splice_inside").out())
                .contains("1 duct recovered, 0 new ducts built.");
        assertThat(result("a").get("feasible_chance_pct")).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "name,from,to,cable~a,V0,V1,1 | the column 'cables' is missing; is it 'cable'?",
                "name,from,to,cables          | the table of connections has no rows",
                "~                            | has no rows"
            })
    void aTableThatIsNoneEndsInOneLine(String table, String expected) throws IOException {
        CommandRun found = connect("full", table.replace('~', '\n'));

        assertThat(found.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(found.complaint()).contains("table.csv").containsAnyOf(expected, "is empty");
        assertThat(found.complaint().lines()).hasSize(1);
        assertThat(folder.resolve("out")).doesNotExist();
    }

    /** The results hold a file of the name that tables often have: a table there must not be replaced by what is made of it. */
    @Test
    void neitherTheRunNorTheTableIsReplaced() throws IOException {
        assertThat(connect("full", HEADER + "a,V9,V10,1,,,\n").exitCode()).isZero();
        Path table = folder.resolve("out").resolve("connections.csv");
        Files.writeString(table, HEADER + "mine,V9,V10,1,,,\n");

        for (Path output : List.of(
                folder.resolve("out"),
                folder,
                runs.resolve("full"),
                runs.resolve("full").resolve("x"))) {
            CommandRun found = CommandRun.of(
                    "connect",
                    runs.resolve("full").toString(),
                    "--connections",
                    table.toString(),
                    "--output",
                    output.toString(),
                    "--overwrite");
            assertThat(found.exitCode()).as(output.toString()).isEqualTo(ExitCode.USAGE);
            assertThat(found.complaint()).contains("--output");
        }
        assertThat(table).content().contains("mine");
        assertThat(StreetOfCases.bytes(runs)).isEqualTo(before);
    }

    @Test
    void wrongWordsAreUsageErrors() throws IOException {
        assertThat(connect("full", HEADER, "--serve", "worthy").exitCode()).isEqualTo(ExitCode.USAGE);
        assertThat(connect("full", HEADER, "--ignore-gate", "embargos").err()).contains("did you mean 'embargo'?");
        assertThat(connect("full", HEADER, "--iterations", "0").exitCode()).isEqualTo(ExitCode.USAGE);
    }
}
