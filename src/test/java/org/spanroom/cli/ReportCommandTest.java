package org.spanroom.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page about a run of the demo city, taken apart as a browser does it and held against the files of the run. */
class ReportCommandTest {
    private static final CSVFormat CSV =
            CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    private static final long MOST_BYTES = 6_000_000;

    @TempDir
    static Path folder;

    private static Path run;
    private static Path page;
    private static JsonNode core;

    @BeforeAll
    static void makeThePage() throws IOException {
        run = folder.resolve("demo");
        CommandRun ranked =
                CommandRun.of("rank", "--config", "sample-gis/spanroom.yaml", "--output", run.toString(), "--quiet");
        assertEquals(new CommandRun(ExitCode.OK, "", ""), ranked);
        page = folder.resolve("page.html");
        CommandRun made = report("page.html", "--details", "60");
        assertEquals(ExitCode.OK, made.exitCode(), made.err());
        core = new ReportData(page).core();
    }

    private static CommandRun report(String file, String... more) {
        var words = new ArrayList<>(List.of(
                "report", run.toString(), "--output", folder.resolve(file).toString()));
        words.addAll(List.of(more));
        return CommandRun.of(words.toArray(String[]::new));
    }

    private static List<CSVRecord> csv(Path file) throws IOException {
        try (var parser = CSV.parse(Files.newBufferedReader(file))) {
            return parser.getRecords();
        }
    }

    /** Every cell of the file that users open stands in the page, in the same order. */
    @Test
    void theSpansAreThoseOfTheRun() throws IOException {
        List<CSVRecord> rows = csv(run.resolve("spans.csv"));
        JsonNode spans = core.get("spans");

        assertEquals(rows.size(), spans.get("rows").asInt());
        int compared = 0;
        for (String column : rows.get(0).getParser().getHeaderNames()) {
            List<JsonNode> cells = ReportData.column(spans, column);
            String type = spans.get("columns")
                    .get(ReportData.keys(spans).indexOf(column))
                    .get("type")
                    .asText();
            for (int row = 0; row < rows.size(); row++) {
                assertEquals(value(rows.get(row).get(column), type), value(cells.get(row), type), column + " " + row);
                compared++;
            }
        }
        assertTrue(compared > 100_000, "compared " + compared);
    }

    private static Object value(String cell, String type) {
        if (cell.isEmpty()) {
            return "";
        }
        return switch (type) {
            case "integer", "real" -> Double.parseDouble(cell);
            case "flag" -> Boolean.parseBoolean(cell);
            default -> cell.startsWith("'") ? cell.substring(1) : cell;
        };
    }

    private static Object value(JsonNode cell, String type) {
        if (cell.isNull()) {
            return "";
        }
        return switch (type) {
            case "integer", "real" -> cell.asDouble();
            case "flag" -> cell.asBoolean();
            default -> cell.asText();
        };
    }

    @Test
    void linesComeBackWithinATenthOfAMeter() throws IOException {
        Map<String, double[]> ends = new HashMap<>();
        for (JsonNode feature :
                new ObjectMapper().readTree(Files.readString(geoJson())).get("features")) {
            JsonNode line = feature.at("/geometry/coordinates");
            JsonNode last = line.get(line.size() - 1);
            ends.put(feature.at("/properties/span_id").asText(), new double[] {
                line.get(0).get(0).asDouble(),
                line.get(0).get(1).asDouble(),
                last.get(0).asDouble(),
                last.get(1).asDouble()
            });
        }
        List<JsonNode> ids = ReportData.column(core.get("spans"), "span_id");
        for (int row = 0; row < ids.size(); row++) {
            long lon = 0;
            long lat = 0;
            JsonNode line = core.get("spans").get("lines").get(row);
            double[] expected = ends.get(ids.get(row).asText());
            for (int i = 0; i < line.size(); i += 2) {
                lon += line.get(i).asLong();
                lat += line.get(i + 1).asLong();
                if (i == 0) {
                    assertArrayEquals(
                            new double[] {expected[0], expected[1]}, new double[] {lon / 1e6, lat / 1e6}, 1e-6);
                }
            }
            assertArrayEquals(new double[] {expected[2], expected[3]}, new double[] {lon / 1e6, lat / 1e6}, 1e-6);
        }
    }

    private static Path geoJson() {
        Path output = folder.resolve("geojson");
        CommandRun written = CommandRun.of(
                "rank",
                "--from",
                run.toString(),
                "--scoring",
                "config/scoring.yaml",
                "--formats",
                "geojson",
                "--output",
                output.toString());
        assertEquals(ExitCode.OK, written.exitCode(), written.err());
        return output.resolve("spans.geojson");
    }

    /** Sections hold the very spans that share a bank and both vaults, and their places beside one another differ. */
    @Test
    void sectionsHoldTheirSpans() throws IOException {
        JsonNode sections = core.get("sections");
        List<CSVRecord> rows = csv(run.resolve("sections.csv"));
        JsonNode spans = core.get("spans");
        List<JsonNode> places = ReportData.column(spans, "bank_place");
        List<JsonNode> starts = ReportData.column(spans, "vault_a");

        assertEquals(rows.size(), sections.get("rows").asInt());
        for (int section = 0; section < rows.size(); section++) {
            JsonNode members = sections.get("spans").get(section);
            assertEquals(Integer.parseInt(rows.get(section).get("spans")), members.size());
            var sides = new TreeMap<Integer, Integer>();
            for (JsonNode row : members) {
                assertEquals(section, spans.get("section").get(row.asInt()).asInt());
                int place = places.get(row.asInt()).asInt();
                boolean turned = !starts.get(row.asInt())
                        .equals(starts.get(members.get(0).asInt()));
                sides.merge(turned ? -place : place, 1, Integer::sum);
            }
            assertEquals(members.size(), sides.size(), rows.get(section).get("section_id"));
        }
    }

    /** The page's arithmetic, as its contract has it, gives the very order of another scoring: ties, excluded spans and all. */
    @Test
    void theSameWeightsGiveTheSameOrderAsRankFrom() throws IOException {
        String[] scorings = {
            "{}",
            "criteria: {room_gained: {weight_ratio: 0.07}, ease_bends: {weight_ratio: 0.9}, saving: {weight_ratio: 0}}",
            "criteria: {length: {weight_ratio: 0.31}, knowledge: {weight_ratio: 0.13}, shortage: {weight_ratio: 0.77}}"
        };
        for (int number = 0; number < scorings.length; number++) {
            Path scoring = Files.writeString(folder.resolve("scoring" + number + ".yaml"), scorings[number] + "\n");
            Path again = folder.resolve("again" + number);
            CommandRun ranked = CommandRun.of(
                    "rank",
                    "--from",
                    run.toString(),
                    "--scoring",
                    scoring.toString(),
                    "--formats",
                    "csv",
                    "--output",
                    again.toString());
            assertEquals(ExitCode.OK, ranked.exitCode(), ranked.err());
            JsonNode weights = new ObjectMapper()
                    .readTree(Files.readString(again.resolve("run.json")))
                    .at("/config/scoring/criteria");

            List<String> expected = csv(again.resolve("spans.csv")).stream()
                    .filter(row -> !row.get("rank").isEmpty())
                    .map(row -> row.get("span_id"))
                    .toList();

            assertEquals(expected, order(weights), scorings[number]);
        }
    }

    private static List<String> order(JsonNode weights) {
        JsonNode criteria = core.at("/score/criteria");
        var byKey = new TreeMap<String, Double>();
        weights.properties()
                .forEach(entry -> byKey.put(
                        entry.getKey(), entry.getValue().get("weight_ratio").asDouble()));
        double sum = 0;
        double compensation = 0;
        for (double weight : byKey.values()) {
            double corrected = weight - compensation;
            double next = sum + corrected;
            compensation = (next - sum) - corrected;
            sum = next;
        }
        double all = sum - compensation;
        List<JsonNode> ids = ReportData.column(core.get("spans"), "span_id");
        List<JsonNode> exclusions = ReportData.column(core.get("spans"), "exclusion");
        double[] points = new double[ids.size()];
        for (int i = 0; i < criteria.size(); i++) {
            double weight = byKey.get(criteria.get(i).get("key").asText());
            double[] values = ReportData.doubles(core.at("/score/values").get(i));
            for (int row = 0; row < points.length && weight > 0; row++) {
                points[row] += 100 * values[row] * (weight / all);
            }
        }
        return IntStream.range(0, points.length)
                .boxed()
                .filter(row -> exclusions.get(row).isNull())
                .sorted(Comparator.comparingDouble((Integer row) -> Double.isNaN(points[row]) ? 0 : -points[row])
                        .thenComparing(row -> ids.get(row).asText()))
                .map(row -> ids.get(row).asText())
                .toList();
    }

    /** Sums of the charts are those of the run's own record. */
    @Test
    void chartsAddUpToTheRecord() throws IOException {
        JsonNode record = new ObjectMapper().readTree(Files.readString(run.resolve("run.json")));
        long spans = 0;
        double money = 0;
        for (JsonNode group : core.at("/charts/by_district/rows")) {
            spans += group.get(2).asLong();
            money += group.get(3).asDouble();
        }
        var excluded = new TreeMap<String, Long>();
        core.at("/charts/exclusions")
                .forEach(reason ->
                        excluded.put(reason.get(0).asText(), reason.get(1).asLong()));
        var expected = new TreeMap<String, Long>();
        record.get("spans_excluded")
                .properties()
                .forEach(entry -> expected.put(entry.getKey(), entry.getValue().asLong()));
        long likely = csv(run.resolve("spans.csv")).stream()
                .filter(row -> !row.get("rank").isEmpty())
                .count();

        assertEquals("owner", core.at("/charts/by_district/field").asText());
        assertEquals(record.get("spans_ranked").asLong(), spans);
        assertEquals(likely, spans);
        assertTrue(money > record.at("/money_ranked/recovery_money").asDouble());
        assertEquals(expected, excluded);
        double shares = 0;
        for (JsonNode share : core.at("/charts/uncertainty")) {
            shares += share.get(1).asDouble();
        }
        assertEquals(100, shares, 1e-9);
    }

    /** A browser runs only scripts whose hash the policy names, and fetches nothing. */
    @Test
    void thePolicyAllowsTheScriptsOfThePageAndNothingElse() throws IOException, NoSuchAlgorithmException {
        String html = new ReportData(page).html();
        Matcher policy = Pattern.compile("http-equiv=\"Content-Security-Policy\" content=\"([^\"]*)\"")
                .matcher(html);
        assertTrue(policy.find());
        Matcher script = Pattern.compile("(?s)<script>(.*?)</script>").matcher(html);
        int scripts = 0;
        while (script.find()) {
            byte[] hash =
                    MessageDigest.getInstance("SHA-256").digest(script.group(1).getBytes(StandardCharsets.UTF_8));
            String source = "'sha256-" + Base64.getEncoder().encodeToString(hash) + "'";
            assertTrue(policy.group(1).contains(source), "script " + scripts);
            scripts++;
        }

        assertEquals(3, scripts);
        assertTrue(policy.group(1).startsWith("default-src 'none'; script-src 'sha256-"));
        assertTrue(policy.group(1).endsWith("img-src data: blob:; base-uri 'none'; form-action 'none'"));
        String texts = new ReportData(page).texts();
        assertFalse(
                Pattern.compile("(?i)(src|href)=\"(?!#|data:)").matcher(texts).find(), "a reference to elsewhere");
        assertFalse(
                Pattern.compile("(?i)url\\((?!['\"]?data:)")
                        .matcher(styles(html))
                        .find(),
                "an address in a style");
    }

    private static String styles(String html) {
        int begin = html.indexOf("<style>");
        return html.substring(begin, html.indexOf("</style>", begin));
    }

    @Test
    void thePageIsSmallAndTheSameEveryTime() throws IOException {
        assertEquals(ExitCode.OK, report("twice.html", "--details", "60").exitCode());

        assertTrue(Files.size(page) < MOST_BYTES, Files.size(page) + " bytes");
        assertEquals(-1, Files.mismatch(page, folder.resolve("twice.html")));
    }

    @Test
    void theSummaryNamesFiguresRangesAndCautions() throws IOException {
        String texts = new ReportData(page).texts();

        for (String expected : List.of(
                "1,243 of 2,466 spans are candidates.",
                "USD 15.6 million",
                "13.4 million to 18.1 million",
                "83 of 101 rates are illustrative", // as in the layers: those of kinds of vaults and zones too
                "factor of two",
                "permit-required confined space",
                "Measure first at vault",
                "B185:V4-1040:V4-1049")) {
            assertTrue(texts.contains(expected), expected);
        }
        assertFalse(texts.contains(folder.toString()), "names where the run lies");
    }

    @Test
    void aTileServerIsAllowedOnlyWhereTheUserNamesIt() throws IOException {
        CommandRun made =
                report("tiles.html", "--tiles", "https://tiles.example.org:8443/{z}/{x}/{y}.png", "--details", "0");
        assertEquals(ExitCode.OK, made.exitCode(), made.err());
        String html = new ReportData(folder.resolve("tiles.html")).html();

        assertTrue(html.contains("img-src data: blob: https://tiles.example.org:8443; base-uri"));
        for (String wrong : List.of("ftp://a/{z}/{x}/{y}", "https://a/{z}/{x}", "https://*/{z}/{x}/{y}", "{z}{x}{y}")) {
            CommandRun refused = report("wrong.html", "--tiles", wrong);
            assertEquals(ExitCode.USAGE, refused.exitCode(), wrong);
            assertEquals(1, refused.complaint().lines().count(), refused.err());
        }
        assertFalse(Files.exists(folder.resolve("wrong.html")));
    }

    @Test
    void aFolderOfResultsIsNoPlaceForAPage() throws IOException {
        Path theirs = Files.writeString(folder.resolve("theirs.shp"), "theirs");
        for (String inside : List.of("demo/page.html", "demo/deep/page.html", "other/../demo/page.html")) {
            CommandRun refused = report(inside);
            assertEquals(ExitCode.USAGE, refused.exitCode(), refused.err());
            assertTrue(refused.complaint().contains("is in the folder of the run"), refused.err());
            assertEquals(1, refused.complaint().lines().count(), refused.err());
        }
        CommandRun exists = report("page.html");
        assertEquals(ExitCode.OUTPUT, exists.exitCode());
        assertTrue(exists.complaint().contains("--overwrite"), exists.err());
        CommandRun foreign = report("theirs.shp", "--overwrite");
        assertEquals(ExitCode.OUTPUT, foreign.exitCode(), foreign.err());
        assertTrue(
                foreign.complaint().contains("is not a page that report wrote, and is never replaced"), foreign.err());
        assertEquals("theirs", Files.readString(theirs));
        CommandRun nowhere = report("none/page.html");
        assertEquals(ExitCode.OUTPUT, nowhere.exitCode(), nowhere.err());
    }

    @Test
    void whatIsNoRunOrNoProgramOfItIsRefused() throws IOException {
        CommandRun noRun = CommandRun.of("report", folder.resolve("nothing").toString());
        CommandRun noProgram =
                report("p.html", "--program", folder.resolve("nothing").toString());
        Path other = Files.createDirectories(folder.resolve("program"));
        for (String table : List.of("totals", "curve", "program_connections")) {
            Files.writeString(other.resolve(table + ".csv"), "year\n");
        }
        Files.writeString(other.resolve("program.csv"), "year,span_id,rank\n1,B0:none:none,1\n");
        Files.writeString(other.resolve("reserve.csv"), "span_id,rank\n");
        CommandRun otherRun = report("p.html", "--program", other.toString());
        String first = ReportData.column(core.get("spans"), "span_id").get(0).asText();
        Files.writeString(other.resolve("program.csv"), "year,span_id,rank\n1," + first + ",7\n");
        CommandRun otherRank = report("p.html", "--program", other.toString());

        for (CommandRun refused : List.of(noRun, noProgram, otherRun, otherRank)) {
            assertEquals(ExitCode.INPUT, refused.exitCode(), refused.err());
            assertEquals(1, refused.complaint().lines().count(), refused.err());
        }
        assertTrue(otherRun.complaint().contains("made of another run"), otherRun.err());
        assertTrue(otherRank.complaint().contains("at rank 7, the run at 1"), otherRank.err());
        assertFalse(Files.exists(folder.resolve("p.html")));
    }

    /** Without a GeoPackage there are tables without shapes; the page has the lines from the file for later commands. */
    @Test
    void aRunInCsvOnlyHasAPageToo() throws IOException {
        Path csv = DemoRun.csv(Files.createDirectories(folder.resolve("csv-only")));
        Path made = folder.resolve("csv.html");
        CommandRun report =
                CommandRun.of("report", csv.toString(), "--units", "us", "--details", "0", "--output", made.toString());
        assertEquals(ExitCode.OK, report.exitCode(), report.err());
        JsonNode other = new ReportData(made).core();

        assertEquals(core.at("/spans/lines"), other.at("/spans/lines"));
        assertEquals(core.at("/sections/spans"), other.at("/sections/spans"));
        assertEquals("ft", other.get("lengthUnit").asText());
        double meters = ReportData.column(other.get("spans"), "length_m").get(0).asDouble();
        assertEquals(
                meters / 0.3048,
                ReportData.column(other.get("spans"), "length_ft").get(0).asDouble(),
                0.001);
    }

    /** A run that wrote some spans only has a page of all of them, which says so and what was asked. */
    @Test
    void aRunOfSomeSpansHasAPageOfAll() throws IOException {
        Path some = folder.resolve("some");
        CommandRun ranked = CommandRun.of(
                "rank",
                "--config",
                "sample-gis/spanroom.yaml",
                "--where",
                "length_m > 100",
                "--output",
                some.toString(),
                "--quiet");
        assertEquals(new CommandRun(ExitCode.OK, "", ""), ranked);
        Path made = folder.resolve("some.html");
        CommandRun report = CommandRun.of("report", some.toString(), "--details", "0", "--output", made.toString());
        assertEquals(ExitCode.OK, report.exitCode(), report.err());
        String html = Files.readString(made);

        assertEquals(
                core.at("/spans/lines").size(),
                new ReportData(made).core().at("/spans/lines").size());
        assertTrue(html.contains("length_m &gt; 100"));
        assertTrue(html.contains("this page has the spans of the whole run"));
    }

    /** Lines come from the GeoPackage: one of another run beside the spans of this one is noticed by its ranks. */
    @Test
    void theGeoPackageOfAnotherRunIsRefused() throws IOException {
        Path other = folder.resolve("other-ranks");
        Path scoring = Files.writeString(
                folder.resolve("other-ranks.yaml"),
                "criteria: {ease_bends: {weight_ratio: 0.9}, saving: {weight_ratio: 0}}\n");
        CommandRun ranked = CommandRun.of(
                "rank",
                "--from",
                run.toString(),
                "--scoring",
                scoring.toString(),
                "--output",
                other.toString(),
                "--quiet");
        assertEquals(new CommandRun(ExitCode.OK, "", ""), ranked);
        Files.copy(run.resolve("spanroom.gpkg"), other.resolve("spanroom.gpkg"), StandardCopyOption.REPLACE_EXISTING);

        for (String command : List.of("report", "corridors")) {
            var words = new ArrayList<>(List.of(
                    command,
                    other.toString(),
                    "--output",
                    folder.resolve("mixed-" + command).toString()));
            words.addAll(command.equals("corridors") ? List.of("--cables", "6") : List.of());
            CommandRun refused = CommandRun.of(words.toArray(String[]::new));
            assertEquals(ExitCode.INPUT, refused.exitCode(), refused.err());
            assertTrue(refused.complaint().contains("spanroom.gpkg: it is of another run: the span '"), refused.err());
        }
    }
}
