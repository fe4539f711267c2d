package org.spanroom.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;
import java.util.function.LongConsumer;
import java.util.function.Predicate;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.network.SectionKey;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.rank.CriterionInfo;
import org.spanroom.model.rank.RankTotals;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.output.table.TableBatch;
import org.spanroom.parallel.OrderedWriter;

/**
 * The rows of one run on their way into its files.
 *
 * <p>Spans are asked for and made into rows of every file in chunks of a fixed size, by several threads; the chunks are appended in
 * order. So neither the number of threads shows in the bytes nor the number of spans in the memory.
 */
final class ResultRows {
    /** Spans of thousands of vertices come fewer at a time: a chunk takes up to a hundred bytes for each, in every format. */
    private static final int CHUNK_VERTICES = 100_000;

    private static final int SAMPLE = 100;

    private final Results results;
    private final ResultFiles files;
    private final int threads;
    private final int spansAtOnce;
    private final List<SpanSection<?>> ofSpans = new ArrayList<>();
    private final List<Consumer<Results>> ofRun = new ArrayList<>();
    private final SpanLayout layout;
    private final SpanSection<RankedSpan> forLater;
    private final Set<SectionKey> keptSections = ConcurrentHashMap.newKeySet();
    private final ZoneTally zones = new ZoneTally();
    private Optional<TableSection<RankedSpan>> forUsers = Optional.empty();
    private RankTotals totals = RankTotals.NONE;

    /** Begins every table of the list. */
    ResultRows(Results results, ResultFiles files, int threads) {
        this.results = results;
        this.files = files;
        this.threads = threads;
        this.spansAtOnce = spansAtOnce(results.network().spans());
        layout = layout(results, files.groups());
        forLater = new SpanSection<>(
                files.beginForLater(
                        SpanColumns.forLater(layout), results.selection().isAll()),
                new RowSource.OfSpans<>(List::of, true));
        ResultTables.ALL.stream()
                .filter(entry -> entry.isAmong(layout.groups()))
                .forEach(this::begin);
    }

    private <R> void begin(ResultTable<R> entry) {
        if (entry.name().equals(ResultTables.SPANS.name())) {
            beginSpans();
            return;
        }
        TableSection<R> section = files.begin(entry, entry.table(layout));
        if (entry.source() instanceof RowSource.OfSpans<R> source) {
            ofSpans.add(new SpanSection<>(section, source));
        } else if (entry.source() instanceof RowSource.OfRun<R> source) {
            ofRun.add(kept -> section.write(source.rows().apply(kept)));
        }
    }

    private void beginSpans() {
        forUsers = Optional.of(files.begin(ResultTables.SPANS, ResultTables.SPANS.table(layout)));
        ofSpans.add(new SpanSection<>(forUsers.get(), new RowSource.OfSpans<>(List::of, true)));
    }

    /** A table whose rows belong to spans. */
    private record SpanSection<R>(TableSection<R> table, RowSource.OfSpans<R> source) {
        Part<R> newPart() {
            return new Part<>(table, source, table.newBatch());
        }
    }

    /** What belongs to a chunk of spans in one table. */
    private record Part<R>(TableSection<R> table, RowSource.OfSpans<R> source, TableBatch<R> batch) {
        void add(RankedSpan span) {
            source.rows().apply(span).forEach(batch::add);
        }

        void append() {
            table.append(batch);
        }
    }

    /** A chunk of spans, with what belongs to them in every table. */
    private final class SpanChunk implements SpanRows {
        private final List<Part<?>> parts = new ArrayList<>();
        private final Part<RankedSpan> all = forLater.newPart();
        private final SpanTally tally = new SpanTally();
        private final ZoneTally ofZones = new ZoneTally();
        private final Predicate<RankedSpan> test = newTest();

        SpanChunk() {
            ofSpans.forEach(section -> parts.add(section.newPart()));
        }

        @Override
        public void fill(int fromPlace, int toPlace) {
            for (int place = fromPlace; place < toPlace; place++) {
                RankedSpan span = results.spans().at(place);
                tally.add(span);
                ofZones.add(span.assessment().permits());
                all.add(span);
                if (test.test(span)) {
                    parts.forEach(part -> part.add(span));
                    noteSection(span);
                }
            }
        }

        @Override
        public RankTotals append() {
            all.append();
            parts.forEach(Part::append);
            zones.take(ofZones);
            return tally.take();
        }
    }

    /**
     * Writes all rows.
     *
     * @param progress receives how many more spans are written
     */
    void write(LongConsumer progress) {
        int chunks = TableSection.chunks(results.spans().size(), spansAtOnce);
        new OrderedWriter<>(chunks, threads, this::newRows, this::fill, rows -> {
                    RankTotals appended = rows.append();
                    totals = totals.plus(appended);
                    progress.accept(appended.spans());
                })
                .run();
        packed().ifPresent(packed -> packed.rows().addZones(zones));
        // Each row has been read. The memory is needed for what follows, and a file must be gone before the folder is
        // complete.
        packed().ifPresent(packed -> packed.rows().close());
        Results kept = kept().withZones(zones.counted(results.zones()));
        ofRun.forEach(table -> table.accept(kept));
    }

    private SpanRows newRows() {
        return packed().<SpanRows>map(packed -> new PackedSpanRows(packed, forLater.table(), forUsers.orElseThrow()))
                .orElseGet(SpanChunk::new);
    }

    /** Returns the packed rows, where rows are written from them: zones were then counted as they were packed. */
    private Optional<PackedResult> packed() {
        return results.packed().filter(packed -> forUsers.isPresent());
    }

    private void fill(SpanRows rows, int chunk) {
        int end = (int) Math.min(results.spans().size(), (chunk + 1L) * spansAtOnce);
        rows.fill(chunk * spansAtOnce, end);
    }

    private Predicate<RankedSpan> newTest() {
        return results.selection()
                .of(SpanColumns.all(layout), span -> Optional.of(span.span().lonLat()));
    }

    private void noteSection(RankedSpan span) {
        if (!results.selection().isAll()) {
            keptSections.add(SectionKey.of(span.span()));
        }
    }

    /** Returns the run with the sections and field checks of the spans that are written. */
    private Results kept() {
        if (results.selection().isAll()) {
            return results;
        }
        Predicate<RankedSpan> test = newTest();
        return results.withOnly(
                results.sections().stream()
                        .filter(section -> keptSections.contains(section.key()))
                        .toList(),
                results.fieldChecks().stream()
                        .filter(check -> test.test(check.span()))
                        .toList());
    }

    /** Returns counts and sums over all spans of the run. */
    RankTotals totals() {
        return totals;
    }

    /** Judged by some spans, evenly over the network. */
    private static int spansAtOnce(SpanList spans) {
        int looked = Math.min(SAMPLE, spans.size());
        long vertices = looked;
        for (int i = 0; i < looked; i++) {
            int number = (int) ((long) i * spans.size() / looked);
            vertices += spans.get(number).lonLat().size();
        }
        return (int) Math.max(1, Math.min(TableSection.CHUNK, (long) CHUNK_VERTICES * looked / Math.max(1, vertices)));
    }

    /** Returns what the tables of a run depend on. */
    private static SpanLayout layout(Results results, Set<ColumnGroup> groups) {
        List<CriterionInfo> criteria = results.spans().first(1).stream()
                .flatMap(row -> row.score().criteria().stream())
                .toList();
        boolean hasFieldBook = results.run().inputs().stream().anyMatch(RunRecord.Input::isFieldBook);
        return new SpanLayout(
                criteria, results.network().spans().hasElevations(), results.kept(), groups, hasFieldBook);
    }
}
