package org.spanroom.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;

/** The program's door. */
public final class Main {
    private Main() {}

    public static void main(String[] args) {
        var out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
        var err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        int code = SpanroomCommand.commandLine(out, err, onTerminal()).execute(args);
        out.flush();
        err.flush();
        System.exit(code);
    }

    /** Newer JDKs have a console even where no terminal is, so the terminal's own variable must be there too. */
    @SuppressWarnings("SystemConsoleNull")
    private static boolean onTerminal() {
        return System.console() != null && System.getenv("TERM") != null;
    }
}
