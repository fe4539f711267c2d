package org.spanroom.config;

import java.nio.file.Path;
import org.spanroom.finding.InputException;

/** Something wrong at a line of a config; turned into the one exception for unusable files where the file is known. */
final class ConfigProblem extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final int line;
    private final String remedy;

    ConfigProblem(int line, String problem, String remedy) {
        super(problem);
        this.line = line;
        this.remedy = remedy;
    }

    /** Returns the exception for the reader of a file, naming the file and the line. */
    InputException in(Path file) {
        String place = line > 0 ? "line " + line + ": " : "";
        return new InputException(file, place + problem(), remedy, this);
    }

    int line() {
        return line;
    }

    String problem() {
        return String.valueOf(getMessage());
    }
}
