package org.spanroom.cli;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Words the state of a stage in one line that fits the terminal: what matters least is left out first, and nothing is cut in two. */
final class ProgressLine {
    private static final int BAR_WIDTH = 20;
    private static final int NARROW_BAR_WIDTH = 8;
    private static final int STAGE_WIDTH = 16;
    /** Before that, a rate would mean nothing. */
    private static final double FIRST_RATE_S = 0.5;

    private final String stage;
    private final double seconds;
    private final long done;
    private final long expected;
    private final double doneShare;

    /**
     * @param done how many things are done
     * @param expected how many there are in all, or -1 where it is unknown
     * @param share of what is done where things cannot be counted beforehand; NaN where it is unknown
     */
    ProgressLine(String stage, double seconds, long done, long expected, double share) {
        this.stage = stage;
        this.seconds = seconds;
        this.done = done;
        this.expected = expected;
        this.doneShare = expected > 0 ? done / (double) expected : share;
    }

    /** Returns the line with a bar, in at most so many characters. */
    String withBar(int width) {
        return fitting(
                width,
                List.of(
                        List.of(bar(BAR_WIDTH), count(), rate(), left()),
                        List.of(bar(BAR_WIDTH), count(), left()),
                        List.of(bar(NARROW_BAR_WIDTH), count(), left()),
                        List.of(bar(NARROW_BAR_WIDTH), count()),
                        List.of(count()),
                        List.of(percent()),
                        List.of()));
    }

    /** Returns the line without a bar, in at most so many characters. */
    String plain(int width) {
        return fitting(
                width,
                List.of(List.of(count(), rate(), left()), List.of(count(), left()), List.of(count()), List.of()));
    }

    private String fitting(int width, List<List<String>> choices) {
        String head = String.format(Locale.ROOT, "%-" + STAGE_WIDTH + "s %6.1f s", stage, seconds);
        return choices.stream()
                .map(parts -> Stream.concat(Stream.of(head), parts.stream())
                        .filter(part -> !part.isEmpty())
                        .collect(Collectors.joining("  ")))
                .map(line -> line.replace("]  ", "] "))
                .filter(line -> line.length() <= width)
                .findFirst()
                .orElseGet(() -> shortened(width));
    }

    /** The stage itself is too long: its first words say most. */
    private String shortened(int width) {
        String time = String.format(Locale.ROOT, " %.1f s", seconds);
        int room = width - time.length() - "...".length();
        return room < 1
                ? ""
                : stage.substring(0, Math.min(stage.length(), room)).strip() + "..." + time;
    }

    private String bar(int width) {
        if (!(doneShare >= 0)) {
            return "";
        }
        int filled = (int) Math.min(width, width * doneShare);
        return "[" + "#".repeat(filled) + ".".repeat(width - filled) + "]";
    }

    private String count() {
        if (expected > 0) {
            return String.format(Locale.ROOT, "%,d of %,d", done, expected);
        }
        return done > 0 ? String.format(Locale.ROOT, "%,d", done) : "...";
    }

    private String percent() {
        return doneShare >= 0 ? String.format(Locale.ROOT, "%.0f %%", Math.floor(100 * Math.min(1, doneShare))) : "";
    }

    private String rate() {
        return done > 0 && seconds >= FIRST_RATE_S ? String.format(Locale.ROOT, "%,.0f/s", done / seconds) : "";
    }

    private String left() {
        return done > 0 && seconds >= FIRST_RATE_S && doneShare > 0 && doneShare < 1
                ? TerminalProgress.duration(seconds * (1 - doneShare) / doneShare) + " left"
                : "";
    }
}
