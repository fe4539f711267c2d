package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.Optional;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.InputException;
import org.spanroom.input.fieldbook.FieldBookReader;
import org.spanroom.model.Counted;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.fieldwork.RowProblem;

/** The field book of a run, as it is now: with what was entered after the run. */
final class BookOfRun {
    private static final int MOST_REASONS = 20;

    private BookOfRun() {}

    /** Returns the file that the config of a run names. */
    static Optional<Path> file(Path run, RunConfig config) {
        return new RecordedFiles(run, config.output())
                .find(config.inputs())
                .fieldBook()
                .file();
    }

    /** @throws InputException if there is no such file, it is no field book, or one of its rows cannot be used */
    static FieldBook read(Path file, RunConfig config) {
        FieldBookReader.Read read = new FieldBookReader(config.plausible()).read(file);
        if (!read.problems().isEmpty()) {
            throw new InputException(
                    file,
                    Counted.of(read.rejected(), "row") + " of the field book cannot be used",
                    "Bring them back as they were; an entry is corrected by a new row that names it in supersedes.",
                    read.problems().stream()
                            .limit(MOST_REASONS)
                            .map(RowProblem::words)
                            .toList());
        }
        return read.book();
    }
}
