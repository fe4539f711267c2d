package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVRecord;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.model.fieldwork.FactItem;
import org.spanroom.model.fieldwork.FactSubject;
import org.spanroom.model.fieldwork.FactUnit;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.fieldwork.SheetCode;
import org.w3c.dom.Element;

/** Sheets of the demo city, read back by a PDF library, an XML parser, a CSV parser and a reader of QR codes. */
class SheetsCommandTest {
    private static final int TOP = 50;

    /** A print of which a telephone held above it takes less than half of what it shows. */
    private static final int DOTS_PER_INCH = 200;

    private static final double FEET_PER_M = 1 / 0.3048;
    private static final double LBF_PER_N = 1 / 4.4482216152605;

    @TempDir
    static Path folder;

    private static Path run;
    private static PrintedSheets us;
    private static PrintedSheets metric;

    @BeforeAll
    static void makeSheets() {
        run = folder.resolve("demo");
        CommandRun ranked =
                CommandRun.of("rank", "--config", "sample-gis/spanroom.yaml", "--output", run.toString(), "--quiet");
        assertEquals(new CommandRun(ExitCode.OK, "", ""), ranked);
        us = made("us", "--top", Integer.toString(TOP), "--units", "us", "--streets", "sample-gis/streets.geojson");
        metric = made("metric", "--top", "8", "--units", "metric", "--paper", "a4");
    }

    private static CommandRun sheets(String name, String... more) {
        var words = new ArrayList<>(List.of(
                "sheets", run.toString(), "--output", folder.resolve(name).toString()));
        words.addAll(List.of(more));
        return CommandRun.of(words.toArray(String[]::new));
    }

    private static PrintedSheets made(String name, String... more) {
        CommandRun made = sheets(name, more);
        assertEquals(ExitCode.OK, made.exitCode(), made.err());
        return new PrintedSheets(folder.resolve(name));
    }

    private static List<String> best(int count) throws IOException {
        return Files.readAllLines(run.resolve("spans.csv")).stream()
                .skip(1)
                .limit(count)
                .map(line -> line.substring(0, line.indexOf(',')))
                .toList();
    }

    private static JsonNode explained(String spanId) throws IOException {
        CommandRun explained = CommandRun.of("explain", spanId, "--run", run.toString(), "--json");
        assertEquals(ExitCode.OK, explained.exitCode(), explained.err());
        return new ObjectMapper().readTree(explained.out());
    }

    /** The code of each page, as a reader of QR codes finds it on paper. */
    @Test
    void aCameraReadsEveryCode() throws IOException {
        for (PrintedSheets sheets : List.of(us, metric)) {
            List<String> codes = sheets.codes(DOTS_PER_INCH);
            List<String> rows = sheets.closeout().stream()
                    .map(row -> row.get("code"))
                    .distinct()
                    .toList();

            assertFalse(codes.contains(""), "page " + (1 + codes.indexOf("")) + " has no code");
            assertEquals(codes.size(), Set.copyOf(codes).size(), "each page has a code of its own");
            assertTrue(codes.containsAll(rows), "the close-out file has the codes of the pages");
            for (String code : codes) {
                SheetCode read = SheetCode.parse(code).orElseThrow(() -> new AssertionError(code));
                assertTrue(read.run().matches("[0-9a-f]{8}"), code);
                assertTrue(read.section().contains(":"), code);
            }
        }
    }

    /** A cover page, two pages a duct and no more; what these have no room for is on additional pages, which say so. */
    @Test
    void aDuctHasTwoPages() throws IOException {
        List<String> texts = us.pdfTexts();
        var pagesBySpan = new TreeMap<String, List<Integer>>();
        var covers = new ArrayList<String>();
        List<String> codes = us.codes(DOTS_PER_INCH);
        for (int page = 0; page < codes.size(); page++) {
            SheetCode code = SheetCode.parse(codes.get(page)).orElseThrow();
            if (code.page() == 1) {
                covers.add(code.section());
                assertEquals("", code.span());
            } else if (!code.span().isEmpty()) {
                pagesBySpan
                        .computeIfAbsent(code.span(), none -> new ArrayList<>())
                        .add(page);
            }
        }

        assertEquals(covers.size(), Set.copyOf(covers).size());
        assertEquals(new TreeSet<>(best(TOP)), pagesBySpan.keySet());
        int additional = 0;
        for (List<Integer> pages : pagesBySpan.values()) {
            assertTrue(texts.get(pages.get(0)).contains("STOP RULE"));
            assertTrue(texts.get(pages.get(1)).contains("Steps in the order of the work"));
            String both = oneLine(texts.get(pages.get(0)) + texts.get(pages.get(1)));
            // A name that is cut ends so, and is given in full there.
            boolean announced = both.contains("more on the additional page") || both.contains("\u2026");
            assertEquals(
                    announced ? 1 : 0,
                    pages.size() - 2,
                    "additional pages of " + pages + texts.get(pages.get(pages.size() - 1)));
            additional += pages.size() - 2;
        }
        assertTrue(additional <= TOP / 10, "most ducts do with two pages, and " + additional + " do not");
    }

    /** Every place to write that is drawn is one row of the close-out file, and no row is without its place. */
    @Test
    void everyBlankHasOneRow() throws IOException {
        for (PrintedSheets sheets : List.of(us, metric)) {
            List<String> codes = sheets.codes(DOTS_PER_INCH);
            List<Element> pages = sheets.htmlPages();
            assertEquals(codes.size(), pages.size());
            var drawn = new TreeMap<String, Integer>();
            for (int page = 0; page < pages.size(); page++) {
                for (Element blank : PrintedSheets.withClass(pages.get(page), "span", "blank")) {
                    String key = String.join(
                            "\t",
                            codes.get(page),
                            blank.getAttribute("data-span"),
                            blank.getAttribute("data-vault"),
                            blank.getAttribute("data-fact"),
                            blank.getAttribute("data-item"));
                    drawn.merge(key, 1, Integer::sum);
                }
            }
            var rows = new TreeMap<String, Integer>();
            sheets.closeout()
                    .forEach(row -> rows.merge(
                            String.join(
                                    "\t",
                                    row.get("code"),
                                    row.get("span"),
                                    row.get("vault"),
                                    row.get("fact"),
                                    row.get("item")),
                            1,
                            Integer::sum));

            assertTrue(rows.size() > 500, "rows " + rows.size());
            assertEquals(Set.of(), difference(drawn.keySet(), rows.keySet()));
            assertEquals(Set.of(), difference(rows.keySet(), drawn.keySet()));
            assertEquals(Set.of(1), Set.copyOf(drawn.values()));
            assertEquals(Set.of(1), Set.copyOf(rows.values()));
        }
    }

    private static Set<String> difference(Set<String> of, Set<String> without) {
        var rest = new TreeSet<>(of);
        rest.removeAll(without);
        return rest;
    }

    /** Each row is one that the schema of facts takes. */
    @Test
    void everyRowFitsTheSchema() throws IOException {
        for (CSVRecord row : us.closeout()) {
            FieldFact fact = FieldFact.find(row.get("fact")).orElseThrow(() -> new AssertionError(row.toString()));
            boolean ofSpan = fact.subject() == FactSubject.SPAN;
            assertEquals(ofSpan, !row.get("span").isEmpty(), row.toString());
            assertEquals(!ofSpan, !row.get("vault").isEmpty(), row.toString());
            assertEquals(fact.item() == FactItem.NONE, row.get("item").isEmpty(), row.toString());
            FactUnit unit = FactUnit.find(row.get("unit")).orElseThrow();
            assertTrue(fact.kind().units().contains(unit), row.toString());
            demandItem(fact, row.get("item"));
            demandPlanned(fact, row.get("planned"), row.toString());
            assertEquals("", row.get("value") + row.get("by") + row.get("date") + row.get("supersedes"));
        }
        Set<String> kinds = us.closeout().stream().map(row -> row.get("fact")).collect(Collectors.toSet());
        Set<String> notDrawn = Arrays.stream(FieldFact.values())
                .map(FieldFact::key)
                .filter(key -> !kinds.contains(key))
                .collect(Collectors.toCollection(TreeSet::new));
        // No duct of the best has a dead cable; what is found of single innerducts and cables goes into a row of one's
        // own.
        assertEquals(
                new TreeSet<>(Set.of(
                        "cable_diameter",
                        "cable_in",
                        "cable_moved",
                        "cable_out",
                        "cable_proved_dead_by",
                        "cable_there",
                        "innerduct_there",
                        "innerduct_wall")),
                notDrawn);
    }

    private static void demandItem(FieldFact fact, String item) {
        switch (fact.item()) {
            case END -> assertTrue(item.equals("a") || item.equals("b"), item);
            case INNERDUCT_AT_END, CABLE_AT_END -> assertTrue(item.matches(".+ [ab]"), item);
            case STEP -> assertTrue(item.matches("[a-z_]+"), item);
            default -> assertFalse(item.startsWith(" "), item);
        }
    }

    private static void demandPlanned(FieldFact fact, String planned, String row) {
        if (planned.isEmpty()) {
            return;
        }
        switch (fact.kind()) {
            case WORD -> assertTrue(fact.words().contains(planned), row);
            case ANSWER -> assertTrue(planned.equals("yes") || planned.equals("no"), row);
            case DAY -> assertEquals(planned, LocalDate.parse(planned).toString());
            case TEXT -> assertFalse(planned.isBlank());
            default -> assertTrue(Double.parseDouble(planned) >= 0, row);
        }
    }

    /** Figures of the pages are those of {@code explain}, in both systems of units. */
    @Test
    void figuresAreThoseOfExplain() throws IOException {
        for (String spanId : best(5)) {
            JsonNode tree = explained(spanId);
            String end = tree.at("/pull/better_end").asText();
            for (PrintedSheets sheets : List.of(us, metric)) {
                boolean inUs = sheets == us;
                String text = oneLine(textOf(sheets, spanId));
                double lengthM = tree.get("length_m").asDouble();
                assertTrue(
                        text.contains(
                                inUs
                                        ? fixed(lengthM * FEET_PER_M, 1) + " ft (" + fixed(lengthM, 1) + " m)"
                                        : fixed(lengthM, 1) + " m (" + fixed(lengthM * FEET_PER_M, 1) + " ft)"),
                        text);
                demandForces(tree, end, inUs, text);
                demandHours(tree, spanId, sheets, text);
                int bags = tree.at("/effort/bags").asInt();
                assertTrue(text.contains("; " + bags + " bags;") || bags == 1, text);
                double outKg = tree.at("/effort/innerduct_out_kg").asDouble();
                assertTrue(text.contains(inUs ? fixed(outKg / 0.45359237, 0) + " lb" : fixed(outKg, 0) + " kg"), text);
                for (JsonNode bend : tree.get("bends")) {
                    double radiusM = bend.get("radius_m").asDouble();
                    String radius = fixed(radiusM, 1) + " m";
                    assertTrue(text.contains(radius), radius + " in " + text);
                }
            }
        }
    }

    /**
     * Where two or more innerducts come out, the sleeves go in while the next to last one does, since the last one leaves no way in (common
     * practice, no source); else they go in by rod.
     */
    @Test
    void sleevesGoInWithTheNextToLastPullOrByRod() throws IOException {
        var pulls = new TreeSet<Integer>();
        for (String spanId : best(TOP)) {
            JsonNode room = explained(spanId).get("room");
            int out = room.get("innerducts_out").asInt();
            int sleeves = room.get("sleeves").asInt();
            if (sleeves == 0 || !pulls.add(Math.min(3, out))) {
                continue;
            }
            String text = oneLine(textOf(us, spanId));

            assertEquals(out > 1, text.contains("; sleeves in with pull " + (out - 1) + ". First ring-cut"), text);
            assertEquals(out > 1, text.contains("with pull " + (out - 1) + ": " + sleeves + " sleeve"), text);
            assertEquals(out == 1, text.contains("put in sleeves by rod"), text);
        }
        assertTrue(pulls.containsAll(List.of(2, 3)), "sheets have spans with two pulls and with more: " + pulls);
    }

    /** The limits of 29 CFR 1910.146(b), hazardous atmosphere (from memory), stand on each cover beside the blanks; what is not recorded counts as needed. */
    @Test
    void coversHaveTheLimitsOfAir() throws IOException {
        // The two columns of a page are one text each here, which a PDF does not keep apart.
        List<String> covers = us.htmlPages().stream()
                .map(page -> oneLine(page.getTextContent()))
                .filter(text -> text.contains(", page 1 of ") && text.contains("Air test"))
                .toList();

        assertFalse(covers.isEmpty());
        assertThat(covers)
                .allSatisfy(
                        text -> assertThat(text)
                                .contains(
                                        "oxygen (O2) 19.5 to 23.5 %, flammable gas below 10 % of its lower flammable limit (LFL)"));
        assertThat(covers).anySatisfy(text -> assertThat(text).contains("plan for it until checked"));
        assertThat(covers).noneSatisfy(text -> assertThat(text).contains("Lane closure: not recorded"));
    }

    private static void demandForces(JsonNode tree, String end, boolean inUs, String text) {
        for (JsonNode innerduct : tree.at("/pull/innerducts")) {
            for (JsonNode way : innerduct.get("ways")) {
                if (!way.get("out_at").asText().equals(end)) {
                    continue;
                }
                Map<String, JsonNode> byFriction = new LinkedHashMap<>();
                way.get("forces")
                        .forEach(forces -> byFriction.put(forces.get("friction").asText(), forces));
                for (String force : List.of("pull_n", "hold_n")) {
                    double lowN = byFriction.get("lubricated").get(force).asDouble();
                    double highN = byFriction.get("bad").get(force).asDouble();
                    String expected =
                            inUs ? range(lowN * LBF_PER_N, highN * LBF_PER_N) + " lbf" : range(lowN, highN) + " N";
                    assertTrue(text.contains(expected), expected + " in " + text);
                }
                for (JsonNode limit : way.get("limits")) {
                    if (limit.get("limit").asText().equals("innerduct_strength")) {
                        double allowedN = limit.get("allowed_in_unit").asDouble();
                        String stop = inUs ? fixed(allowedN * LBF_PER_N, 0) + " lbf" : fixed(allowedN, 0) + " N";
                        assertTrue(text.contains(stop), stop + " in " + text);
                    }
                }
            }
        }
    }

    private static void demandHours(JsonNode tree, String spanId, PrintedSheets sheets, String text)
            throws IOException {
        var hours = new TreeMap<String, Double>();
        for (JsonNode line : tree.at("/effort/lines")) {
            if (line.get("kind").asText().equals("hours")) {
                hours.merge(
                        line.get("part").asText(), line.get("amount_in_unit").asDouble(), Double::sum);
            }
        }
        assertTrue(hours.size() > 8, hours.toString());
        var planned = new TreeMap<String, String>();
        for (CSVRecord row : sheets.closeout()) {
            if (row.get("span").equals(spanId) && row.get("fact").equals("step_hours")) {
                planned.put(row.get("item"), row.get("planned"));
            }
        }
        assertEquals(hours.keySet(), planned.keySet());
        hours.forEach((step, amount) -> {
            assertEquals(amount, Double.parseDouble(planned.get(step)), 0.0051, step);
            assertTrue(text.contains(planned.get(step)), step);
        });
        assertTrue(text.contains(fixed(tree.at("/effort/site_hours").asDouble(), 2)));
    }

    private static String textOf(PrintedSheets sheets, String spanId) throws IOException {
        return sheets.pdfTexts().stream()
                .filter(text -> oneLine(text).contains("Span " + spanId + ","))
                .collect(Collectors.joining("\n"));
    }

    private static String oneLine(String text) {
        return text.replaceAll("[\\p{Z}\\s]+", " ");
    }

    private static String range(double low, double high) {
        String from = fixed(low, 0);
        String to = fixed(high, 0);
        return from.equals(to) ? to : from + " to " + to;
    }

    private static String fixed(double value, int decimals) {
        return String.format(Locale.ROOT, "%,." + decimals + "f", value);
    }

    /** What the page for browsers says is what the PDF says, page by page and word by word: nothing is cut off or covered by a later page. */
    @Test
    void bothFilesHaveTheSameWords() throws IOException {
        for (PrintedSheets sheets : List.of(us, metric)) {
            List<Element> pages = sheets.htmlPages();
            List<String> texts = sheets.pdfTexts();
            assertEquals(pages.size(), texts.size());
            for (int page = 0; page < pages.size(); page++) {
                assertEquals(letters(pages.get(page).getTextContent()), letters(texts.get(page)), "page " + (page + 1));
            }
        }
    }

    /** A line that is broken elsewhere, or words that a PDF library joins, are the same letters. */
    private static Map<Integer, Integer> letters(String text) {
        var count = new TreeMap<Integer, Integer>();
        text.codePoints()
                .filter(point -> !Character.isWhitespace(point) && !Character.isSpaceChar(point))
                // The PDF draws the mark of a list's items, which a browser adds by itself.
                .filter(point -> point != 0x2022 && point != 0x25CF)
                .forEach(point -> count.merge(point, 1, Integer::sum));
        return count;
    }

    /** All is inside the margins, above the foot of the page, and no smaller than 9 pt. */
    @Test
    void everythingIsOnThePaperAndLargeEnough() throws IOException {
        for (PrintedSheets sheets : List.of(us, metric)) {
            try (PDDocument document = Loader.loadPDF(sheets.pdf().toFile())) {
                for (int page = 1; page <= document.getNumberOfPages(); page++) {
                    demandOnPaper(document, page);
                }
            }
        }
    }

    private static void demandOnPaper(PDDocument document, int page) throws IOException {
        List<PrintedSheets.Placed> placed = PrintedSheets.placed(document, page);
        double widthPt = document.getPage(page - 1).getMediaBox().getWidth();
        double footPt = placed.stream()
                .filter(text -> text.text().startsWith("Bold choices"))
                .mapToDouble(PrintedSheets.Placed::baselinePt)
                .findFirst()
                .orElseThrow();
        int foot = 0;
        for (PrintedSheets.Placed text : placed) {
            String where = "page " + page + ": " + text;
            assertTrue(text.leftPt() >= 14 / 25.4 * 72 - 0.5 && text.rightPt() <= widthPt - 10 / 25.4 * 72, where);
            assertTrue(text.baselinePt() >= 15 / 25.4 * 72, where);
            assertTrue(text.sizePt() >= 8.99, where);
            foot += text.baselinePt() >= footPt - 9 ? 1 : 0;
        }
        // Two lines at the foot, and nothing runs into them.
        assertTrue(foot <= 4, "page " + page + " has " + foot + " pieces at its foot");
    }

    @Test
    void fontsAreEmbeddedAndPaperIsAsAskedFor() throws IOException {
        demandFonts(us, 612, 792);
        demandFonts(metric, 595, 842);
    }

    private static void demandFonts(PrintedSheets sheets, int widthPt, int heightPt) throws IOException {
        try (PDDocument document = Loader.loadPDF(sheets.pdf().toFile())) {
            for (PDPage page : document.getPages()) {
                assertEquals(widthPt, page.getMediaBox().getWidth(), 1);
                assertEquals(heightPt, page.getMediaBox().getHeight(), 1);
                for (COSName name : page.getResources().getFontNames()) {
                    assertTrue(page.getResources().getFont(name).isEmbedded(), name.toString());
                }
            }
            assertTrue(document.getDocumentCatalog().getOpenAction() == null);
            assertFalse(document.isEncrypted());
        }
    }

    /** The same run gives the same bytes, whenever and wherever the sheets are made. */
    @Test
    void sheetsAreTheSameBytesAgain() throws IOException {
        PrintedSheets again = made("again", "--top", "8", "--units", "metric");
        for (String file : List.of("sheets.pdf", "sheets.html", "closeout.csv")) {
            assertArrayEquals(
                    Files.readAllBytes(folder.resolve("metric").resolve(file)),
                    Files.readAllBytes(again.pdf().resolveSibling(file)),
                    file);
        }
    }

    /** The page for browsers asks for nothing and runs nothing. */
    @Test
    void thePageLoadsNothing() throws IOException {
        String html = us.html();
        for (String word : List.of("<script", "src=", "url(", "<link", "<img", "<iframe", "@import", "javascript:")) {
            assertFalse(html.contains(word), word);
        }
        assertTrue(html.contains("default-src 'none'"));
        assertEquals(
                html.split("http", -1).length - html.split("http://www.w3.org/", -1).length,
                html.split("http-equiv", -1).length - 1,
                "addresses other than the names of XML languages");
    }

    @Test
    void aSpanThatIsNoCandidateHasASheetThatSaysSo() throws IOException {
        Map<String, String> byReason = new TreeMap<>();
        for (CSVRecord row : rows()) {
            if (!row.get("exclusion").isEmpty()) {
                byReason.putIfAbsent(row.get("exclusion"), row.get("span_id"));
            }
        }
        assertTrue(byReason.size() >= 15, byReason.toString());
        PrintedSheets sheets = made("excluded", byReason.values().toArray(String[]::new));

        for (Map.Entry<String, String> excluded : byReason.entrySet()) {
            List<String> pages = sheets.pdfTexts().stream()
                    .filter(text -> oneLine(text).contains("Span " + excluded.getValue() + ","))
                    .toList();
            assertTrue(pages.size() >= 2, excluded.toString());
            for (String page : pages) {
                String[] lines = page.split("\\R", -1);
                String top = String.join(" ", List.of(lines).subList(0, Math.min(8, lines.length)));
                assertTrue(top.contains("NOT A CANDIDATE: "), excluded + ": " + top);
            }
        }
        String unknown = textOf(sheets, byReason.get("contents_unknown"));
        assertTrue(unknown.contains("Contents not recorded: verify before work"), unknown);
        assertTrue(unknown.contains("Not drawn: the contents are not recorded."), unknown);
        String dead = oneLine(textOf(sheets, byReason.get("all_cables_dead")));
        assertTrue(dead.contains("proved dead before cutting by"), dead);
    }

    private static List<CSVRecord> rows() throws IOException {
        var format = org.apache.commons.csv.CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (var parser = format.parse(Files.newBufferedReader(run.resolve("spans.csv")))) {
            return parser.getRecords();
        }
    }

    /** What the page leaves out of a name it gives in full elsewhere, and no cell of a table is higher than its line. */
    @Test
    void streetsElsewhereAreReported() throws IOException {
        Path file = Files.writeString(
                folder.resolve("elsewhere.geojson"),
                "{\"type\":\"Feature\",\"properties\":{\"name\":\"A\"},"
                        + "\"geometry\":{\"type\":\"LineString\",\"coordinates\":[[38.9,52.5],[38.9,52.6]]}}");
        CommandRun far = sheets("far", "--top", "1", "--streets", file.toString());
        assertEquals(ExitCode.OK, far.exitCode(), far.err());
        assertTrue(far.out().contains("No street of elsewhere.geojson is within about 5 km of the spans"), far.out());
        CommandRun near = sheets("near", "--top", "1", "--streets", "sample-gis/streets.geojson", "--json");
        assertTrue(new ObjectMapper().readTree(near.out()).path("notes").isEmpty(), near.out());
    }

    @Test
    void jsonCountsWhatTheFilesHave() throws IOException {
        CommandRun made = sheets("json", "--top", "3", "--json");
        assertEquals(ExitCode.OK, made.exitCode(), made.err());
        JsonNode json = new ObjectMapper().readTree(made.out());
        var sheets = new PrintedSheets(folder.resolve("json"));

        assertEquals(3, json.get("spans").asInt());
        assertEquals(sheets.closeout().size(), json.get("blanks").asInt());
        assertEquals(sheets.htmlPages().size(), json.get("pages").asInt());
        assertEquals(0, json.get("no_candidates").asInt());
        assertEquals(3, json.get("files").size());
    }

    @ParameterizedTest
    @ValueSource(strings = {"sheets", ".", "..", "../demo"})
    void sheetsAreNotWrittenIntoTheRun(String place) {
        CommandRun refused = CommandRun.of(
                "sheets",
                run.toString(),
                "--top",
                "1",
                "--output",
                run.resolve(place).toString(),
                "--overwrite");

        assertEquals(ExitCode.USAGE, refused.exitCode(), refused.err());
        assertTrue(refused.complaint().contains("the folder of the run"), refused.err());
        assertTrue(Files.exists(run.resolve("run.json")));
    }

    @Test
    void anExistingFolderIsKept() throws IOException {
        byte[] before = Files.readAllBytes(us.pdf());
        CommandRun refused = sheets("us", "--top", "1");
        Path other = Files.createDirectory(folder.resolve("other"));
        Files.writeString(other.resolve("mine.txt"), "mine");
        CommandRun foreign = sheets("other", "--top", "1", "--overwrite");

        assertEquals(ExitCode.OUTPUT, refused.exitCode());
        assertTrue(refused.complaint().contains("--overwrite"), refused.err());
        assertArrayEquals(before, Files.readAllBytes(us.pdf()));
        assertEquals(ExitCode.OUTPUT, foreign.exitCode());
        assertEquals("mine", Files.readString(other.resolve("mine.txt")));
    }

    @Test
    void anUnknownSpanIsNamedWithTheNearest() throws IOException {
        String known = best(1).get(0);
        CommandRun refused = sheets("unknown", known.replaceFirst(".$", "x"));

        assertEquals(ExitCode.INPUT, refused.exitCode());
        assertTrue(refused.complaint().contains(known), refused.err());
        assertFalse(Files.exists(folder.resolve("unknown")));
    }

    @Test
    void tooManySpansAreRefused() {
        var words = new ArrayList<String>();
        for (int span = 0; span <= 2000; span++) {
            words.add("S" + span);
        }
        CommandRun refused = sheets("many", words.toArray(String[]::new));

        assertEquals(ExitCode.USAGE, refused.exitCode());
        assertTrue(refused.complaint().contains("up to 2,000"), refused.err());
    }

    @Test
    void inputsThatChangedAreRefused() throws IOException {
        Path city = folder.resolve("city");
        assertEquals(
                ExitCode.OK,
                CommandRun.of("sample", "--spans", "60", "--output", city.toString(), "--quiet")
                        .exitCode());
        Path changed = folder.resolve("changed");
        assertEquals(
                ExitCode.OK,
                CommandRun.of(
                                "rank",
                                "--config",
                                city.resolve("spanroom.yaml").toString(),
                                "--output",
                                changed.toString(),
                                "--quiet")
                        .exitCode());
        Path ducts = city.resolve("ducts.geojson");
        Files.writeString(ducts, Files.readString(ducts) + "\n");
        CommandRun refused = CommandRun.of(
                "sheets",
                changed.toString(),
                "--top",
                "1",
                "--output",
                folder.resolve("stale").toString());

        assertEquals(ExitCode.INPUT, refused.exitCode());
        assertTrue(refused.complaint().contains("has changed since the run"), refused.err());
        assertEquals(Optional.empty(), Optional.of(folder.resolve("stale")).filter(Files::exists));
    }
}
