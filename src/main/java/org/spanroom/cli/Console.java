package org.spanroom.cli;

import java.io.PrintWriter;
import java.io.Writer;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.IntSupplier;
import org.jspecify.annotations.Nullable;
import org.spanroom.output.folder.OutputFolder;
import org.spanroom.pipeline.Progress;

/** Where a command writes: results for people to {@code out}, progress and messages to {@code err}. */
final class Console {
    private final PrintWriter out;
    private final PrintWriter err;
    private final boolean onTerminal;
    private boolean quiet;
    private volatile @Nullable TerminalProgress progress;
    private OptionalInt failureCode = OptionalInt.empty();

    /** @param onTerminal whether somebody watches {@code err}, so that a line which is redrawn makes sense */
    Console(PrintWriter out, PrintWriter err, boolean onTerminal) {
        this.out = out;
        this.err = err;
        this.onTerminal = onTerminal;
    }

    PrintWriter out() {
        return out;
    }

    PrintWriter err() {
        return err;
    }

    /** Leaves out progress, summaries and warnings from now on. */
    void beQuiet() {
        quiet = true;
    }

    /** Prints a command's summary, unless the user asked for quiet. */
    void summary(String text) {
        if (!quiet) {
            answer(text);
        }
    }

    /** Prints what the user asked for. */
    void answer(String text) {
        out.print(Printable.escaped(text));
        out.flush();
    }

    /** Prints a remark that is no error. */
    void warning(String text) {
        if (!quiet) {
            err.println("spanroom: " + Printable.line(text));
        }
    }

    /** Returns the exit code of a program that has come to its end: output that got lost is a failure. */
    int end(int code) {
        Optional<String> lost = StandardOut.findLoss(out);
        if (lost.isEmpty() || (code != ExitCode.OK && code != ExitCode.FINDINGS)) {
            return code;
        }
        String committed = OutputFolder.lastCommitted()
                .map(folder -> " The new results are complete and in place: " + Printable.line(folder.toString()) + ".")
                .orElse("");
        err.println("spanroom: standard output cannot be written: " + Printable.line(lost.get())
                + ". Free some space, or send it somewhere else." + committed);
        return ExitCode.OUTPUT;
    }

    /** Returns the progress of a run that begins; there must be memory for the smallest. */
    Progress progress() {
        MemoryShortage.demandLeast(Runtime.getRuntime().maxMemory());
        // Even if nothing of it is shown, a run that fails says which stage it was in.
        var begun = quiet
                ? new TerminalProgress(new PrintWriter(Writer.nullWriter()), false, System::nanoTime)
                : new TerminalProgress(
                        err, onTerminal, System::nanoTime, TerminalProgress.columns(System.getenv("COLUMNS")));
        begun.keepAlive();
        progress = begun;
        return begun;
    }

    /** Returns the exit code of the program's failure, reporting it unless that has been done. */
    synchronized int failedOnce(IntSupplier report) {
        if (failureCode.isEmpty()) {
            failureCode = OptionalInt.of(report.getAsInt());
        }
        return failureCode.getAsInt();
    }

    /** Ends the progress of a run that failed, and returns the stage that it was in; empty if it was in none. */
    String giveUp() {
        TerminalProgress running = progress;
        return running == null ? "" : running.giveUp();
    }
}
