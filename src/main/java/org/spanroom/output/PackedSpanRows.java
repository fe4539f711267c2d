package org.spanroom.output;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.spanroom.model.Prefetch;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.rank.RankTotals;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.SpanFigures;
import org.spanroom.output.table.PackedRows;
import org.spanroom.output.table.Row;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.TableBatch;

/** Rows of spans that were packed when the spans were assessed. */
final class PackedSpanRows implements SpanRows {
    private final PackedResult packed;
    private final SpanFigures figures;
    private final PackedRows<RankedSpan, PlacedSpan>.Reader reader;
    private final Rows forLater;
    private final Rows forUsers;

    /** The cells for users, where they are the first of those for later: made once. */
    private final Optional<Row<RankedSpan>> shared;

    private final SpanTally tally = new SpanTally();

    /** The rows of one table, and the places of its columns among the packed ones. */
    private static final class Rows {
        private final TableSection<RankedSpan> section;
        private final TableBatch<RankedSpan> batch;
        private final int[] order;

        private Rows(TableSection<RankedSpan> section, PackedSpans rows) {
            this.section = section;
            batch = section.newBatch();
            order = rows.order(section.table());
        }

        void add(PackedRows<RankedSpan, PlacedSpan>.Reader row, PlacedSpan span, Shape line) {
            batch.add(row, order, span, line);
        }

        void append() {
            section.append(batch);
        }

        /** Returns whether these rows are the first columns of others, and their shapes in the same system. */
        boolean areFirstOf(Rows others) {
            return section.frame().equals(others.section.frame())
                    && order.length <= others.order.length
                    && Arrays.equals(order, 0, order.length, others.order, 0, order.length);
        }
    }

    PackedSpanRows(PackedResult packed, TableSection<RankedSpan> forLater, TableSection<RankedSpan> forUsers) {
        this.packed = packed;
        this.figures = packed.figures();
        this.reader = packed.rows().newReader();
        this.forLater = new Rows(forLater, packed.rows());
        this.forUsers = new Rows(forUsers, packed.rows());
        shared = this.forUsers.areFirstOf(this.forLater)
                ? Optional.of(this.forLater.batch.firstColumns(this.forUsers.order.length))
                : Optional.empty();
    }

    @Override
    public void fill(int fromPlace, int toPlace) {
        for (int from = fromPlace; from < toPlace; from += Prefetch.AT_ONCE) {
            fillPrefetched(from, Math.min(toPlace, from + Prefetch.AT_ONCE));
        }
    }

    private void fillPrefetched(int fromPlace, int toPlace) {
        PlacedSpan[] placed =
                IntStream.range(fromPlace, toPlace).mapToObj(packed.places()).toArray(PlacedSpan[]::new);
        int[] numbers = Arrays.stream(placed).mapToInt(PlacedSpan::number).toArray();
        placed[0].spans().prefetch(numbers);
        figures.prefetch(numbers);
        reader.prefetch(numbers);
        for (PlacedSpan span : placed) {
            count(span);
            reader.read(span.number());
            Shape line = Shape.line(span.spans().lonLat(span.number()));
            forLater.add(reader, span, line);
            if (shared.isPresent()) {
                forUsers.batch.addShared(shared.get());
            } else {
                forUsers.add(reader, span, line);
            }
        }
    }

    private void count(PlacedSpan placed) {
        SpanList spans = placed.spans();
        int number = placed.number();
        OptionalInt rank = placed.rank();
        tally.add(
                figures.exclusion(number),
                rank.isPresent(),
                new SpanTally.Doubts(figures.isPullDoubtful(number), figures.isBendTight(number)),
                Math.max(0, figures.positionsAfter(number) - figures.positionsNow(number)),
                spans.lengthM(number),
                spans.drawnLengthM(number),
                spans.duct(number).kept());
    }

    @Override
    public RankTotals append() {
        forLater.append();
        forUsers.append();
        return tally.take();
    }
}
