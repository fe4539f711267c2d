package org.spanroom.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.LongConsumer;
import java.util.stream.Stream;

/**
 * Writes the results of a run into a folder of its own: layers, CSV and the run's record.
 *
 * <p>The folder appears when everything in it is complete.
 */
public final class ResultWriter {
    private static final String MARKER = "run.json";

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
                // nobody asks how far it has come
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
     * @param progress told how many more spans are written
     */
    public static WrittenResults write(
            Results results, OutputSettings settings, OutputFolder folder, LongConsumer progress) {
        try (var files = new ResultFiles(results, settings, folder.path())) {
            files.write(progress);
            List<String> notes = files.notes();
            RunJson.write(folder.path().resolve(MARKER), results, files.totals(), settings, notes);
            List<String> names = names(folder.path());
            folder.commit();
            return new WrittenResults(settings.folder(), names, notes, files.totals());
        }
    }

    private static List<String> names(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        } catch (IOException failure) {
            throw OutputException.of(folder, failure);
        }
    }
}
