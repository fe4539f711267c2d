package org.spanroom.cli;

import java.io.PrintWriter;
import java.util.Locale;
import java.util.function.LongSupplier;
import org.spanroom.pipeline.Progress;

/**
 * Shows the run's progress: stage, count, rate and time left in one line that is redrawn on a terminal; elsewhere one plain line
 * for each finished stage, and for one that takes long a plain line now and then.
 *
 * <p>The time left supposes that the rest goes as fast as what is done. Times are for the reader only; nothing of them goes into
 * results.
 */
final class TerminalProgress implements Progress {
    /** A line that reached the edge would wrap, and then could not be redrawn. */
    private static final int WIDTH = 79;

    private static final int BAR_WIDTH = 20;
    private static final long REDRAW_NANOS = 200_000_000L;
    private static final long PLAIN_LINE_NANOS = 30_000_000_000L;
    private static final int TICK_MS = 500;
    /** Before that, a rate would mean nothing. */
    private static final double FIRST_RATE_S = 0.5;

    private final PrintWriter err;
    private final boolean onTerminal;
    private final LongSupplier nanoClock;

    private String stage = "";
    private long expected = -1;
    private long done;
    private double share = Double.NaN;
    private long startedNanos;
    private long drawnNanos;

    TerminalProgress(PrintWriter err, boolean onTerminal, LongSupplier nanoClock) {
        this.err = err;
        this.onTerminal = onTerminal;
        this.nanoClock = nanoClock;
    }

    /** Redraws from now on also while nothing is counted, so that a long step does not look like a dead one. */
    void keepAlive() {
        var ticker = new Thread(this::tickForEver, "progress");
        ticker.setDaemon(true);
        ticker.start();
    }

    private void tickForEver() {
        try {
            while (true) {
                Thread.sleep(TICK_MS);
                tickIfThereIsMemory();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** To show how far the run is is no part of it: if it lacks memory, those who do the work will find out, and say it better. */
    private void tickIfThereIsMemory() {
        try {
            tick();
        } catch (OutOfMemoryError none) {
            drawnNanos = nanoClock.getAsLong();
        }
    }

    @Override
    public synchronized void begin(String name, long expectedCount) {
        stage = name;
        expected = expectedCount;
        done = 0;
        share = Double.NaN;
        startedNanos = nanoClock.getAsLong();
        drawnNanos = startedNanos;
        if (onTerminal) {
            redraw();
        }
    }

    @Override
    public synchronized void advance(long count) {
        done += count;
        tick();
    }

    @Override
    public synchronized void reach(double doneShare) {
        share = doneShare;
    }

    /** Shows how far the stage is, if it was long ago that this was shown. */
    synchronized void tick() {
        long now = nanoClock.getAsLong();
        if (stage.isEmpty() || now - drawnNanos < (onTerminal ? REDRAW_NANOS : PLAIN_LINE_NANOS)) {
            return;
        }
        drawnNanos = now;
        if (onTerminal) {
            redraw();
        } else {
            err.print(state(false) + System.lineSeparator());
            err.flush();
        }
    }

    @Override
    public synchronized void end(String result) {
        double seconds = (nanoClock.getAsLong() - startedNanos) / 1e9;
        String line = String.format(Locale.ROOT, "%-16s %6.1f s  %s", stage, seconds, Printable.of(result));
        err.print((onTerminal ? "\r" + line + "\u001b[K" : line) + System.lineSeparator());
        err.flush();
        stage = "";
    }

    /** Takes the unfinished line off the terminal and returns the stage that was running; empty if none was. */
    synchronized String giveUp() {
        String running = stage;
        if (onTerminal && !stage.isEmpty()) {
            err.print("\r\u001b[K");
            err.flush();
        }
        stage = "";
        return running;
    }

    /** Writes over the line and then wipes its rest, in one piece, so that it never stands empty. */
    private void redraw() {
        err.print("\r" + state(true) + "\u001b[K");
        err.flush();
    }

    private String state(boolean withBar) {
        double seconds = (drawnNanos - startedNanos) / 1e9;
        double doneShare = expected > 0 ? done / (double) expected : share;
        var line = new StringBuilder(String.format(Locale.ROOT, "%-16s %6.1f s  ", stage, seconds));
        if (withBar && done > 0 && doneShare > 0) {
            line.append(bar(doneShare)).append(' ');
        }
        if (done > 0) {
            line.append(String.format(Locale.ROOT, "%,d", done));
            line.append(expected > 0 ? String.format(Locale.ROOT, " of %,d", expected) : "");
        } else {
            line.append(expected > 0 ? String.format(Locale.ROOT, "%,d to do", expected) : "...");
        }
        if (done > 0 && seconds >= FIRST_RATE_S) {
            line.append(String.format(Locale.ROOT, "  %,.0f/s", done / seconds));
            if (doneShare > 0 && doneShare < 1) {
                line.append("  ")
                        .append(duration(seconds * (1 - doneShare) / doneShare))
                        .append(" left");
            }
        }
        return line.length() <= WIDTH ? line.toString() : line.substring(0, WIDTH);
    }

    private static String bar(double doneShare) {
        int filled = (int) Math.min(BAR_WIDTH, BAR_WIDTH * doneShare);
        return "[" + "#".repeat(filled) + ".".repeat(BAR_WIDTH - filled) + "]";
    }

    /** Returns a time as a person says it: "45 s", "3 min 20 s", "1 h 05 min". */
    static String duration(double seconds) {
        long whole = Math.round(seconds);
        if (whole < 60) {
            return whole + " s";
        }
        if (whole < 3600) {
            return String.format(Locale.ROOT, "%d min %02d s", whole / 60, whole % 60);
        }
        return String.format(Locale.ROOT, "%d h %02d min", whole / 3600, whole % 3600 / 60);
    }
}
