package org.spanroom.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.cli.DemoRun;
import org.spanroom.model.Line;
import org.spanroom.model.network.Street;
import org.spanroom.output.report.Chunk;

/** A page with details and streets that a test makes: what is asked for, and where it goes. */
class ReportRunTest {
    @TempDir
    Path folder;

    @Test
    void detailsOfTheBestSpansAreAskedForAndWhatIsLeftOutIsSaid() throws IOException {
        Path run = DemoRun.csv(folder);
        var asked = new ArrayList<String>();
        DetailSource some = (of, ids, progress, units) -> {
            asked.addAll(ids);
            return new DetailSource.Details(
                    3,
                    List.of(Chunk.of("data-details-0", json -> json.writeString("three"))),
                    Optional.of(new DetailSource.Bands(List.of(1, 1, 2), 64, 1.0 / 3)),
                    List.of());
        };
        DetailSource none = (of, ids, progress, units) ->
                new DetailSource.Details(0, List.of(), Optional.empty(), List.of("contents.csv <is missing>"));
        var street = new Street("Harbor \"Street\"", List.of(Line.ofXy(-122.4, 37.7, -122.39, 37.7)));

        ReportRun.ReportSummary with = new ReportRun(
                        run,
                        Progress.SILENT,
                        request("with.html"),
                        some,
                        (file, name) -> List.of(street),
                        ReportLimits.SHIPPED)
                .run();
        ReportRun.ReportSummary without = new ReportRun(
                        run,
                        Progress.SILENT,
                        request("without.html"),
                        none,
                        (file, name) -> List.of(),
                        ReportLimits.SHIPPED)
                .run();

        assertEquals(3, asked.size());
        assertEquals("B185-1:V4-1049:V4-1040", asked.get(0));
        assertEquals(3, with.detailedSpans());
        assertTrue(Files.readString(with.file()).contains("id=\"data-details-0\""));
        assertEquals(0, without.detailedSpans());
        assertEquals(List.of("contents.csv <is missing>"), without.notes());
        assertTrue(Files.readString(without.file()).contains("contents.csv &lt;is missing&gt;"));
        assertTrue(with.bytes() > without.bytes());
    }

    /** Where a run has more than a page shows: the best spans and the findings to fix, with counts of all, and the page says so. */
    @Test
    void ofMoreThanTheLimitThePageShowsTheBestAndSaysSo() throws IOException {
        Path run = DemoRun.csv(folder);
        DetailSource none = (of, ids, progress, units) -> DetailSource.Details.NONE;

        ReportRun.ReportSummary made = new ReportRun(
                        run,
                        Progress.SILENT,
                        request("limited.html"),
                        none,
                        (file, name) -> List.of(),
                        new ReportLimits(2465, 40, 100))
                .run();
        ReportPageData page = ReportPageData.read(made.file());

        assertEquals(2466, made.spans());
        assertEquals(40, made.shownSpans());
        assertEquals(40, page.core().at("/spans/rows").asInt());
        assertEquals(40, page.core().at("/counts/shownSpans").asInt());
        assertEquals(2466, page.core().at("/counts/spans").asInt());
        assertEquals(1243, page.core().at("/counts/ranked").asInt());
        assertEquals(40, page.core().at("/charts/frontier/points").size());
        assertEquals(9216, positionsByGroup(page));
        assertEquals(List.of("1", "40"), List.of(page.cell("spans", "rank", 0), page.cell("spans", "rank", 39)));
        assertEquals(100, page.core().at("/findings/rows").asInt());
        for (int row = 0; row < 100; row++) {
            assertTrue(!page.cell("findings", "severity", row).equals("note"), "a note before what is to fix");
        }
        assertTrue(page.html().contains("This page shows the best 40 spans of 2,466; sums and counts are of all"));
        assertTrue(
                page.html()
                        .contains(
                                "The map shows 100 of 1,019 findings: those to fix before the others. Their table counts all."));
        assertEquals(2, made.notes().size(), made.notes().toString());
    }

    private static int positionsByGroup(ReportPageData page) {
        int positions = 0;
        for (JsonNode group : page.core().at("/charts/by_district/rows")) {
            positions += group.get(1).asInt();
        }
        return positions;
    }

    @Test
    void upToTheLimitEverySpanAndFindingIsShown() throws IOException {
        Path run = DemoRun.csv(folder);
        DetailSource none = (of, ids, progress, units) -> DetailSource.Details.NONE;

        ReportRun.ReportSummary made = new ReportRun(
                        run,
                        Progress.SILENT,
                        request("whole.html"),
                        none,
                        (file, name) -> List.of(),
                        new ReportLimits(2466, 40, 1019))
                .run();

        assertEquals(2466, made.shownSpans());
        assertEquals(List.of(), made.notes());
    }

    private ReportRun.Request request(String file) {
        return new ReportRun.Request(
                Optional.empty(),
                Optional.of(folder.resolve("streets.geojson")),
                Optional.empty(),
                Optional.empty(),
                3,
                Optional.empty(),
                folder.resolve(file),
                false);
    }
}
