package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.atomic.AtomicLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The line of a running stage on terminals of any width. */
class ProgressLineTest {
    private static final Pattern BAR = Pattern.compile("\\[#*\\.*]");

    /** Stages, counts and times of any size: the line fits, and what it shows is whole. */
    @ParameterizedTest(name = "{0} columns")
    @ValueSource(ints = {20, 30, 40, 60, 80, 120, 200})
    void noLineIsWiderThanTheTerminalAndNothingIsCutInTwo(int columns) {
        var random = new Random(columns);
        for (int i = 0; i < 2000; i++) {
            String stage =
                    "look for field checks on all spans in all the big city".substring(0, 4 + random.nextInt(49));
            long expected = random.nextInt(4) == 0 ? -1 : 1 + (long) Math.pow(10, 11 * random.nextDouble());
            long done = (long) (random.nextDouble() * Math.max(expected, 1_000_000));
            double share = random.nextInt(3) == 0 ? Double.NaN : random.nextDouble();
            double seconds = Math.pow(10, 6 * random.nextDouble());

            String line = new ProgressLine(stage, seconds, done, expected, share).withBar(columns - 1);

            assertThat(line.length()).isBetween(1, columns - 1);
            if (line.contains("[")) {
                Matcher bar = BAR.matcher(line);
                assertThat(bar.find()).as(line).isTrue();
                assertThat(bar.group().length()).as(line).isIn(10, 22);
            }
            if (line.contains(" of ") && expected > 0) {
                assertThat(line).contains(String.format(Locale.ROOT, "%,d of %,d", done, expected));
            }
            if (line.contains("...") && !line.contains("[") && done > 0) {
                assertThat(line).endsWith(" s");
            }
        }
    }

    @Test
    void barShowsFromTheBeginning() {
        var text = new StringWriter();
        var clockNanos = new AtomicLong();
        var progress = new TerminalProgress(new PrintWriter(text), true, clockNanos::get);

        progress.begin("assess spans", 1_000_000);
        clockNanos.set(300_000_000L);
        progress.advance(1);

        assertThat(text.toString())
                .isEqualTo("\rassess spans        0.0 s  [....................] 0 of 1,000,000\u001b[K"
                        + "\rassess spans        0.3 s  [....................] 1 of 1,000,000\u001b[K");
    }

    @Test
    void whatFitsAnOldTerminalIsAllThere() {
        assertThat(new ProgressLine("assess spans", 100, 250_000, 1_000_000, Double.NaN).withBar(79))
                .isEqualTo("assess spans      100.0 s  [##......] 250,000 of 1,000,000  5 min 00 s left");
        assertThat(new ProgressLine("assess spans", 100, 250_000, 1_000_000, Double.NaN).withBar(119))
                .isEqualTo("assess spans      100.0 s  [#####...............] 250,000 of 1,000,000"
                        + "  2,500/s  5 min 00 s left");
    }

    @ParameterizedTest
    @CsvSource(
            nullValues = "none",
            value = {"none, 80", "'', 80", "132, 132", "0, 80", "7, 80", "-40, 80", "x, 80", "99999, 80"})
    void widthOfATerminalIsTakenWhereItMakesSense(String columns, int expected) {
        assertThat(TerminalProgress.columns(columns)).isEqualTo(expected);
    }
}
