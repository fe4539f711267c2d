package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.network.Street;
import org.spanroom.output.report.Chunk;
import org.spanroom.output.report.DetailJson;
import org.spanroom.output.report.SpanDetail;

/** Where a page has details of spans and streets from. */
final class ReportSources {
    /** So many spans are in one pack, which a browser unpacks when a card of it is opened. */
    static final int PACK = 50;

    private ReportSources() {}

    /** Returns the details of spans, calculated from the inputs of their run, in packs. */
    static DetailSource.Details details(Path run, List<String> spanIds, Progress progress, UnitSystem units) {
        ReportDetails.Found found = ReportDetails.of(run, spanIds, progress, Optional.of(units));
        List<SpanDetail> all = found.details();
        var chunks = new ArrayList<Chunk>();
        for (int from = 0; from < all.size(); from += PACK) {
            List<SpanDetail> pack = all.subList(from, Math.min(from + PACK, all.size()));
            List<Integer> rows =
                    IntStream.range(from, from + pack.size()).boxed().toList();
            chunks.add(Chunk.of("data-details-" + chunks.size(), json -> DetailJson.write(pack, rows, units, json)));
        }
        return new DetailSource.Details(
                all.size(),
                chunks,
                found.bands()
                        .map(bands -> new DetailSource.Bands(bands.bandOfSpan(), bands.samples(), bands.shareRatio())),
                found.notes());
    }

    static List<Street> streets(Path file, Optional<String> nameField) {
        return StreetReader.read(file, nameField);
    }
}
