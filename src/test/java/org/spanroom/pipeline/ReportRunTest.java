package org.spanroom.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

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

        ReportRun.ReportSummary with =
                new ReportRun(run, Progress.SILENT, request("with.html"), some, (file, name) -> List.of(street), ReportLimits.SHIPPED).run();
        ReportRun.ReportSummary without =
                new ReportRun(run, Progress.SILENT, request("without.html"), none, (file, name) -> List.of(), ReportLimits.SHIPPED).run();

        assertEquals(3, asked.size());
        assertEquals("B185-1:V4-1049:V4-1040", asked.get(0));
        assertEquals(3, with.detailedSpans());
        assertTrue(Files.readString(with.file()).contains("id=\"data-details-0\""));
        assertEquals(0, without.detailedSpans());
        assertEquals(List.of("contents.csv <is missing>"), without.notes());
        assertTrue(Files.readString(without.file()).contains("contents.csv &lt;is missing&gt;"));
        assertTrue(with.bytes() > without.bytes());
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
