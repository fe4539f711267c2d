package org.spanroom.output;

import java.util.OptionalInt;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.rank.RankTotals;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.SpanFigures;
import org.spanroom.output.table.PackedRows;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.TableBatch;

/** Rows of spans that were packed when the spans were assessed. */
final class PackedSpanRows implements SpanRows {
    private final PackedResult packed;
    private final SpanFigures figures;
    private final PackedRows<RankedSpan, PlacedSpan>.Reader reader;
    private final Rows forLater;
    private final Rows forUsers;
    private final SpanTally tally = new SpanTally();

    /** The rows of one table, and the places of its columns among the packed ones. */
    private record Rows(TableSection<RankedSpan> section, TableBatch<RankedSpan> batch, int[] order) {
        static Rows of(TableSection<RankedSpan> section, PackedSpans rows) {
            return new Rows(section, section.newBatch(), rows.order(section.table()));
        }
    }

    PackedSpanRows(PackedResult packed, TableSection<RankedSpan> forLater, TableSection<RankedSpan> forUsers) {
        this.packed = packed;
        this.figures = packed.figures();
        this.reader = packed.rows().newReader();
        this.forLater = Rows.of(forLater, packed.rows());
        this.forUsers = Rows.of(forUsers, packed.rows());
    }

    @Override
    public void fill(int fromPlace, int toPlace) {
        for (int place = fromPlace; place < toPlace; place++) {
            PlacedSpan span = packed.places().apply(place);
            count(span);
            reader.read(span.number());
            Shape line = Shape.line(span.spans().lonLat(span.number()));
            forLater.batch().add(reader, forLater.order(), span, line);
            forUsers.batch().add(reader, forUsers.order(), span, line);
        }
    }

    private void count(PlacedSpan placed) {
        SpanList spans = placed.spans();
        int number = placed.number();
        OptionalInt rank = placed.rank();
        tally.add(
                figures.exclusion(number),
                rank.isPresent(),
                figures.isPullDoubtful(number),
                Math.max(0, figures.positionsAfter(number) - figures.positionsNow(number)),
                spans.lengthM(number),
                spans.drawnLengthM(number),
                spans.duct(number).kept());
    }

    @Override
    public RankTotals append() {
        forLater.section().append(forLater.batch());
        forUsers.section().append(forUsers.batch());
        return tally.take();
    }
}
