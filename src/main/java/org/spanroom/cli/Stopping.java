package org.spanroom.cli;

import java.io.PrintWriter;
import org.spanroom.output.folder.OutputFolder;

/** Reports that the program was stopped before its end, by Ctrl-C or by the system. */
final class Stopping {
    private final Thread teller;

    private Stopping(Thread teller) {
        this.teller = teller;
    }

    /** Begins to listen: should the program be stopped from now on, one line says so. */
    static Stopping tellOn(PrintWriter err) {
        var teller = new Thread(
                () -> {
                    err.print(System.lineSeparator() + "spanroom: " + words() + System.lineSeparator());
                    err.flush();
                },
                "stop-teller");
        Runtime.getRuntime().addShutdownHook(teller);
        return new Stopping(teller);
    }

    private static String words() {
        return OutputFolder.lastCommitted()
                .map(folder -> "stopped after the new results were in place: " + Printable.line(folder.toString()))
                .orElse("stopped before the end");
    }

    /** Ends listening, since the program has come to its own end. */
    void endListening() {
        try {
            Runtime.getRuntime().removeShutdownHook(teller);
        } catch (IllegalStateException underWay) {
            // It is reported already.
        }
    }

    /** Returns whether the program is ending, so that failures are only the echo of it. */
    static boolean isUnderWay() {
        var probe = new Thread(() -> {}, "stop-probe");
        try {
            Runtime.getRuntime().addShutdownHook(probe);
            Runtime.getRuntime().removeShutdownHook(probe);
            return false;
        } catch (IllegalStateException underWay) {
            return true;
        }
    }
}
