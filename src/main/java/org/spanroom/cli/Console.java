package org.spanroom.cli;

import java.io.PrintWriter;
import java.util.OptionalInt;
import java.util.function.IntSupplier;
import org.jspecify.annotations.Nullable;
import org.spanroom.pipeline.Progress;

/** Where a command writes: results for people to {@code out}, progress and messages to {@code err}. */
final class Console {
    private final PrintWriter out;
    private final PrintWriter err;
    private final boolean onTerminal;
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

    /** Returns the progress of a run that begins; there must be memory for the smallest. */
    Progress progress() {
        MemoryShortage.demandLeast(Runtime.getRuntime().maxMemory());
        var begun = new TerminalProgress(err, onTerminal, System::nanoTime);
        begun.keepAlive();
        progress = begun;
        return begun;
    }

    /** Returns the exit code of the program's failure, by telling of it unless that has been done. */
    synchronized int failedOnce(IntSupplier telling) {
        if (failureCode.isEmpty()) {
            failureCode = OptionalInt.of(telling.getAsInt());
        }
        return failureCode.getAsInt();
    }

    /** Ends the progress of a run that failed, and returns the stage that it was in; empty if it was in none. */
    String giveUp() {
        TerminalProgress running = progress;
        return running == null ? "" : running.giveUp();
    }
}
