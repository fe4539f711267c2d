package org.spanroom.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.effort.Rate;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.pull.FrictionSets;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.RunCode;

/** Learning from a field book on a run of the demo city, from its files to proposals that a config can name. */
class LearnCommandTest {
    private static final int SPANS = 14;
    private static final CSVFormat CSV =
            CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();

    @TempDir
    static Path folder;

    private static Path run = Path.of("");
    private static final List<String> SPAN_IDS = new ArrayList<>();
    private static String code = "";

    private final StringBuilder book = new StringBuilder(
            "format,entry,run,span,vault,fact,item,planned,value,unit,by,date,supersedes,note,entered\n");
    private int entries;

    @BeforeAll
    static void makeARun() throws IOException {
        run = folder.resolve("demo");
        CommandRun ranked = CommandRun.of(
                "rank",
                "--config",
                "sample-gis/spanroom.yaml",
                "--output",
                run.toString(),
                "--formats",
                "csv",
                "--columns",
                "effort,pull",
                "--units",
                "us");
        assertEquals(ExitCode.OK, ranked.exitCode(), ranked.err());
        for (CSVRecord row : rows("spans.csv").subList(0, SPANS)) {
            SPAN_IDS.add(row.get("span_id"));
        }
        code = RunCode.of(RecordedRun.read(run));
    }

    private static List<CSVRecord> rows(String file) throws IOException {
        return rows(run.resolve(file));
    }

    private static List<CSVRecord> rows(Path file) throws IOException {
        try (var parser = CSV.parse(Files.newBufferedReader(file))) {
            return parser.getRecords();
        }
    }

    private void add(String span, String fact, String item, String planned, String value, String unit) {
        entries++;
        book.append(String.join(
                        ",",
                        "1",
                        Integer.toString(entries),
                        code,
                        span,
                        "",
                        fact,
                        item,
                        planned,
                        value,
                        unit,
                        "crew",
                        "2027-06-30",
                        "",
                        "",
                        "2027-07-01"))
                .append('\n');
    }

    /** Every step of the best spans, so many times the hours planned. */
    private void hours(double ratio) throws IOException {
        for (CSVRecord row : rows("step_hours.csv")) {
            if (SPAN_IDS.contains(row.get("span_id"))) {
                double actual = ratio * Double.parseDouble(row.get("site_hours"));
                add(
                        row.get("span_id"),
                        "step_hours",
                        row.get("step"),
                        row.get("site_hours"),
                        ratio == 1 ? row.get("site_hours") : Double.toString(actual),
                        "h");
            }
        }
    }

    private CommandRun learn(String output, String... more) throws IOException {
        Path file = folder.resolve(output + ".csv");
        Files.writeString(file, book);
        var arguments = new ArrayList<>(List.of(
                "learn",
                "--run",
                run.toString(),
                "--field-book",
                file.toString(),
                "--output",
                folder.resolve(output).toString()));
        arguments.addAll(List.of(more));
        CommandRun learned = CommandRun.of(arguments.toArray(String[]::new));
        assertEquals(ExitCode.OK, learned.exitCode(), learned.err());
        return learned;
    }

    private static RunConfig withRates(String output) {
        return ConfigReader.withSection(
                ShippedConfig.get(), "rates", folder.resolve(output).resolve("rates.yaml"));
    }

    private static Rate rate(RunConfig config, RateKey key) {
        return Objects.requireNonNull(config.rates().standard().get(key));
    }

    @Test
    void workAsPlannedKeepsEveryRateAndNarrowsItsRange() throws IOException {
        hours(1);
        learn("as-planned");
        RunConfig after = withRates("as-planned");

        Set<RateKey> narrower = new LinkedHashSet<>();
        for (RateKey key : RateKey.values()) {
            Rate was = rate(ShippedConfig.get(), key);
            Rate now = rate(after, key);
            assertEquals(Double.doubleToLongBits(was.value()), Double.doubleToLongBits(now.value()), key.key());
            assertTrue(now.low() >= was.low() && now.high() <= was.high(), key.key());
            if (now.equals(was)) {
                continue;
            }
            narrower.add(key);
            assertTrue(now.source().startsWith("learned from "), now.source());
        }
        assertTrue(narrower.contains(RateKey.PULL_FEED_M_PER_HOUR), narrower.toString());
        assertEquals(
                "learned from 14 spans to 2027-06-30; shipped 330, illustrative",
                rate(after, RateKey.PULL_FEED_M_PER_HOUR).source());
        assertEquals(ShippedConfig.get().rates().byZoneKind(), after.rates().byZoneKind());
        assertEquals(ShippedConfig.get().rates().surfaces(), after.rates().surfaces());
    }

    @Test
    void aSlowerCrewIsFollowedByItsWeight() throws IOException {
        hours(1.5);
        CommandRun learned = learn("slower");
        double expected = 330 / Math.pow(1.5, 14.0 / 19);

        assertEquals(
                expected,
                rate(withRates("slower"), RateKey.PULL_FEED_M_PER_HOUR).value(),
                0.001 * expected);
        assertTrue(
                Files.readString(folder.resolve("slower/rates.yaml"))
                        .contains(
                                "  # was 330 (180 to 550); pulling, actual over planned: 1.500 (1.500 to 1.500) of 14 spans, weight 0.74\n"));
        assertTrue(learned.out().contains("pull_feed_m_per_hour"), learned.out());
        assertTrue(learned.out().contains("Nothing is applied"), learned.out());
    }

    /** Forces of the run's own table of pulls: the coefficients stay, but for the rounding of the table. */
    @Test
    void forcesAsCalculatedKeepFriction() throws IOException {
        for (CSVRecord row : rows("pulls.csv")) {
            String span = row.get("span_id");
            if (SPAN_IDS.contains(span)) {
                double steadyN = Double.parseDouble(row.get("pull_out_at_a_dry_n"));
                add(span, "pull_force", row.get("innerduct"), "", Double.toString(1.3 * steadyN), "N");
                add(span, "pulled_from", row.get("innerduct"), "", "a", "");
            }
        }
        learn("forces");
        RunConfig config = ConfigReader.read(folder.resolve("forces/friction.yaml"));
        FrictionSets before = ShippedConfig.get().pull().friction();
        FrictionSets after = config.pull().friction();

        assertEquals(before.dry().ductRatio(), after.dry().ductRatio(), 0.002);
        assertTrue(after.lubricated().ductRatio() > before.lubricated().ductRatio());
        assertTrue(after.bad().ductRatio() < before.bad().ductRatio());
        assertEquals(List.of(), rows(folder.resolve("forces/left_out.csv")));
        config.pull().frictionByType().forEach(byType -> assertEquals(byType.fromYear() + 9, byType.toYear()));
    }

    @Test
    void openedDuctsChangeChancesOfTheirStratum() throws IOException {
        for (String span : SPAN_IDS) {
            add(span, "cables_found", "", "2", "3", "");
            add(span, "duct_condition", "", "", "sound", "");
        }
        learn("opened");
        CSVRecord all = rows(folder.resolve("opened/chance_changes.csv")).get(0);

        assertEquals("more_cable", all.get("chance"));
        assertEquals("", all.get("stratum"));
        assertEquals((20 * 0.03 + 14) / 34, Double.parseDouble(all.get("after_ratio")), 1e-4);
    }

    @Test
    void totalsAreShownInTheUnitsOfTheRun() throws IOException {
        for (String span : SPAN_IDS) {
            add(span, "status", "", "", "done", "");
        }
        add(SPAN_IDS.get(0), "innerduct_mass", "", "", "100", "lb");
        add("elsewhere:1:2", "status", "", "", "done", "");
        CommandRun learned = learn("totals");
        List<CSVRecord> totals = rows(folder.resolve("totals/totals_to_date.csv"));

        assertEquals(2, totals.size());
        assertEquals("2027", totals.get(0).get("year"));
        assertEquals("15", totals.get(0).get("spans"));
        assertEquals("1", totals.get(0).get("length_m_missing"));
        assertEquals("45.4", totals.get(0).get("innerduct_out_kg"));
        assertEquals("14", totals.get(0).get("innerduct_out_kg_missing"));
        assertEquals("", totals.get(0).get("bags"));
        assertTrue(learned.out().contains("length ft"), learned.out());
        assertTrue(learned.out().contains("100 (14)"), learned.out());
    }

    @Test
    void theSameBookGivesTheSameBytes() throws IOException {
        hours(1.2);
        add(SPAN_IDS.get(0), "step_hours", "sealing", "0.2", "30", "h");
        learn("once");
        learn("twice");

        for (String file : List.of("rates.yaml", "rate_changes.csv", "chance_changes.csv", "left_out.csv")) {
            assertEquals(
                    Files.readString(folder.resolve("once").resolve(file)),
                    Files.readString(folder.resolve("twice").resolve(file)));
        }
        assertEquals(1, rows(folder.resolve("once/left_out.csv")).size());
    }

    @Test
    void laterReportsAreLeftOutByAsOf() throws IOException {
        hours(1.5);
        CommandRun learned = learn("early", "--as-of", "2027-06-29", "--json");
        JsonNode json = new ObjectMapper().readTree(learned.out());

        assertEquals(0, json.get("entries").asInt());
        assertEquals(0, json.get("rates").size());
        assertFalse(Files.exists(folder.resolve("early/friction.yaml")));
        assertEquals(ShippedConfig.get().rates(), withRates("early").rates());
    }

    @Test
    void wrongUseIsOneLine() throws IOException {
        String results = run.toString();
        CommandRun noBook = CommandRun.of(
                "learn", "--run", results, "--output", folder.resolve("x").toString());
        CommandRun inside = CommandRun.of(
                "learn",
                "--run",
                results,
                "--field-book",
                "b.csv",
                "--output",
                run.resolve("in").toString());
        CommandRun absent = CommandRun.of(
                "learn",
                "--run",
                results,
                "--field-book",
                "b.csv",
                "--output",
                folder.resolve("x").toString());
        CommandRun noDay = CommandRun.of("learn", "--run", results, "--output", "x", "--as-of", "June");

        assertEquals(ExitCode.USAGE, noBook.exitCode());
        assertTrue(noBook.err().contains("give one with --field-book"), noBook.err());
        assertEquals(ExitCode.USAGE, inside.exitCode());
        assertEquals(ExitCode.INPUT, absent.exitCode());
        assertEquals(ExitCode.USAGE, noDay.exitCode());
        assertTrue(noDay.err().toLowerCase(Locale.ROOT).contains("is not a day such as"), noDay.err());
    }
}
