package org.spanroom.config;

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

    int line() {
        return line;
    }

    String problem() {
        return String.valueOf(getMessage());
    }

    String remedy() {
        return remedy;
    }
}
