package org.spanroom.finding;

import java.nio.file.Path;
import java.util.List;

/** Input that cannot be used at all: a file, a layer, a config. Its message is one line for the person who can fix it. */
public final class InputException extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private static final int LONGEST = 1000;

    private final transient List<String> reasons;

    /**
     * @param file the file, as the user named it
     * @param problem what is wrong, with the place inside the file where there is one
     * @param remedy what to do about it, as a sentence
     */
    public InputException(Path file, String problem, String remedy) {
        super(message(file, problem, remedy));
        this.reasons = List.of();
    }

    /** As above, with further lines that the message is proved by. */
    public InputException(Path file, String problem, String remedy, List<String> reasons) {
        super(message(file, problem, remedy));
        this.reasons = reasons.stream().map(InputException::oneLine).toList();
    }

    /** As above, keeping the exception that a library threw. */
    public InputException(Path file, String problem, String remedy, Throwable cause) {
        super(message(file, problem, remedy), cause);
        this.reasons = List.of();
    }

    /** Returns what the message is proved by, a line each; none for most. */
    public List<String> reasons() {
        return reasons;
    }

    /** What a file says may be of any length; the message shows its beginning, and the remedy. */
    private static String message(Path file, String problem, String remedy) {
        String said = shortened(problem);
        String named = file.toString().isEmpty() ? "." : file.toString(); // the current folder, whose path may be empty
        return oneLine(named + ": " + said + (said.endsWith("?") ? " " : ". ") + shortened(remedy));
    }

    private static String shortened(String text) {
        return text.length() <= LONGEST ? text : text.substring(0, LONGEST - 3) + "...";
    }

    private static String oneLine(String message) {
        return message.replaceAll("\\s*\\R\\s*", " ").stripTrailing();
    }
}
