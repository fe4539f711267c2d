package org.spanroom.cli;

import java.io.PrintWriter;
import java.io.StringWriter;

/** One command, run in process: what it printed and how it ended. */
record CommandRun(int exitCode, String out, String err) {
    static CommandRun of(String... args) {
        var out = new StringWriter();
        var err = new StringWriter();
        int exitCode = SpanroomCommand.execute(
                new Console(new PrintWriter(out, true), new PrintWriter(err, true), false), args);
        return new CommandRun(exitCode, out.toString(), err.toString());
    }

    /** Returns what went to the error stream without the lines of progress. */
    String complaint() {
        return err.lines()
                .filter(line -> line.startsWith("spanroom: ") || line.startsWith("Try "))
                .reduce("", (all, line) -> all + line + "\n");
    }
}
