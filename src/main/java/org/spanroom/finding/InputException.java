package org.spanroom.finding;

import java.nio.file.Path;

/** Input that cannot be used at all: a file, a layer, a config. Its message is one line for the person who can mend it. */
public final class InputException extends RuntimeException {
    /**
     * @param file the file, as the user named it
     * @param problem what is wrong, with the place inside the file where there is one
     * @param remedy what to do about it, as a sentence
     */
    public InputException(Path file, String problem, String remedy) {
        super(oneLine(file + ": " + problem + ". " + remedy));
    }

    /** As above, keeping the exception that a library threw. */
    public InputException(Path file, String problem, String remedy, Throwable cause) {
        super(oneLine(file + ": " + problem + ". " + remedy), cause);
    }

    private static String oneLine(String message) {
        return message.replaceAll("\\s*\\R\\s*", " ").strip();
    }
}
