package org.spanroom.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVRecord;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.model.fieldwork.SheetCode;
import org.spanroom.output.text.CsvFile;
import org.w3c.dom.Element;

/** Sheets of ducts with names that would break out of a page, with very many contents, with very long names, and of a crooked line. */
class SheetsHostileTest {
    private static final List<String> NAMES = List.of(
            "</style><script>alert(1)</script>",
            "<img src=x onerror=alert(1)>",
            "{{{text}}}{{#parts}}{{/parts}}",
            "&lt;b&gt; &amp; \"quoted\" 'single'",
            "=cmd|' /C calc'!A0",
            "abc\u202Efdp.exe",
            "\u0001\u0007bell\u000bx",
            "]]>",
            "long " + "x".repeat(3000),
            "many words " + "of a name ".repeat(60),
            "\u0394\u03b9\u03b1\u03b4\u03c1\u03bf\u03bc\u03ae \u0416\u0443\u043a",
            "\u4e95\u6238 \uD83D\uDE00",
            "a%7C|b:c%3A");

    private static final int INNERDUCTS = 12;

    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    static Path folder;

    private static PrintedSheets sheets;

    @BeforeAll
    static void makeSheets() throws IOException {
        writeLayers();
        Path run = folder.resolve("run");
        CommandRun ranked = CommandRun.of(
                "rank", "--config", folder.resolve("config.yaml").toString(), "--output", run.toString(), "--quiet");
        assertEquals(ExitCode.OK, ranked.exitCode(), ranked.err());
        List<String> spans;
        try (var parser = org.apache.commons.csv.CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(Files.newBufferedReader(run.resolve("spans.csv")))) {
            spans = parser.stream()
                    .map(row -> CsvFile.unguarded(row.get("span_id")))
                    .toList();
        }
        var words = new ArrayList<>(List.of(
                "sheets", run.toString(), "--output", folder.resolve("sheets").toString(), "--units", "us", "--"));
        words.addAll(spans);
        CommandRun made = CommandRun.of(words.toArray(String[]::new));
        assertEquals(ExitCode.OK, made.exitCode(), made.err());
        sheets = new PrintedSheets(folder.resolve("sheets"));
    }

    @Test
    void namesAreTexts() throws IOException {
        String html = sheets.html();
        for (String tag : List.of("<script", "<img", "onerror=alert(1)>\"")) {
            assertFalse(html.contains(tag), tag);
        }
        assertTrue(html.contains("Duct {{{text}}}{{#parts}}{{/parts}}"), "no template within a template");
        // The whole is XML, of our own elements only.
        Set<String> elements = sheets.htmlPages().stream()
                .flatMap(page -> all(page).stream())
                .map(Element::getTagName)
                .collect(Collectors.toSet());
        elements.removeAll(Set.of(
                "div",
                "p",
                "h1",
                "h2",
                "b",
                "span",
                "ul",
                "li",
                "table",
                "caption",
                "colgroup",
                "col",
                "thead",
                "tbody",
                "tr",
                "th",
                "td",
                "svg",
                "path",
                "circle",
                "rect",
                "line",
                "polyline",
                "polygon"));
        assertEquals(Set.of(), elements);
        assertFalse(html.contains("\u202E"), "no mark that turns text round");
        try (PDDocument document = Loader.loadPDF(sheets.pdf().toFile())) {
            assertEquals(null, document.getDocumentCatalog().getNames());
            for (PDPage page : document.getPages()) {
                assertEquals(List.of(), page.getAnnotations());
            }
        }
    }

    private static List<Element> all(Element within) {
        var found = new ArrayList<Element>();
        var nodes = within.getElementsByTagName("*");
        for (int place = 0; place < nodes.getLength(); place++) {
            found.add((Element) nodes.item(place));
        }
        return found;
    }

    /** Every duct has its two pages, and everything that was cut is on additional pages. */
    @Test
    void nothingIsLost() throws IOException {
        List<String> texts = sheets.pdfTexts();
        String all = String.join("\n", texts).replaceAll("\\s+", "");
        assertEquals(
                NAMES.size() + 2,
                texts.stream().filter(text -> text.contains("STOP RULE")).count());
        assertTrue(all.replace("\u2026", "").contains("x".repeat(2000)), "the long name is given in full");
        String crowded =
                texts.stream().filter(text -> text.contains("Duct crowded")).collect(Collectors.joining("\n"));
        assertTrue(crowded.contains("more on the additional page"), crowded);
        for (int innerduct = 1; innerduct <= INNERDUCTS; innerduct++) {
            assertTrue(crowded.contains("I" + innerduct + " "), "innerduct " + innerduct);
            assertTrue(crowded.contains("C" + innerduct + ", I" + innerduct), "cable " + innerduct);
        }
    }

    @Test
    void everyBlankHasOneRowAndEveryCodeIsRead() throws IOException {
        int drawn = sheets.htmlPages().stream()
                .mapToInt(page -> PrintedSheets.withClass(page, "span", "blank").size())
                .sum();
        List<CSVRecord> rows = sheets.closeout();
        assertEquals(drawn, rows.size());
        List<String> codes = sheets.codes(300);
        var unread = new ArrayList<Integer>();
        for (int page = 0; page < codes.size(); page++) {
            if (SheetCode.parse(codes.get(page)).isEmpty()) {
                unread.add(page);
            }
        }
        List<Element> pages = sheets.htmlPages();
        for (int page : unread) {
            assertTrue(
                    pages.get(page).getTextContent().contains("too long for a picture"),
                    "page " + (page + 1) + ": " + codes.get(page));
        }
        assertTrue(unread.size() < codes.size() / 2, "unread " + unread);
        for (CSVRecord row : rows) {
            SheetCode code = SheetCode.parse(CsvFile.unguarded(row.get("code"))).orElseThrow();
            String span = CsvFile.unguarded(row.get("span"));
            assertTrue(code.span().isEmpty() || span.isEmpty() || code.span().equals(span), row.toString());
        }
    }

    /** All is above the foot of its page, whatever the contents are. */
    @Test
    void nothingRunsIntoTheFoot() throws IOException {
        try (PDDocument document = Loader.loadPDF(sheets.pdf().toFile())) {
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                List<PrintedSheets.Placed> placed = PrintedSheets.placed(document, page);
                double footPt = placed.stream()
                        .filter(text -> text.text().startsWith("Bold choices"))
                        .mapToDouble(PrintedSheets.Placed::baselinePt)
                        .findFirst()
                        .orElseThrow();
                double widthPt = document.getPage(page - 1).getMediaBox().getWidth();
                int foot = 0;
                for (PrintedSheets.Placed text : placed) {
                    foot += text.baselinePt() >= footPt - 9 ? 1 : 0;
                    assertTrue(text.rightPt() <= widthPt - 10 / 25.4 * 72, "page " + page + ": " + text);
                }
                assertTrue(foot <= 4, "page " + page + " has " + foot + " pieces at its foot");
            }
        }
    }

    private static void writeLayers() throws IOException {
        var ducts = new ArrayList<String>();
        var vaults = new ArrayList<String>();
        for (int i = 0; i < NAMES.size(); i++) {
            String text = JSON.writeValueAsString(NAMES.get(i));
            add(ducts, vaults, text, i, "\"n\":3,\"bore\":100", "");
        }
        add(ducts, vaults, "\"crowded\"", NAMES.size(), "\"bore\":400", "");
        var bends = new StringBuilder();
        for (int bend = 1; bend < 30; bend++) {
            bends.append(
                    ",[%s,%s]".formatted(-30 + 0.0001 * bend, 40 + 0.002 * (NAMES.size() + 1) + 0.0001 * (bend % 2)));
        }
        add(ducts, vaults, "\"crooked\"", NAMES.size() + 1, "\"n\":4,\"bore\":100", bends.toString());
        String collection = "{\"type\":\"FeatureCollection\",\"features\":[%s]}";
        Files.writeString(folder.resolve("ducts.geojson"), collection.formatted(String.join(",", ducts)));
        Files.writeString(folder.resolve("vaults.geojson"), collection.formatted(String.join(",", vaults)));
        var contents = new StringBuilder("duct,kind,item,inside,outside_diameter,wall,in_service\n");
        for (int innerduct = 1; innerduct <= INNERDUCTS; innerduct++) {
            contents.append("crowded,innerduct,I%d,,42.2,3.1,\n".formatted(innerduct));
            contents.append("crowded,cable,C%d,I%d,15,,%s\n"
                    .formatted(innerduct, innerduct, innerduct % 3 == 0 ? "dead" : "live"));
        }
        Files.writeString(folder.resolve("contents.csv"), contents);
        Files.writeString(folder.resolve("config.yaml"), """
                inputs:
                  routes:
                    file: ducts.geojson
                    fields: {duct: duct, duct_bank: bank, innerduct_count: n, cable_count: n, duct_type: type,
                      inside_diameter: {field: bore, unit: mm}, in_service: live, owner_consent: consent, loose_cable_allowed: loose}
                  vaults: {file: vaults.geojson, fields: {vault: vault, vault_kind: kind, vault_surface: kind}}
                  contents: {file: contents.csv, diameter_unit: mm}
                """);
    }

    private static void add(
            List<String> ducts, List<String> vaults, String text, int row, String values, String between) {
        double lat = 40 + 0.002 * row;
        ducts.add(
                ("{\"type\":\"Feature\",\"properties\":{\"duct\":%s,\"bank\":%s,\"type\":%s,%s,\"live\":\"live\",\"consent\":\"yes\",\"loose\":\"yes\"},"
                                + "\"geometry\":{\"type\":\"LineString\",\"coordinates\":[[-30,%s]%s,[-29.997,%s]]}}")
                        .formatted(text, text, text, values, lat, between, lat));
        for (String lon : List.of("-30", "-29.997")) {
            String vault = text.substring(0, text.length() - 1) + (lon.equals("-30") ? "/w\"" : "/e\"");
            vaults.add(
                    "{\"type\":\"Feature\",\"properties\":{\"vault\":%s,\"kind\":%s},\"geometry\":{\"type\":\"Point\",\"coordinates\":[%s,%s]}}"
                            .formatted(vault, text, lon, lat));
        }
    }
}
