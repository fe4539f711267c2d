package org.spanroom.parallel;

import java.nio.file.Path;
import java.util.stream.Stream;
import org.spanroom.finding.InputException;
import org.spanroom.output.folder.OutputException;

/** The failures whose type decides what the program says and returns: each must come out as it was thrown. */
final class Failures {
    private Failures() {}

    static Stream<Throwable> all() {
        return Stream.of(
                new InputException(Path.of("routes"), "it breaks", "Fix it."),
                new OutputException(Path.of("results"), "the disk is full", "Free some space."),
                new OutOfMemoryError("of a test"),
                new ArithmeticException("of a test"));
    }

    static void raise(Throwable failure) {
        if (failure instanceof Error error) {
            throw error;
        }
        throw (RuntimeException) failure;
    }
}
