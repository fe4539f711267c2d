package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.Optional;
import org.spanroom.config.RunConfig;
import org.spanroom.input.fieldbook.FieldBookReader;
import org.spanroom.model.fieldwork.FieldBook;

/** The field book of a run, as it is now: with what was entered after the run. */
final class BookOfRun {
    private BookOfRun() {}

    /** Returns the file that the config of a run names. */
    static Optional<Path> file(Path run, RunConfig config) {
        return new RecordedFiles(run, config.output())
                .find(config.inputs())
                .fieldBook()
                .file();
    }

    /**
     * Reads a book.
     *
     * @throws org.spanroom.finding.InputException if there is no such file, it is not a field book, or one of its rows cannot be used
     */
    static FieldBook read(Path file, RunConfig config) {
        return new FieldBookReader(config.plausible()).readWhole(file).book();
    }
}
