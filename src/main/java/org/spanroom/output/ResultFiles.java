package org.spanroom.output;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongConsumer;
import org.spanroom.finding.Finding;
import org.spanroom.model.Bend;
import org.spanroom.model.CriterionInfo;
import org.spanroom.model.FieldCheck;
import org.spanroom.model.InnerductPull;
import org.spanroom.model.OutputFormat;
import org.spanroom.model.RankTotals;
import org.spanroom.model.RankedSpan;
import org.spanroom.model.SpanList;
import org.spanroom.model.VaultUse;

/**
 * The files of one run while they are written.
 *
 * <p>Spans are asked for and made into rows of every file in chunks of a fixed size, by several threads; the chunks are appended in
 * order. So neither the number of threads shows in the bytes nor the number of spans in the memory.
 */
final class ResultFiles implements AutoCloseable {
    /** Large enough to make handing over cheap, small enough that a few chunks take little memory. */
    private static final int CHUNK = 512;

    /** Spans of thousands of vertices come fewer at a time: a chunk takes up to a hundred bytes for each, in every format. */
    private static final int CHUNK_VERTICES = 100_000;

    private static final int SAMPLE = 100;

    private final Results results;
    private final int threads;
    private final LayerOptions options;
    private final Set<OutputFormat> formats;
    private final Optional<GeoPackageWriter> geoPackage;
    private final Optional<OptionalShapefile> shapefile;
    private final List<AutoCloseable> ofGeoPackage = new ArrayList<>();
    private final List<AutoCloseable> others = new ArrayList<>();
    private final Section<RankedSpan> spans;
    private final Section<VaultUse> vaults;
    private final Section<BendRow> bends;
    private final Section<PermitRow> permits;
    private final Section<PullRow> pulls;
    private final Section<Finding> findings;
    private final Section<FieldCheck> fieldChecks;
    private final int spansAtOnce;
    private RankTotals totals = RankTotals.NONE;
    private boolean finished;

    /** A table with the files that hold it. */
    private record Section<R>(Table<R> table, List<TableFile> files, Frame frame) {
        TableBatch<R> newBatch() {
            return new TableBatch<>(table, frame, files);
        }
    }

    /** A chunk of spans, with what belongs to them in tables of its own. */
    private final class SpanChunk {
        private final TableBatch<RankedSpan> ofSpans = spans.newBatch();
        private final TableBatch<BendRow> ofBends = bends.newBatch();
        private final TableBatch<PermitRow> ofPermits = permits.newBatch();
        private final TableBatch<PullRow> ofPulls = pulls.newBatch();
        private final SpanTally tally = new SpanTally();

        void fill(int chunk) {
            int end = (int) Math.min(results.spans().size(), (chunk + 1L) * spansAtOnce);
            for (int place = chunk * spansAtOnce; place < end; place++) {
                add(results.spans().at(place));
            }
        }

        private void add(RankedSpan row) {
            ofSpans.add(row);
            int number = 0;
            for (Bend bend : row.assessment().bends().list()) {
                ofBends.add(new BendRow(row.span(), ++number, bend));
            }
            PermitRow.of(row).forEach(ofPermits::add);
            for (InnerductPull pull : row.assessment().pull().pulls()) {
                ofPulls.add(new PullRow(row.span(), pull));
            }
            tally.add(row);
        }

        void append() {
            ofSpans.append();
            ofBends.append();
            ofPermits.append();
            ofPulls.append();
            totals = totals.plus(tally.take());
        }
    }

    ResultFiles(Results results, OutputSettings settings, Path folder) {
        this.results = results;
        this.threads = settings.threads();
        this.spansAtOnce = spansAtOnce(results.network().spans());
        this.options = new LayerOptions(settings.crs(), results.run().startedAt());
        this.formats = settings.formats().isEmpty() ? Set.of() : EnumSet.copyOf(settings.formats());
        Table<RankedSpan> table = table(results);
        geoPackage = writes(OutputFormat.GEOPACKAGE)
                ? Optional.of(new GeoPackageWriter(folder.resolve("spanroom.gpkg"), options))
                : Optional.empty();
        spans = section(table);
        vaults = section(VaultColumns.TABLE);
        bends = section(BendColumns.TABLE);
        permits = section(PermitRow.TABLE);
        pulls = section(PullRow.TABLE);
        findings = section(FindingColumns.TABLE);
        fieldChecks = section(FieldCheckColumns.TABLE);
        geoPackage.ifPresent(ofGeoPackage::add);
        if (writes(OutputFormat.GEOJSON)) {
            add(spans, new GeoJsonFile(folder.resolve("spans.geojson"), table));
            add(permits, new GeoJsonFile(folder.resolve("permits.geojson"), permits.table()));
        }
        shapefile = writes(OutputFormat.SHAPEFILE)
                ? Optional.of(new OptionalShapefile(
                        folder.resolve("spans.shp"),
                        table,
                        options,
                        results.spans().size()))
                : Optional.empty();
        shapefile.ifPresent(file -> add(spans, file));
        if (writes(OutputFormat.CSV)) {
            add(spans, new CsvFile(folder.resolve("spans.csv"), table));
            add(permits, new CsvFile(folder.resolve("permits.csv"), permits.table()));
            add(pulls, new CsvFile(folder.resolve("pulls.csv"), pulls.table()));
            add(fieldChecks, new CsvFile(folder.resolve("field_checks.csv"), fieldChecks.table()));
        }
        if (writes(OutputFormat.CSV) || !writes(OutputFormat.GEOPACKAGE)) {
            add(findings, new CsvFile(folder.resolve("findings.csv"), findings.table()));
        }
    }

    private boolean writes(OutputFormat format) {
        return formats.contains(format);
    }

    /** Begins a table, in the GeoPackage if there is one. */
    private <R> Section<R> section(Table<R> table) {
        var section = new Section<>(table, new ArrayList<>(), options.frame());
        geoPackage.map(file -> file.begin(table)).ifPresent(layer -> {
            section.files().add(layer);
            ofGeoPackage.add(layer);
        });
        return section;
    }

    private void add(Section<?> section, TableFile file) {
        section.files().add(file);
        others.add(file);
    }

    /**
     * Writes all rows and completes the files.
     *
     * @param progress told how many more spans are written
     */
    void write(LongConsumer progress) {
        int count = results.spans().size();
        new Conveyor<>(chunks(count, spansAtOnce), threads, SpanChunk::new, SpanChunk::fill, chunk -> {
                    long before = totals.spans();
                    chunk.append();
                    progress.accept(totals.spans() - before);
                })
                .run();
        rows(vaults, results.network().vaults());
        rows(findings, results.findings());
        rows(fieldChecks, results.fieldChecks());
        finish();
    }

    private <R> void rows(Section<R> section, List<R> rows) {
        new Conveyor<TableBatch<R>>(
                        chunks(rows.size(), CHUNK),
                        threads,
                        section::newBatch,
                        (batch, chunk) -> rows.subList(chunk * CHUNK, Math.min(rows.size(), (chunk + 1) * CHUNK))
                                .forEach(batch::add),
                        TableBatch::append)
                .run();
    }

    /** Completes the files; the GeoPackage, whose indexes take their time, beside the others. */
    private void finish() {
        finished = true;
        List<List<AutoCloseable>> groups = List.of(ofGeoPackage, others);
        new Conveyor<>(groups.size(), threads, () -> groups, (all, number) -> closeAll(all.get(number)), all -> {
                    // nothing is left to be done in order
                })
                .run();
    }

    /** Closes the files of a run that failed; what is in them is worthless. */
    @Override
    public void close() {
        if (!finished) {
            closeAll(ofGeoPackage);
            closeAll(others);
        }
    }

    private static void closeAll(List<? extends AutoCloseable> files) {
        for (AutoCloseable file : files) {
            try {
                file.close();
            } catch (OutputException failure) {
                throw failure;
            } catch (Exception failure) {
                throw new IllegalStateException(failure);
            }
        }
    }

    private static int chunks(int rows, int atOnce) {
        return (int) ((rows + atOnce - 1L) / atOnce);
    }

    /** Judged by some spans, evenly over the network. */
    private static int spansAtOnce(SpanList spans) {
        int looked = Math.min(SAMPLE, spans.size());
        long vertices = looked;
        for (int i = 0; i < looked; i++) {
            int number = (int) ((long) i * spans.size() / looked);
            vertices += spans.get(number).lonLat().size();
        }
        return (int) Math.max(1, Math.min(CHUNK, (long) CHUNK_VERTICES * looked / Math.max(1, vertices)));
    }

    /** Returns counts and sums over the spans that are written. */
    RankTotals totals() {
        return totals;
    }

    /** Returns what the user should know of the files, once they are closed. */
    List<String> notes() {
        var notes = new ArrayList<String>();
        geoPackage
                .map(GeoPackageWriter::shapesWithoutPlace)
                .filter(count -> count > 0)
                .ifPresent(count -> notes.add(count + " shapes cannot be shown in "
                        + options.crs().name() + "; their rows have no geometry."));
        shapefile.flatMap(OptionalShapefile::note).ifPresent(notes::add);
        return notes;
    }

    /** Returns the spans' table: with heights if any line has them, with a column for each part of a score. */
    private static Table<RankedSpan> table(Results results) {
        List<CriterionInfo> criteria = results.spans().first(1).stream()
                .flatMap(row -> row.score().criteria().stream())
                .toList();
        Table<RankedSpan> plane = SpanColumns.table(criteria);
        return results.network().spans().hasElevations() ? plane.withZ() : plane;
    }
}
