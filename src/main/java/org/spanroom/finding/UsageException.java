package org.spanroom.finding;

/** An option whose value cannot be used. Its message is one line for the person who typed it. */
public final class UsageException extends RuntimeException {
    private static final int LONGEST = 1000;

    public UsageException(String problem) {
        super(oneLine(problem));
    }

    /** As above, keeping the exception that a library threw. */
    public UsageException(String problem, Throwable cause) {
        super(oneLine(problem), cause);
    }

    private static String oneLine(String problem) {
        String line = problem.replaceAll("\\s*\\R\\s*", " ").strip();
        return line.length() <= LONGEST ? line : line.substring(0, LONGEST - 3) + "...";
    }
}
