package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.spanroom.model.UnitSystem;
import org.spanroom.output.report.Chunk;
import org.spanroom.output.report.ReportBands;

/** Where a page has the details of spans from. */
interface DetailSource {
    /**
     * Details of spans.
     *
     * @param spans how many spans have details: the first of those asked for
     * @param chunks their packs
     * @param bands bands of the ranked spans among them; empty where nothing was simulated
     * @param notes what is left out and why
     */
    record Details(int spans, List<Chunk> chunks, Optional<Bands> bands, List<String> notes) {
        /** What a page without details has. */
        static final Details NONE = new Details(0, List.of(), Optional.empty(), List.of());
    }

    /**
     * Score bands.
     *
     * @param bandOfSpan the band of each ranked span asked for, from 1, in their order
     */
    record Bands(List<Integer> bandOfSpan, int draws, double shareRatio) {
        /** Returns the bands with how many spans each has; the spans are the first rows of the page. */
        ReportBands table() {
            var bands = new ArrayList<ReportBands.Band>();
            for (int row = 0; row < bandOfSpan.size(); row++) {
                int number = bandOfSpan.get(row);
                boolean begins = bands.isEmpty() || bands.get(bands.size() - 1).number() != number;
                var band = begins ? new ReportBands.Band(number, 0, row) : bands.remove(bands.size() - 1);
                bands.add(new ReportBands.Band(number, band.spans() + 1, band.bestRow()));
            }
            return new ReportBands(draws, shareRatio, bands);
        }
    }

    /**
     * Finds the details of spans.
     *
     * @param spanIds the best first; row numbers of the page are their places
     * @param units that people are shown
     */
    Details of(Path run, List<String> spanIds, Progress progress, UnitSystem units);
}
