package org.spanroom.cli;

import java.io.PrintWriter;
import org.spanroom.pipeline.Progress;

/**
 * Where a command writes: results for people to {@code out}, progress and messages to {@code err}.
 *
 * @param onTerminal whether somebody watches, so that a progress bar makes sense
 */
record Console(PrintWriter out, PrintWriter err, boolean onTerminal) {
    Progress progress() {
        return new TerminalProgress(err, onTerminal, System::nanoTime);
    }
}
