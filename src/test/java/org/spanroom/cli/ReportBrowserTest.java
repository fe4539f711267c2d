package org.spanroom.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.results.Rule;
import com.deque.html.axecore.selenium.AxeBuilder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.spanroom.testing.Browser;

/** The page about a run of the demo city in a real browser: what it shows is held against the CSV files of the run. */
class ReportBrowserTest {
    private static final CSVFormat CSV =
            CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();

    @TempDir
    static Path folder;

    private static Path run;
    private static Path page;
    private static List<CSVRecord> spans;
    private static Browser browser;

    @BeforeAll
    static void makeThePage() throws IOException {
        browser = Browser.start(1440, 900, folder);
        run = folder.resolve("demo");
        page = folder.resolve("page.html");
        CommandRun ranked =
                CommandRun.of("rank", "--config", "sample-gis/spanroom.yaml", "--output", run.toString(), "--quiet");
        assertEquals(new CommandRun(ExitCode.OK, "", ""), ranked);
        CommandRun made = CommandRun.of(
                "report",
                run.toString(),
                "--streets",
                "sample-gis/streets.geojson",
                "--details",
                "60",
                "--output",
                page.toString());
        assertEquals(ExitCode.OK, made.exitCode(), made.err());
        spans = csv(run.resolve("spans.csv"));
    }

    @AfterAll
    static void closeTheBrowser() {
        if (browser != null) {
            browser.close();
        }
    }

    @BeforeEach
    void openThePage() {
        browser.resize(1440, 900);
        browser.open(page);
    }

    /** Whatever a test does, the console has no error and nothing is requested. */
    @AfterEach
    void nothingWentWrongAndNothingWasRequested() {
        assertEquals(List.of(), browser.problems());
        assertEquals(List.of(), browser.requests(page));
    }

    private static List<CSVRecord> csv(Path file) throws IOException {
        try (var parser = CSV.parse(Files.newBufferedReader(file))) {
            return parser.getRecords();
        }
    }

    private static WebElement element(String selector) {
        return browser.driver().findElement(By.cssSelector(selector));
    }

    /** Returns a row of the table in view, by the names of its columns. */
    private static Map<String, String> row(int index) {
        Map<String, String> cells = new HashMap<>();
        List<WebElement> headings = browser.driver().findElements(By.cssSelector("#grid-head [role=columnheader]"));
        List<WebElement> values =
                element("#grid-body [data-index='" + index + "']").findElements(By.cssSelector("[role=gridcell]"));
        for (int i = 0; i < headings.size(); i++) {
            cells.put(
                    headings.get(i).getDomProperty("textContent"), values.get(i).getDomProperty("textContent"));
        }
        return cells;
    }

    @Test
    void theTableShowsTheFiguresOfTheRun() {
        for (int index = 0; index < 10; index++) {
            Map<String, String> shown = row(index);
            CSVRecord span = spans.get(index);
            assertEquals(span.get("span_id"), shown.get("Span"));
            assertEquals(span.get("rank"), shown.get("Rank"));
            assertEquals(
                    Double.parseDouble(span.get("score_points")),
                    Double.parseDouble(shown.get("Score (points)")),
                    0.005);
            assertEquals(Double.parseDouble(span.get("length_m")), Double.parseDouble(shown.get("Length (m)")), 0.005);
            assertEquals(span.get("positions_gained"), shown.get("Positions gained"));
        }
    }

    @Test
    void theKeyboardOpensTheCardAndComesBack() {
        CSVRecord best = spans.get(0);
        element("#grid-body [data-index='0'] [data-column='0']").click();
        new Actions(browser.driver()).sendKeys(Keys.ENTER).perform();
        browser.waitUntil("return document.getElementById('card').open");
        browser.waitUntil("return document.querySelectorAll('#card-body svg').length > 0");
        String card = element("#card").getDomProperty("textContent");

        assertTrue(card.contains(best.get("span_id")), card);
        assertTrue(card.contains(best.get("positions_gained")), card);
        assertTrue(card.contains("innerduct strength"), "the calculation tree has the limits");
        browser.run(
                "document.getElementById('card-body').querySelectorAll('.chart').forEach(chart => chart.scrollIntoView())");
        browser.waitUntil(
                "return document.querySelectorAll('#card-body .chart svg, #card-body .chart canvas').length > 0");

        new Actions(browser.driver()).sendKeys(Keys.ESCAPE).perform();
        browser.waitUntil("return !document.getElementById('card').open");
        assertEquals(true, browser.run("return document.getElementById('grid').contains(document.activeElement)"));
    }

    /** The page's own arithmetic against the program's, over all spans of the city. */
    @Test
    void otherWeightsRankAsTheProgramDoes() throws IOException {
        browser.run("const slider = document.getElementById('weight-room_gained');"
                + "slider.value = 0; slider.dispatchEvent(new Event('input'));");
        browser.waitUntil("return Spanroom.hasOtherWeights()");
        Path scoring = folder.resolve("scoring.yaml");
        Files.writeString(scoring, (String) browser.run("return document.getElementById('scoring-text').value"));
        CommandRun again = CommandRun.of(
                "rank",
                "--from",
                run.toString(),
                "--scoring",
                scoring.toString(),
                "--output",
                folder.resolve("again").toString(),
                "--overwrite");
        assertEquals(ExitCode.OK, again.exitCode(), again.err());
        Map<String, String> ranks = new HashMap<>();
        csv(folder.resolve("again/spans.csv")).forEach(row -> ranks.put(row.get("span_id"), row.get("rank")));

        List<?> shown = (List<?>) browser.run("return Array.from({length: Spanroom.spans.rows}, (_, row) =>"
                + " Spanroom.spans.value(row, 'span_id') + '\\t' + (Spanroom.live.ranks[row] || ''))");

        assertEquals(spans.size(), shown.size());
        int moved = 0;
        for (int i = 0; i < shown.size(); i++) {
            String[] span = shown.get(i).toString().split("\t", -1);
            assertEquals(ranks.get(span[0]), span[1], span[0]);
            moved += span[1].equals(spans.get(i).get("rank")) ? 0 : 1;
        }
        assertTrue(moved > 500, moved + " spans moved");
    }

    @Test
    void theLegendFiltersMapAndTable() {
        long all = (Long) browser.run("return Spanroom.live.rows.length");
        WebElement excluded = element("#legend input[type=checkbox]:checked");
        assertEquals(spans.size(), all);
        excluded.click();
        browser.waitUntil("return Spanroom.live.rows.length < " + all);
        long left = (Long) browser.run("return Spanroom.live.rows.length");
        assertEquals(spans.size() - 10, left, "without ranks 1 to 10");
        assertTrue(element("#table-count").getText().replace(",", "").startsWith(Long.toString(left)));
    }

    @Test
    void searchFindsASpanAndTheFileHasWhatIsShown() throws IOException {
        String wanted = spans.get(30).get("span_id");
        element("#search").sendKeys(wanted);
        browser.waitUntil("return Spanroom.live.rows.length === 1");
        element("#save-csv").click();
        Path saved = waitForFile();
        List<CSVRecord> rows = csv(saved);

        assertEquals(1, rows.size());
        assertTrue(rows.get(0).toMap().containsValue(wanted), rows.toString());
    }

    /** What is typed on the way to a filter filters nothing. */
    @Test
    void numbersAreFilteredByLimitsAndRangesOnceTheyAreFinished() {
        element("#show-filters").click();
        WebElement gained = browser.driver()
                .findElements(By.cssSelector("#grid-head input"))
                .get(headings().indexOf("Positions gained"));
        Map<String, Long> expected = Map.of(
                ">", (long) spans.size(),
                ">9", gaining(10, Integer.MAX_VALUE),
                "9", gaining(9, 9),
                "9..", (long) spans.size(),
                "9..12", gaining(9, 12),
                "9 to 12", gaining(9, 12),
                ",", (long) spans.size());

        expected.forEach((filter, rows) -> {
            type(gained, "=-99");
            browser.waitUntil("return Spanroom.live.rows.length === 0");
            type(gained, filter);
            browser.waitUntil("return Spanroom.live.rows.length === " + rows);
        });
        assertTrue(gaining(9, 12) > 100, "spans in the range");
    }

    private static void type(WebElement field, String text) {
        browser.run(
                "arguments[0].value = arguments[1]; arguments[0].dispatchEvent(new Event('input', {bubbles: true}))",
                field,
                text);
    }

    private static List<String> headings() {
        return browser.driver().findElements(By.cssSelector("#grid-head [role=columnheader]")).stream()
                .map(heading -> heading.getDomProperty("textContent"))
                .toList();
    }

    private static long gaining(int least, int most) {
        return spans.stream()
                .map(span -> span.get("positions_gained"))
                .filter(gained -> !gained.isEmpty())
                .mapToInt(Integer::parseInt)
                .filter(gained -> gained >= least && gained <= most)
                .count();
    }

    /** Recovery and new build are alternatives: the account has a sum of each and the difference, not one sum of both. */
    @Test
    void theAccountOfACardEndsInTheFiguresOfTheRun() {
        CSVRecord best = spans.get(0);
        browser.run("Spanroom.select(0, {from: 'summary'})");
        browser.waitUntil("return document.querySelectorAll('#card-body tfoot tr').length > 0");
        List<Double> sums = browser.driver().findElements(By.cssSelector("#card-body tfoot td.number")).stream()
                .map(cell ->
                        Double.parseDouble(cell.getDomProperty("textContent").replace(",", "")))
                .toList();

        assertEquals(3, sums.size());
        assertEquals(Double.parseDouble(best.get("recovery_money")), sums.get(0), 0.02);
        assertEquals(Double.parseDouble(best.get("build_money")), sums.get(1), 0.02);
        assertEquals(Double.parseDouble(best.get("saving_money")), sums.get(2), 0.02);
    }

    /** The last spans have no calculation in the page; its card says which command prints it. */
    @Test
    void aCardWithoutDetailsSaysHowToGetThem() {
        browser.run("Spanroom.select(1000, {from: 'summary'})");
        browser.waitUntil("return document.querySelectorAll('#card-body pre').length > 0");

        assertEquals(
                "spanroom explain " + spans.get(1000).get("span_id") + " --run demo",
                element("#card-body pre").getText());
    }

    private static Path waitForFile() throws IOException {
        for (int attempt = 0; attempt < 100; attempt++) {
            try (Stream<Path> files = Files.list(folder)) {
                var found =
                        files.filter(file -> file.toString().endsWith(".csv")).findFirst();
                if (found.isPresent()) {
                    return found.get();
                }
            }
            browser.run("return 0");
            try {
                Thread.sleep(100);
            } catch (InterruptedException interrupted) {
                Thread.currentThread().interrupt();
            }
        }
        throw new AssertionError("no file was saved");
    }

    /** Near enough that spans lie side by side, the middle of the best one as drawn is clicked. */
    @Test
    void aClickOnTheMapOpensTheSpanThere() {
        browser.run("document.getElementById('map').scrollIntoView(); Spanroom.goToSpan(0)");
        browser.waitUntil("return Spanroom.shapes.drawn.lines.some(line => line.row === 0)");
        var at = (Map<?, ?>) browser.run("""
                const {view, lines} = Spanroom.shapes.drawn;
                const at = lines.find(line => line.row === 0).at;
                const middle = 2 * Math.floor(at.length / 4);
                const map = Spanroom.leafletMap;
                const origin = map.getPixelOrigin();
                const point = map.layerPointToContainerPoint([at[middle] + view.x - origin.x, at[middle + 1] + view.y - origin.y]);
                const frame = document.getElementById('map-view').getBoundingClientRect();
                return {x: Math.round(frame.x + point.x), y: Math.round(frame.y + point.y)};
                """);
        new Actions(browser.driver())
                .moveToLocation(((Number) at.get("x")).intValue(), ((Number) at.get("y")).intValue())
                .click()
                .perform();
        browser.waitUntil("return document.getElementById('card').open");

        assertEquals(
                spans.get(0).get("span_id"),
                browser.run("return Spanroom.spans.value(Spanroom.live.selected, 'span_id')"));
        assertTrue(element("#card-title").getText().contains(spans.get(0).get("span_id")));
        element("#card-close").click();
        browser.waitUntil("return !document.getElementById('card').open");
    }

    @ParameterizedTest
    @ValueSource(ints = {390, 1440, 3840})
    void nothingIsWiderThanTheWindow(int widthPx) {
        browser.resize(widthPx, 1000);
        browser.open(page);
        long wide = (Long) browser.run("return document.scrollingElement.scrollWidth");
        long window = (Long) browser.run("return window.innerWidth");
        assertEquals(widthPx, window);
        assertTrue(wide <= window, wide + " in a window of " + window);
    }

    /** Web Content Accessibility Guidelines 2.2, levels A and AA, as far as axe-core can judge. */
    @ParameterizedTest
    @ValueSource(strings = {"light", "dark"})
    void theRulesOfAccessibilityHold(String theme) {
        if (theme.equals("dark")) {
            element("#theme").click();
        }
        browser.run("Spanroom.select(0, {from: 'summary'})");
        browser.waitUntil("return document.querySelectorAll('#card-body svg').length > 0");
        List<Rule> violations = new AxeBuilder()
                .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"))
                .analyze(browser.driver())
                .getViolations();
        assertEquals(
                List.of(),
                violations.stream()
                        .map(rule -> rule.getId() + ": " + rule.getHelp() + " "
                                + rule.getNodes().get(0).getHtml())
                        .toList());
        assertFalse(element("#card-body").getText().isEmpty());
    }
}
