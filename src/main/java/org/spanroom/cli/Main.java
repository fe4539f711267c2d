package org.spanroom.cli;

import java.io.OutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;

/** The program's door. */
public final class Main {
    private Main() {}

    public static void main(String[] args) {
        var out = StandardOut.ofProcess();
        var err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        Stopping stopping = Stopping.tellOn(err);
        muteLibraries();
        var console = new Console(out, err, onTerminal());
        SpanroomCommand.endWithAnyThread(console, stopping);
        int code = SpanroomCommand.execute(console, args);
        err.flush();
        stopping.endListening();
        System.exit(code);
    }

    /** Some libraries print stack traces of their own, in the middle of what we say better. */
    private static void muteLibraries() {
        var nowhere = new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8);
        System.setOut(nowhere);
        System.setErr(nowhere);
    }

    /** Newer JDKs have a console even where no terminal is, so the terminal's own variable must be there too. */
    @SuppressWarnings("SystemConsoleNull")
    private static boolean onTerminal() {
        return System.console() != null && System.getenv("TERM") != null;
    }
}
