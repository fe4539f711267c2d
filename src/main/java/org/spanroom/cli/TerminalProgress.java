package org.spanroom.cli;

import java.io.PrintWriter;
import java.util.Locale;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import org.spanroom.pipeline.Progress;

/**
 * Shows the run's progress: stage, count, rate and time left in one line that is redrawn on a terminal; elsewhere one plain line
 * for each finished stage, and for one that takes long a plain line now and then.
 *
 * <p>The time left supposes that the rest goes as fast as what is done. Times are for the reader only; nothing of them goes into
 * results.
 */
final class TerminalProgress implements Progress {
    private static final int PLAIN_WIDTH = 120;
    private static final int DEFAULT_COLUMNS = 80;
    private static final int FEWEST_COLUMNS = 20;
    private static final int MOST_COLUMNS = 500;
    private static final long REDRAW_NANOS = 200_000_000L;
    private static final long PLAIN_LINE_NANOS = 30_000_000_000L;
    private static final int TICK_MS = 500;

    private final PrintWriter err;
    private final boolean onTerminal;
    private final LongSupplier nanoClock;
    /** A line that reached the edge would wrap, and then could not be redrawn. */
    private final int width;

    private String stage = "";
    private long expected = -1;
    private long done;
    private double share = Double.NaN;
    private long startedNanos;
    private long drawnNanos;

    TerminalProgress(PrintWriter err, boolean onTerminal, LongSupplier nanoClock) {
        this(err, onTerminal, nanoClock, DEFAULT_COLUMNS);
    }

    /** @param columns width of the terminal */
    TerminalProgress(PrintWriter err, boolean onTerminal, LongSupplier nanoClock, int columns) {
        this.width = columns - 1;
        this.err = err;
        this.onTerminal = onTerminal;
        this.nanoClock = nanoClock;
    }

    /**
     * Returns the width of a terminal.
     *
     * @param text what the environment says of it, as in the variable COLUMNS; may be missing or nonsense
     */
    static int columns(@Nullable String text) {
        boolean isNumber = text != null && text.matches("\\d{1,4}");
        int columns = isNumber ? Integer.parseInt(text) : DEFAULT_COLUMNS;
        return columns < FEWEST_COLUMNS || columns > MOST_COLUMNS ? DEFAULT_COLUMNS : columns;
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
            err.print(state().plain(PLAIN_WIDTH) + System.lineSeparator());
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
        err.print("\r" + state().withBar(width) + "\u001b[K");
        err.flush();
    }

    private ProgressLine state() {
        return new ProgressLine(stage, (drawnNanos - startedNanos) / 1e9, done, expected, share);
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
