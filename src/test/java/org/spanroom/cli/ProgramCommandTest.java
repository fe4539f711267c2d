package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanroom.cli.StreetOfCases.csv;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.zip.GZIPInputStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ProgramConfigReader;
import org.spanroom.pipeline.ProgramFileChecker;
import org.spanroom.pipeline.ProgramRun;
import org.spanroom.pipeline.Progress;
import org.spanroom.testing.FolderState;

/** {@code program} over an invented town, from a run to the files: laws that any good plan keeps, and what is said where there is none. */
class ProgramCommandTest {
    private static final ObjectMapper JSON = new ObjectMapper().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);
    private static final String QUICK = "curve,prices,draws";
    private static final String MUST = "H11-1:V11:V12";
    private static final String MUST_NOT = "U03-2:V03:V13";

    private static final String CREWS = """
            first_day: 2027-02-01
            crews:
              - {name: Early, shifts_per_week: 4, shift_hours: 7.5, shifts: days}
              - {name: Late, shifts_per_week: 4, shift_hours: 7.5, shifts: either}
            stop_windows:
              - {name: summer, from: 07-01, until: 07-31, zone_kinds: []}
            """;

    private static final String WHOLE = CREWS + """
            years: [{money: 45000}, {money: 30000}]
            change_freezes:
              - {name: freeze, from: 2027-02-01, until: 2028-01-31, least_circuits: 24}
            district: src_inspector
            most_in_work: {Ida: 1}
            totals_by: [owner, src_inspector]
            must: ['H11-1:V11:V12']
            must_not: ['U03-2:V03:V13']
            """;

    private static final String CONNECTIONS = """
            name,from,to,cables,value,needed_by,must
            north,V00,V21,3,40000,2027-12-31,yes
            east,V03,V23,2,9000,2028-12-31,
            early,V00,V03,2,9000,2027-01-10,
            lost,V00,X9,2,9000,,
            """;

    @TempDir
    static Path runs;

    @TempDir
    Path folder;

    private static Path run;
    private static Path whole;
    private static CommandRun made;
    private static Map<String, String> before;

    @BeforeAll
    static void makeProgram() throws IOException {
        Path inputs = Files.createDirectory(runs.resolve("town"));
        run = StreetOfCases.rank(ProgramTown.write(inputs), runs.resolve("run"));
        before = FolderState.of(run);
        Path config = Files.writeString(runs.resolve("program.yaml"), WHOLE + "connections: table.csv\n");
        Files.writeString(runs.resolve("table.csv"), CONNECTIONS);
        whole = runs.resolve("whole");
        made = program(config, whole, "--draws", "2");
        assertThat(made.exitCode()).as(made.err()).isZero();
    }

    @AfterAll
    static void theRunIsUnchanged() {
        assertThat(FolderState.of(run)).isEqualTo(before);
    }

    private static CommandRun program(Path config, Path output, String... options) {
        var args = new ArrayList<>(
                List.of("program", run.toString(), "--config", config.toString(), "--output", output.toString()));
        args.addAll(List.of(options));
        return CommandRun.of(args.toArray(String[]::new));
    }

    private CommandRun program(String config, String... options) throws IOException {
        var all = new ArrayList<>(List.of("--skip", QUICK, "--overwrite"));
        all.addAll(List.of(options));
        return program(
                Files.writeString(folder.resolve("program.yaml"), config),
                folder.resolve("out"),
                all.toArray(String[]::new));
    }

    private Map<String, Integer> years() {
        return years(folder.resolve("out"));
    }

    /** Returns the year of each span of a program. */
    private static Map<String, Integer> years(Path program) {
        var years = new TreeMap<String, Integer>();
        csv(program.resolve("program.csv")).forEach(row -> years.put(row.get("span_id"), whole(row, "year")));
        return years;
    }

    private static int whole(CSVRecord row, String column) {
        return Integer.parseInt(row.get(column));
    }

    private static double number(CSVRecord row, String column) {
        return row.get(column).isEmpty() ? 0 : Double.parseDouble(row.get(column));
    }

    /** Returns the rows of all spans of the run, by their names. */
    private static Map<String, CSVRecord> spans() {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (var in = new GZIPInputStream(Files.newInputStream(run.resolve("run_spans.csv.gz")));
                var parser = format.parse(new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8)))) {
            var rows = new HashMap<String, CSVRecord>();
            parser.forEach(row -> rows.put(row.get("span_id"), row));
            return rows;
        } catch (IOException failure) {
            throw new AssertionError(failure);
        }
    }

    /** What the calendar has to keep, from the config above and the run's own file. */
    private static ProgramFileChecker.Inputs limits() {
        Map<String, List<ProgramFileChecker.Days>> closures = new HashMap<>();
        Map<String, Integer> leadDays = new HashMap<>();
        Map<String, String> districts = new HashMap<>();
        spans().forEach((span, row) -> {
            var closed = new ArrayList<ProgramFileChecker.Days>();
            if (!row.get("embargo_until").isEmpty()) {
                closed.add(new ProgramFileChecker.Days(LocalDate.MIN, LocalDate.parse(row.get("embargo_until"))));
            }
            if (row.get("zone_kinds").contains("event")) {
                closed.add(new ProgramFileChecker.Days(LocalDate.of(2027, 3, 1), LocalDate.of(2027, 10, 31)));
            }
            if (number(row, "circuits_at_risk") >= 24) {
                closed.add(new ProgramFileChecker.Days(LocalDate.of(2027, 2, 1), LocalDate.of(2028, 1, 31)));
            }
            closures.put(span, closed);
            leadDays.put(span, Math.max(10, (int) number(row, "recovery_lead_days")));
            districts.put(span, row.get("src_inspector"));
        });
        return new ProgramFileChecker.Inputs(
                LocalDate.parse(ProgramTown.ON_DATE),
                List.of(new ProgramFileChecker.Crew("Early", 4, 7.5), new ProgramFileChecker.Crew("Late", 4, 7.5)),
                List.of(
                        new ProgramFileChecker.Days(LocalDate.of(2027, 7, 1), LocalDate.of(2027, 7, 31)),
                        new ProgramFileChecker.Days(LocalDate.of(2028, 7, 1), LocalDate.of(2028, 7, 31))),
                closures,
                leadDays,
                districts,
                Map.of("Ida", 1));
    }

    @Test
    void allFilesAreWritten() {
        assertThat(FolderState.names(whole))
                .contains(
                        "program.gpkg",
                        "program.csv",
                        "program_vaults.csv",
                        "new_ducts.csv",
                        "program_connections.csv",
                        "reserve.csv",
                        "totals.csv",
                        "curve.csv",
                        "prices.csv",
                        "program.json",
                        "program.ics");
        assertThat(made.out())
                .contains("connections served:", "What budgets buy", "What each condition costs", "Reserve: ")
                .doesNotContain("NaN", "Infinity", "null");
        assertThat(csv(whole.resolve("program.csv"))).isNotEmpty();
    }

    /** V01, V11 and V21 had gas; the surface of none is recorded. */
    @Test
    void vaultsStandOnceWithTheFactsOfTheRun() {
        List<CSVRecord> rows = csv(whole.resolve("program_vaults.csv"));

        assertThat(rows).isNotEmpty().extracting(row -> row.get("vault")).doesNotHaveDuplicates();
        for (CSVRecord row : rows) {
            boolean gas = row.get("vault").endsWith("1");
            int place = row.get("vault").charAt(1) - '0' + row.get("vault").charAt(2) - '0';
            assertThat(row.get("depth_m")).isEqualTo("2.40");
            assertThat(row.get("gas_found")).isEqualTo(Boolean.toString(gas));
            assertThat(row.get("inspected_on")).isEqualTo("2025-0" + (1 + place) + "-17");
            assertThat(row.get("forced_air")).isEqualTo(gas ? "true" : "");
            assertThat(row.get("forced_air_why")).isEqualTo(gas ? "gas_found" : "surface_not_recorded");
            assertThat(row.get("air_retest_hours")).isEqualTo("8.0");
            assertThat(row.get("purge_minutes")).isEmpty();
        }
    }

    @Test
    void theCalendarHoldsByItsFileAlone() throws IOException {
        assertThat(ProgramFileChecker.problems(Files.readString(whole.resolve("program.csv")), limits()))
                .isEmpty();
        for (CSVRecord row : csv(whole.resolve("program.csv"))) {
            LocalDate first = LocalDate.parse(row.get("first_day"));
            assertThat(whole(row, "year")).isEqualTo(first.isBefore(LocalDate.of(2028, 2, 1)) ? 1 : 2);
            if (!row.get("field_check").isEmpty()) {
                assertThat(LocalDate.parse(row.get("check_by")))
                        .isBeforeOrEqualTo(first.minusDays(14))
                        .isAfterOrEqualTo(LocalDate.parse(ProgramTown.ON_DATE));
            }
        }
    }

    /** Sums of the file are within the budgets, and each amount follows from the run's own amounts. */
    @Test
    void eachYearKeepsItsBudgetByItsFilesAlone() {
        Map<String, CSVRecord> spans = spans();
        double[] spent = new double[2];
        double[] hours = new double[2];
        for (CSVRecord row : csv(whole.resolve("program.csv"))) {
            CSVRecord span = spans.get(row.get("span_id"));
            assertThat(span).isNotNull();
            double ratio = number(span, "recovery_likely_money") / number(span, "recovery_money");
            double sharedMoney = number(row, "shared_hours") * number(span, "site_hour_money");
            if (!span.get("recovery_likely_money").isEmpty()) {
                assertThat(number(row, "budget_money"))
                        .isCloseTo(number(span, "recovery_likely_money") - ratio * sharedMoney, within(2.0));
            }
            assertThat(number(row, "cost_money")).isCloseTo(number(span, "recovery_money") - sharedMoney, within(2.0));
            assertThat(number(row, "site_hours"))
                    .isCloseTo(number(span, "site_hours") - number(row, "shared_hours"), within(0.02));
            assertThat(whole(row, "positions")).isEqualTo(whole(span, "positions_gained"));
            spent[whole(row, "year") - 1] += number(row, "budget_money");
            hours[whole(row, "year") - 1] += number(row, "site_hours");
        }
        for (CSVRecord row : csv(whole.resolve("new_ducts.csv"))) {
            spent[whole(row, "year") - 1] += number(row, "budget_money");
        }
        assertThat(spent[0]).isLessThanOrEqualTo(45_000.01);
        assertThat(spent[1]).isLessThanOrEqualTo(30_000.01);
        for (CSVRecord row : csv(whole.resolve("totals.csv"))) {
            if (!row.get("year").isEmpty() && row.get("column").isEmpty()) {
                assertThat(number(row, "site_hours")).isCloseTo(hours[whole(row, "year") - 1], within(0.2));
            }
        }
    }

    @Test
    void mustsAreInItAndEachEligibleSpanIsInOneOfTheLists() {
        Map<String, Integer> years = years(whole);
        var reserve = new ArrayList<String>();
        csv(whole.resolve("reserve.csv")).forEach(row -> {
            reserve.add(row.get("span_id"));
            assertThat(row.get("why_not")).isNotEmpty();
        });

        assertThat(years).containsKey(MUST).doesNotContainKeys(MUST_NOT, "H02-1:V02:V03");
        assertThat(reserve)
                .doesNotHaveDuplicates()
                .doesNotContain(MUST_NOT, "H02-1:V02:V03")
                .doesNotContainAnyElementsOf(years.keySet());
        assertThat(years.size() + reserve.size()).isEqualTo(34 - 2);
        assertThat(csv(whole.resolve("program.csv")))
                .allSatisfy(row -> assertThat(row.get("why")).isNotEmpty());
    }

    @Test
    void connectionsSayWhetherTheyAreServed() {
        Map<String, Integer> years = years(whole);
        Map<String, CSVRecord> rows = new HashMap<>();
        csv(whole.resolve("program_connections.csv")).forEach(row -> rows.put(row.get("name"), row));

        assertThat(rows.keySet()).containsExactlyInAnyOrder("north", "east", "early", "lost");
        CSVRecord north = rows.get("north");
        assertThat(north.get("served_year")).isEqualTo("1");
        assertThat(north.get("on_time")).isEqualTo("true");
        assertThat(rows.get("early").get("why_not"))
                .isEqualTo("needed by 2027-01-10, before the program begins on 2027-02-01");
        assertThat(rows.get("lost").get("why_not")).startsWith("no span of the run ends at vault X9");
        for (CSVRecord row : rows.values()) {
            assertThat(row.get("served_year").isEmpty())
                    .isNotEqualTo(row.get("why_not").isEmpty());
            for (String span : row.get("recover_spans").isEmpty()
                    ? List.<String>of()
                    : List.of(row.get("recover_spans").split(";"))) {
                assertThat(years).containsKey(span);
                assertThat(years.get(span)).isLessThanOrEqualTo(whole(row, "served_year"));
            }
        }
    }

    @Test
    void theAccountAgreesWithTheTables() throws IOException {
        JsonNode account = JSON.readTree(Files.readString(whole.resolve("program.json")));

        assertThat(account.get("spans").asInt()).isEqualTo(years(whole).size());
        assertThat(account.get("connections").asInt()).isEqualTo(4);
        assertThat(account.get("value_money").asDouble())
                .isLessThanOrEqualTo(account.get("bound_money").asDouble() + 0.01);
        assertThat(account.get("gap_pct").asDouble()).isBetween(0.0, 100.0);
        assertThat(account.get("years")).hasSize(2);
        account.get("years")
                .forEach(year -> assertThat(year.get("spent_money").asDouble())
                        .isLessThanOrEqualTo(year.get("budget_money").asDouble() + 0.01));
        account.get("files").forEach(file -> assertThat(Path.of(file.asText())).isRegularFile());
    }

    @Test
    void budgetsThatGrowBuyNoLessByTheCurve() {
        List<CSVRecord> curve = csv(whole.resolve("curve.csv"));

        assertThat(curve).isNotEmpty();
        for (CSVRecord row : curve) {
            assertThat(number(row, "spent_money")).isLessThanOrEqualTo(number(row, "budget_money") + 0.01);
            // With connections no bound is calculated for the points of the curve.
            assertThat(row.get("bound_money")).isEmpty();
            assertThat(number(row, "value_money")).isPositive();
        }
        assertThat(number(curve.get(curve.size() - 1), "value_money"))
                .isGreaterThan(number(curve.get(0), "value_money"));
        assertThat(csv(whole.resolve("prices.csv")))
                .extracting(row -> row.get("kind") + " " + row.get("name"))
                .contains(
                        "must " + MUST,
                        "must_not " + MUST_NOT,
                        "stop_window summer",
                        "change_freeze freeze",
                        "needed_by north");
    }

    /** Lines end with CR LF and have at most 75 bytes, each event has a name of its own and a day, and what begins ends. */
    @Test
    void theCalendarFileIsOne() throws IOException {
        String text = Files.readString(whole.resolve("program.ics"));

        assertThat(text.replace("\r\n", "")).doesNotContain("\r", "\n");
        assertThat(text.split("\r\n"))
                .allSatisfy(line ->
                        assertThat(line.getBytes(StandardCharsets.UTF_8).length).isLessThanOrEqualTo(75));
        var open = new ArrayList<String>();
        var names = new ArrayList<String>();
        int events = 0;
        for (String line : text.replace("\r\n ", "").lines().toList()) {
            assertThat(line).matches("[A-Z-]+[;:].*");
            if (line.startsWith("BEGIN:")) {
                open.add(line.substring(6));
                events += line.equals("BEGIN:VEVENT") ? 1 : 0;
            } else if (line.startsWith("END:")) {
                assertThat(open.remove(open.size() - 1)).isEqualTo(line.substring(4));
            } else if (line.startsWith("UID:")) {
                names.add(line);
            } else if (line.startsWith("DTSTART")) {
                assertThat(line).matches("DTSTART;VALUE=DATE:\\d{8}");
            }
        }
        assertThat(open).isEmpty();
        assertThat(names).hasSize(events).doesNotHaveDuplicates();
        assertThat(events).isGreaterThanOrEqualTo(years(whole).size());
    }

    /** Made twice with one thread and once with two, and before by the command; the time that the GeoPackage records is the same here. */
    @Test
    void theSameBytesWhateverTheThreads() throws IOException {
        Path config = Files.writeString(folder.resolve("program.yaml"), WHOLE + "connections: table.csv\n");
        Files.writeString(folder.resolve("table.csv"), CONNECTIONS);
        Path output = folder.resolve("out");
        var states = new ArrayList<Map<String, String>>();
        for (int threads : new int[] {1, 1, 2}) {
            var request = new ProgramRun.Request(
                    ProgramConfigReader.read(config), Optional.of(config), Set.of(), Set.of(), Set.of(), 2, 1, threads);
            new ProgramRun(run, Progress.SILENT).run(request, output, true, Instant.EPOCH);
            states.add(FolderState.of(output));
        }

        assertThat(states.get(1)).isEqualTo(states.get(0));
        assertThat(states.get(2)).isEqualTo(states.get(0));
        for (String table :
                List.of("program.csv", "reserve.csv", "totals.csv", "curve.csv", "prices.csv", "program.ics")) {
            assertThat(output.resolve(table)).hasSameBinaryContentAs(whole.resolve(table));
        }
    }

    @Test
    void withJsonNothingElseIsPrinted() throws IOException {
        CommandRun found = program(CREWS + "years: [{money: 12000}]\n", "--json");

        assertThat(found.exitCode()).as(found.err()).isZero();
        JsonNode json = JSON.readTree(found.out());
        assertThat(json.get("command").asText()).isEqualTo("program");
        assertThat(json.get("version").asText()).isNotEmpty();
        assertThat(json.get("spans").asInt()).isEqualTo(years().size());
        assertThat(json.get("cautions")).isNotEmpty();
    }

    /** A year without money has no work; one without a limit is written as such. */
    @Test
    void aYearWithoutMoneyStaysEmpty() throws IOException {
        CommandRun found = program(CREWS + "years: [{money: 0}, {money: , crew_hours: 11}]\n");

        assertThat(found.exitCode()).as(found.err()).isZero();
        assertThat(years().values()).isNotEmpty().containsOnly(2);
        assertThat(csv(folder.resolve("out").resolve("program.csv")).stream()
                        .mapToDouble(row -> number(row, "site_hours"))
                        .sum())
                .isLessThanOrEqualTo(11.02);
        assertThat(found.out()).contains("no limit").doesNotContain("Infinity", "NaN");
        JSON.readTree(Files.readString(folder.resolve("out").resolve("program.json")));
    }

    /** Only the second crew works nights; without it, work by night is in the reserve with the reason. */
    @Test
    void workByNightNeedsACrewOfNights() throws IOException {
        String days = CREWS.replace("shifts: either", "shifts: days");

        assertThat(program(days + "years: [{money: 30000}]\n").exitCode()).isZero();

        assertThat(csv(folder.resolve("out").resolve("reserve.csv")).stream()
                        .filter(row -> row.get("why_not").equals("no crew works nights"))
                        .map(row -> row.get("span_id")))
                .containsExactlyInAnyOrder("H20-1:V20:V21", "H20-2:V20:V21", "U10-1:V10:V20", "U10-2:V10:V20");
    }

    /** A program that keeps to the one before: what failed goes, what has been done goes, all else keeps its year. */
    /** Nothing in it passes silently: the notes say which years are idle, why, and what to change. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "first_day: 1990-01-01|years 1, 2, 3 (1990-01-01 to 1992-12-31) end before the run date",
                "'stop_windows: [{name: all year, from: 01-01, until: 12-31, zone_kinds: []}]'|is open: stop windows close it (all year)",
                "'stop_windows: [{name: all year, from: 01-01, until: 12-31, zone_kinds: []}]'|has a day in the program; ",
                "'objective: {position_money: 0, served_ratio: 0, saving_ratio: 0, length_money_per_m: 0}'|no span is eligible",
            })
    void anEmptyProgramSaysWhy(String config, String note) throws IOException {
        CommandRun made = program(config, "--skip", QUICK);

        assertThat(made.exitCode()).as(made.err()).isZero();
        assertThat(made.out()).contains("Note: ").contains(note);
    }

    @Test
    void whatFailedGoesAndTheRestKeepsItsYear() throws IOException {
        String config = WHOLE + "connections: table.csv\nprevious: '"
                + whole.toString().replace('\\', '/') + "'\nchange_money: 1000000\n";
        Files.writeString(folder.resolve("table.csv"), CONNECTIONS);
        Map<String, Integer> planned = years(whole);
        String failed = csv(whole.resolve("program.csv")).stream()
                .filter(row ->
                        row.get("year").equals("1") && !row.get("connections").isEmpty())
                .map(row -> row.get("span_id"))
                .findFirst()
                .orElseThrow();

        assertThat(program(config).exitCode()).isZero();
        assertThat(years()).containsAllEntriesOf(planned);
        CommandRun again = program(config, "--failed", failed);
        assertThat(again.exitCode()).as(again.err()).isZero();

        Map<String, Integer> kept = new TreeMap<>(planned);
        kept.remove(failed);
        assertThat(years()).doesNotContainKey(failed).containsAllEntriesOf(kept);
        assertThat(again.out())
                .contains("of the earlier program " + kept.size()
                        + " spans are in the same year, 0 in another year, 1 not any longer; "
                        + (years().size() - kept.size()));
        assertThat(csv(folder.resolve("out").resolve("reserve.csv")))
                .extracting(row -> row.get("span_id"))
                .doesNotContain(failed);
        assertThat(explain(failed, folder.resolve("out"))).contains("not eligible");
    }

    /** Positions of a span that is done are free: a connection of its section is served before any work, at no cost. */
    @Test
    void whatIsDoneServesConnections() throws IOException {
        Path table = Files.writeString(
                folder.resolve("done.csv"), "name,from,to,cables,value,needed_by,must\nc,V10,V11,9,5000,,yes\n");

        CommandRun found = program(
                CREWS + "years: [{money: 12000}]\n", "--done", "H10-2:V10:V11", "--connections", table.toString());

        assertThat(found.exitCode()).as(found.err()).isZero();
        CSVRecord row =
                csv(folder.resolve("out").resolve("program_connections.csv")).get(0);
        assertThat(row.get("served_year")).isEqualTo("1");
        assertThat(row.get("cost_share_money")).isEqualTo("0.00");
        assertThat(row.get("recover_spans")).isEmpty();
        assertThat(years()).doesNotContainKey("H10-2:V10:V11");
    }

    /** Musts that are not served in time have a note each, whatever the reason. */
    @Test
    void mustConnectionsThatAreNotServedInTimeAreNoted() throws IOException {
        Path table = Files.writeString(folder.resolve("musts.csv"), """
                name,from,to,cables,value,needed_by,must
                many,V00,V01,12,40000,2027-06-30,yes
                lost,V00,X9,2,9000,,yes
                early,V10,V11,9,90,2027-01-20,yes
                late,V20,V21,5,90000,2027-02-02,yes
                optional,V00,X9,2,9000,,no
                """);

        CommandRun found = program(
                CREWS.replace("shifts: either", "shifts: days") + "years: [{money: 60000}]\n",
                "--connections",
                table.toString(),
                "--json");

        assertThat(found.exitCode()).as(found.err()).isZero();
        var notes = new ArrayList<String>();
        JSON.readTree(found.out()).get("notes").forEach(note -> notes.add(note.asText()));
        assertThat(notes).hasSize(4);
        assertThat(notes).anySatisfy(note -> assertThat(note).startsWith("connection many, a must, is not served: "));
        assertThat(notes).anySatisfy(note -> assertThat(note).startsWith("connection lost, a must, is not served: "));
        assertThat(notes)
                .anySatisfy(note ->
                        assertThat(note).startsWith("connection early, a must, cannot be served by 2027-01-20"));
        assertThat(notes)
                .anySatisfy(note -> assertThat(note)
                        .startsWith("connection late, a must, is")
                        .contains("serve"));
    }

    private static String explain(String span, Path program, String... options) {
        var args = new ArrayList<>(List.of("explain", span, "--program", program.toString()));
        args.addAll(List.of(options));
        CommandRun found = CommandRun.of(args.toArray(String[]::new));
        assertThat(found.exitCode()).as(found.err()).isZero();
        return found.out();
    }

    @Test
    void explainShowsWhatTheProgramDoesWithASpan() throws IOException {
        CSVRecord chosen = csv(whole.resolve("program.csv")).get(0);
        CSVRecord reserve = csv(whole.resolve("reserve.csv")).get(0);

        assertThat(explain(chosen.get("span_id"), whole))
                .contains(chosen.get("first_day"), chosen.get("apply_by"), chosen.get("crew"), chosen.get("why"));
        assertThat(explain(reserve.get("span_id"), whole)).contains(reserve.get("why_not"), "place in the reserve");
        assertThat(explain(MUST_NOT, whole)).contains("not eligible", "must_not");
        assertThat(explain(chosen.get("span_id"), whole, "--run", run.toString()))
                .contains(chosen.get("why"), "Annual program");
        JsonNode json = JSON.readTree(explain(chosen.get("span_id"), whole, "--json"));
        assertThat(json.get("program").get("year").asInt()).isEqualTo(whole(chosen, "year"));
        assertThat(json.get("program").get("why").asText()).isEqualTo(chosen.get("why"));
    }

    /** One clear line each, with amounts where amounts matter, and no folder of results. */
    @Test
    void aLimitOfADistrictWithoutSpansIsNoted() throws IOException {
        CommandRun found = program(
                CREWS
                        + "years: [{money: 30000}]\ndistrict: src_inspector\nmost_in_work: {Ida: 1, Nowhere: 1, 'North pier': 2}\n");

        assertThat(found.exitCode()).as(found.err()).isZero();
        assertThat(found.out().replaceAll("\\s+", " "))
                .contains("most_in_work names what no span has in the column src_inspector: 'North pier', 'Nowhere'");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "years: [{money: 5000}]~must: ['H11-1:V11:V12'] | | 3 | span H11-1:V11:V12 of must fits no year: it alone takes; USD more than the 5,000 USD there at most",
                "years: [{money: 25000}]~must: ['H11-1:V11:V12', 'H10-1:V10:V11', 'U01-2:V01:V11'] | | 3 | the musts take at least; USD in year 1; more than the 25,000 USD there",
                "years: [{money: 50000, crew_hours: 6}]~must: ['H11-1:V11:V12', 'H22-1:V22:V23'] | | 3 | the musts take at least; crew-hours in year 1; more than the 6.0 crew-hours there",
                "years: [{money: 50000, crew_hours: 2}]~must: ['H11-1:V11:V12'] | | 3 | fits no year: it alone takes 4.9 crew-hours, 2.9 crew-hours more than the 2.0 crew-hours there at most",
                "years: [{money: 5000, crew_hours: 90}, {money: 50000, crew_hours: 2}]~must: ['H11-1:V11:V12'] | | 3 | years with enough money have too few crew-hours",
                "must: ['H01-1:V01:V02']~first_day: 2027-02-01~years: [{money: 30000}]~stop_windows: [{name: long, from: 2027-06-01, until: 2028-01-31, zone_kinds: []}]~crews: [{name: Early, shifts_per_week: 4, shift_hours: 7.5, shifts: days}] | | 3 | span H01-1:V01:V02 of must fits no year: no day of the program is open for it",
                "must: ['H20-1:V20:V21']~first_day: 2027-02-01~years: [{money: 30000}]~crews: [{name: Early, shifts_per_week: 4, shift_hours: 7.5, shifts: days}] | | 3 | span H20-1:V20:V21 of must fits no year: no crew works nights",
                "must: ['H02-1:V02:V03']           | | 3 | span H02-1:V02:V03 of must cannot be recovered: duct_collapsed",
                "must: ['H11-1:V11:V12']           | --done H11-1:V11:V12 | 3 | span H11-1:V11:V12 of must cannot be recovered: it is done",
                "must: ['H11-1:V11:V12']           | --failed H11-1:V11:V12 | 3 | span H11-1:V11:V12 of must cannot be recovered; failed",
                "must: ['H11-1:V11:V13']           | | 3 | the run has no span 'H11-1:V11:V13', which must names; H11-1:V11:V12",
                "must_not: [nothing]               | | 3 | the run has no span 'nothing', which must_not names",
                "must: ['H11-1:V11:V12']~must_not: ['H11-1:V11:V12'] | | 3 | must and must_not both name H11-1:V11:V12",
                "change_money: 1                   | --done nothing | 3 | the run has no span 'nothing', which --done names",
                "change_money: 1                   | --failed H10-2:V10:V1 | 3 | which --failed names; H10-2:V10:V11",
                "totals_by: [ownr]                 | | 3 | the run has no column 'ownr', which totals_by; owner",
                "district: src_inspectr            | | 3 | the run has no column 'src_inspectr', which district; src_inspector",
                "closed_zone_kinds: [evnt]         | | 3 | the run has no kind of permit zone 'evnt', which closed_zone_kinds; event",
                "first_day: 2027-02-01~crews: [{name: Early, shifts_per_week: 4, shift_hours: 7.5, shifts: days}]~stop_windows: [{name: w, from: 07-01, until: 07-31, zone_kinds: [skool]}] | | 3 | no kind of permit zone 'skool', which zone_kinds of the stop window 'w'; school",
                "yeers: [{money: 5}]               | | 3 | yeers; years",
                "years: [{money: -5}]              | | 3 | money",
                "years: []                         | | 3 | years",
                "previous: nowhere                 | | 3 | nowhere; the folder holds no program",
                "connections: nowhere.csv          | | 3 | nowhere.csv",
                "change_money: 1                   | --skip nothing | 2 | --skip",
                "change_money: 1                   | --draws many | 2 | --draws"
            })
    void whatCannotBeEndsInOneLine(String config, String options, int exitCode, String expected) throws IOException {
        String lines = config.replace("~", "\n");
        String shared = lines.contains("crews") ? "" : CREWS;

        CommandRun found = program(
                shared
                        + lines
                        + (lines.contains("yeers") || lines.contains("years") ? "\n" : "\nyears: [{money: 30000}]\n"),
                options == null ? new String[0] : options.split(" "));

        assertThat(found.exitCode()).as(found.err()).isEqualTo(exitCode);
        assertThat(found.out()).isEmpty();
        assertThat(found.complaint()).contains(expected.split("; "));
        assertThat(found.complaint().lines().filter(line -> line.startsWith("spanroom: ")))
                .hasSize(1);
        assertThat(folder.resolve("out")).doesNotExist();
    }

    @Test
    void foldersAreNotMistaken() throws IOException {
        Path config = Files.writeString(folder.resolve("program.yaml"), CREWS + "years: [{money: 12000}]\n");
        Path other = Files.createDirectory(folder.resolve("other"));
        Files.writeString(other.resolve("mine.txt"), "mine");

        CommandRun exists = program(config, whole, "--skip", QUICK);
        CommandRun mine = program(config, other, "--skip", QUICK, "--overwrite");
        CommandRun inside = program(config, run.resolve("program"), "--skip", QUICK);
        CommandRun aboveConfig = program(config, folder, "--skip", QUICK, "--overwrite");
        CommandRun noRun = CommandRun.of(
                "program", other.toString(), "--output", folder.resolve("out").toString());

        assertThat(List.of(exists.exitCode(), mine.exitCode())).allMatch(code -> code == ExitCode.USAGE || code == 5);
        assertThat(exists.complaint()).contains(whole.toString(), "--overwrite");
        assertThat(mine.complaint()).contains(other.toString());
        assertThat(other.resolve("mine.txt")).hasContent("mine");
        assertThat(inside.exitCode()).isEqualTo(ExitCode.USAGE);
        assertThat(aboveConfig.exitCode()).isEqualTo(ExitCode.USAGE);
        assertThat(noRun.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(noRun.complaint()).contains(other.toString());
        assertThat(folder.resolve("out")).doesNotExist();
    }

    /** A run in CSV only and without draws: no chances, all else as ever. */
    @Test
    void aRunWithoutDrawsHasAProgramWithoutChances() throws IOException {
        Path plain = StreetOfCases.rank(
                runs.resolve("town").resolve("town.yaml"),
                folder.resolve("plain"),
                "--formats",
                "csv",
                "--no-uncertainty");
        Path config = Files.writeString(folder.resolve("program.yaml"), WHOLE);
        Path output = folder.resolve("out");

        CommandRun found = CommandRun.of(
                "program", plain.toString(), "--config", config.toString(), "--output", output.toString());

        assertThat(found.exitCode()).as(found.err()).isZero();
        assertThat(found.out()).doesNotContain("NaN", "Infinity");
        assertThat(csv(output.resolve("program.csv"))).isNotEmpty().allSatisfy(row -> {
            assertThat(row.get("chance_pct")).isEmpty();
            assertThat(row.get("chosen_chance_pct")).isEmpty();
        });
        assertThat(ProgramFileChecker.problems(Files.readString(output.resolve("program.csv")), limits()))
                .isEmpty();
    }
}
