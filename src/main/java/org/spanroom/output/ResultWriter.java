package org.spanroom.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.spanroom.finding.Finding;
import org.spanroom.model.Bend;
import org.spanroom.model.InnerductPull;
import org.spanroom.model.RankedSpan;
import org.spanroom.model.Score;

/**
 * Writes the results of a run into a folder of its own: layers, CSV and the run's record.
 *
 * <p>The folder appears when everything in it is complete. Each file is written by one thread from the same lists, so the
 * number of threads does not show in the bytes.
 */
public final class ResultWriter {
    private static final String MARKER = "run.json";

    private static final Comparator<RankedSpan> BEST_FIRST = Comparator.comparingInt(
                    (RankedSpan row) -> row.rank().orElse(Integer.MAX_VALUE))
            .thenComparing(row -> row.span().id());

    private ResultWriter() {}

    /** Checks, before the work of a run, that its results may be written. */
    public static void check(OutputSettings settings) {
        OutputFolder.check(settings.folder(), settings.overwrite(), MARKER);
    }

    /**
     * Writes the results.
     *
     * @throws OutputException if the folder exists and may not be replaced, or cannot be written
     */
    public static WrittenResults write(Results results, OutputSettings settings) {
        try (var folder = OutputFolder.create(settings.folder(), settings.overwrite(), MARKER)) {
            return write(results, settings, folder);
        }
    }

    /**
     * Begins, before the work of a run, the folder that its results will fill: from now on no other run may write it.
     *
     * @throws OutputException if the folder exists and may not be replaced, or cannot be written
     */
    public static OutputFolder begin(OutputSettings settings) {
        OutputFolder folder = OutputFolder.create(settings.folder(), settings.overwrite(), MARKER);
        WarmUp.begin();
        return folder;
    }

    /** Writes the results into a folder that was begun for them, and puts it in its place. */
    public static WrittenResults write(Results results, OutputSettings settings, OutputFolder folder) {
        var writing = new Writing(results, settings, folder.path());
        List<String> notes = runAll(writing.tasks(), settings.threads());
        Path record = folder.path().resolve(MARKER);
        RunJson.write(record, results, settings, notes);
        List<String> files = names(folder.path());
        folder.commit();
        return new WrittenResults(settings.folder(), files, notes);
    }

    /** Runs tasks that each may have something to note; all have ended when this returns or throws. */
    private static List<String> runAll(List<Callable<Optional<String>>> tasks, int threads) {
        ExecutorService pool = Executors.newFixedThreadPool(Math.min(threads, tasks.size()));
        try {
            var notes = new ArrayList<String>();
            for (Future<Optional<String>> task : pool.invokeAll(tasks)) {
                task.get().ifPresent(notes::add);
            }
            return notes;
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            if (e.getCause() instanceof Error cause) {
                throw cause;
            }
            throw new IllegalStateException(e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while writing results", e);
        } finally {
            pool.shutdownNow();
        }
    }

    private static List<String> names(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        } catch (IOException failure) {
            throw OutputException.of(folder, failure);
        }
    }

    /** The files of one run. */
    private static final class Writing {
        private final Results results;
        private final List<RankedSpan> spans;
        private final Table<RankedSpan> table;
        private final LayerOptions options;
        private final Path folder;

        Writing(Results results, OutputSettings settings, Path folder) {
            this.results = results;
            this.spans = results.spans().stream().sorted(BEST_FIRST).toList();
            this.table = table(spans);
            this.options = new LayerOptions(settings.crs(), results.run().startedAt());
            this.folder = folder;
        }

        /** Returns what is to be written, the longest work first. */
        List<Callable<Optional<String>>> tasks() {
            return List.of(this::geoPackage, this::geoJson, this::shapefile, this::csv);
        }

        private Optional<String> geoPackage() {
            try (var file = new GeoPackageWriter(folder.resolve("spanroom.gpkg"), options)) {
                try (var layer = file.layer(table)) {
                    spans.forEach(layer::write);
                }
                try (var layer = file.layer(VaultColumns.TABLE)) {
                    results.network().vaults().forEach(layer::write);
                }
                try (var layer = file.layer(BendColumns.TABLE)) {
                    spans.forEach(row -> writeBends(row, layer));
                }
                try (var layer = file.layer(PermitRow.TABLE)) {
                    spans.forEach(row -> PermitRow.of(row).forEach(layer::write));
                }
                try (var layer = file.layer(PullRow.TABLE)) {
                    spans.forEach(row -> writePulls(row, layer));
                }
                try (var layer = file.layer(FindingColumns.TABLE)) {
                    results.findings().forEach(layer::write);
                }
                return note(
                        file.shapesWithoutPlace(),
                        "shapes cannot be shown in " + options.crs().name() + "; their rows have no geometry");
            }
        }

        private Optional<String> geoJson() {
            try (var file = new GeoJsonWriter<>(folder.resolve("spans.geojson"), table)) {
                spans.forEach(file::write);
            }
            try (var file = new GeoJsonWriter<>(folder.resolve("permits.geojson"), PermitRow.TABLE)) {
                spans.forEach(row -> PermitRow.of(row).forEach(file::write));
            }
            return Optional.empty();
        }

        private Optional<String> csv() {
            try (var file = new CsvWriter<>(folder.resolve("spans.csv"), table)) {
                spans.forEach(file::write);
            }
            try (var file = new CsvWriter<>(folder.resolve("permits.csv"), PermitRow.TABLE)) {
                spans.forEach(row -> PermitRow.of(row).forEach(file::write));
            }
            try (var file = new CsvWriter<>(folder.resolve("pulls.csv"), PullRow.TABLE)) {
                spans.forEach(row -> writePulls(row, file));
            }
            try (var file = new CsvWriter<>(folder.resolve("findings.csv"), FindingColumns.TABLE)) {
                for (Finding finding : results.findings()) {
                    file.write(finding);
                }
            }
            return Optional.empty();
        }

        /** Writes the Shapefile, or leaves it out where the format ends: the other layers hold the same. */
        private Optional<String> shapefile() {
            var file = new ShapefileWriter<>(folder.resolve("spans.shp"), table, options);
            try (file) {
                spans.forEach(file::write);
            } catch (FormatLimitException limit) {
                file.delete();
                return Optional.of("spans.shp was left out: a Shapefile ends at 2 GB; use spanroom.gpkg.");
            }
            return note(file.cutTexts(), "texts in spans.dbf are cut to the 254 bytes that the format allows");
        }

        private static Optional<String> note(long count, String sentence) {
            return count == 0 ? Optional.empty() : Optional.of(count + " " + sentence + ".");
        }

        private static void writeBends(RankedSpan row, RowWriter<BendRow> layer) {
            int number = 0;
            for (Bend bend : row.assessment().bends().list()) {
                layer.write(new BendRow(row.span(), ++number, bend));
            }
        }

        private static void writePulls(RankedSpan row, RowWriter<PullRow> table) {
            for (InnerductPull pull : row.assessment().pull().pulls()) {
                table.write(new PullRow(row.span(), pull));
            }
        }

        /** Returns the spans' table: with heights if any line has them, with a column for each part of a score. */
        private static Table<RankedSpan> table(List<RankedSpan> spans) {
            List<String> criteria = spans.stream()
                    .limit(1)
                    .flatMap(row -> row.score().parts().stream())
                    .map(Score.Part::criterion)
                    .toList();
            Table<RankedSpan> plane = SpanColumns.table(criteria);
            return spans.stream().anyMatch(row -> row.span().lonLat().hasZ()) ? plane.withZ() : plane;
        }
    }
}
