package org.spanroom.cli;

import java.io.PrintWriter;
import java.util.Locale;
import java.util.function.LongSupplier;
import org.spanroom.pipeline.Progress;

/**
 * Shows the run's progress: a bar that is redrawn on a terminal, one plain line for each finished stage elsewhere.
 *
 * <p>Times are for the reader only; nothing of them goes into results.
 */
final class TerminalProgress implements Progress {
    private static final int BAR_WIDTH = 30;
    private static final long REDRAW_NANOS = 100_000_000L;

    private final PrintWriter err;
    private final boolean onTerminal;
    private final LongSupplier nanoClock;

    private String stage = "";
    private long expected = -1;
    private long done;
    private long startedNanos;
    private long drawnNanos;

    TerminalProgress(PrintWriter err, boolean onTerminal, LongSupplier nanoClock) {
        this.err = err;
        this.onTerminal = onTerminal;
        this.nanoClock = nanoClock;
    }

    @Override
    public synchronized void begin(String name, long expectedCount) {
        stage = name;
        expected = expectedCount;
        done = 0;
        startedNanos = nanoClock.getAsLong();
        drawnNanos = startedNanos;
        if (onTerminal) {
            draw();
        }
    }

    @Override
    public synchronized void advance(long count) {
        done += count;
        long now = nanoClock.getAsLong();
        if (onTerminal && now - drawnNanos >= REDRAW_NANOS) {
            drawnNanos = now;
            draw();
        }
    }

    @Override
    public synchronized void end(String result) {
        double seconds = (nanoClock.getAsLong() - startedNanos) / 1e9;
        if (onTerminal) {
            err.print("\r\u001b[K");
        }
        err.printf(Locale.ROOT, "%-16s %6.1f s  %s%n", stage, seconds, result);
        err.flush();
    }

    private void draw() {
        double seconds = (drawnNanos - startedNanos) / 1e9;
        String rate = seconds > 0.2 ? String.format(Locale.ROOT, "  %,.0f/s", done / seconds) : "";
        if (expected > 0) {
            int filled = (int) Math.min(BAR_WIDTH, BAR_WIDTH * done / expected);
            String bar = "#".repeat(filled) + ".".repeat(BAR_WIDTH - filled);
            String left = done > 0 && seconds > 1
                    ? String.format(Locale.ROOT, "  %.0f s left", seconds * (expected - done) / done)
                    : "";
            err.printf(Locale.ROOT, "\r\u001b[K%-16s [%s] %,d of %,d%s%s", stage, bar, done, expected, rate, left);
        } else {
            err.printf(Locale.ROOT, "\r\u001b[K%-16s %,d%s", stage, done, rate);
        }
        err.flush();
    }
}
