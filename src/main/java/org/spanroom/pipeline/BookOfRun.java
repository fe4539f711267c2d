package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.Optional;
import org.spanroom.config.RunConfig;
import org.spanroom.input.BookFile;
import org.spanroom.model.fieldwork.FieldBook;

/** The field book of a run. */
final class BookOfRun {
    private BookOfRun() {}

    /** Returns the file that a config names. No config names one yet. */
    static Optional<Path> file(RunConfig config) {
        return Optional.empty();
    }

    /** @throws org.spanroom.finding.InputException if there is no such file, or it is no field book */
    static FieldBook read(Path file, RunConfig config) {
        return BookFile.read(file);
    }
}
