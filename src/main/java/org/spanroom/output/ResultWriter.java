package org.spanroom.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.LongConsumer;
import java.util.stream.Stream;
import org.spanroom.finding.Finding;
import org.spanroom.finding.UnitDoubts;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.folder.OutputFolder;

/**
 * Writes the results of a run into a folder of its own: layers, CSV and the run's record.
 *
 * <p>The folder appears when everything in it is complete.
 */
public final class ResultWriter {
    static final String MARKER = RunJson.FILE;

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
            return write(results, settings, folder, rows -> {
                // no progress is wanted
            });
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

    /**
     * Writes the results into a folder that was begun for them, and puts it in its place.
     *
     * @param progress receives how many more spans are written
     */
    public static WrittenResults write(
            Results results, OutputSettings settings, OutputFolder folder, LongConsumer progress) {
        int spans = results.selection().isAll() ? results.spans().size() : 0;
        String about = AboutFile.of(
                results.run(),
                results.selection().asked(),
                results.contents(),
                settings.crs().name());
        try (var files = new ResultFiles(folder.path(), settings, results.run().startedAt(), spans, about)) {
            var rows = new ResultRows(results, files, settings.threads());
            rows.write(progress);
            files.finish();
            return commit(
                    new RunAccount(
                            results.run(),
                            Optional.empty(),
                            results.selection().asked(),
                            results.kept(),
                            files.rows(),
                            rows.totals(),
                            results.money(),
                            results.contents(),
                            NetworkLengths.of(results.network()),
                            FindingTally.of(results.findings()),
                            settings.crs().name(),
                            settings.crs(),
                            notes(files, results.findings())),
                    settings,
                    folder);
        }
    }

    /** What makes most of the results doubtful comes before what the files lack. */
    private static List<String> notes(ResultFiles files, List<Finding> findings) {
        return Stream.concat(UnitDoubts.sentences(findings).stream(), files.notes().stream())
                .toList();
    }

    /** Writes the record beside the files, which are complete, and puts the folder in its place. */
    static WrittenResults commit(RunAccount account, OutputSettings settings, OutputFolder folder) {
        RunJson.write(folder.path().resolve(MARKER), account);
        List<String> names = names(folder.path());
        folder.commit();
        Optional<Long> kept = account.filter().isEmpty() ? Optional.empty() : Optional.of(account.spansKept());
        return new WrittenResults(
                settings.folder(),
                names,
                account.notes(),
                account.totals(),
                account.money(),
                kept,
                account.kept(),
                account.contents());
    }

    private static List<String> names(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        } catch (IOException failure) {
            throw OutputException.of(folder, failure);
        }
    }
}
