package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TerminalProgressTest {
    private final StringWriter text = new StringWriter();
    private final AtomicLong clockNanos = new AtomicLong();

    @Test
    void elsewhereThanOnATerminalOneLineTellsAFinishedStage() {
        run(false);

        assertThat(text.toString()).isEqualTo(String.format("read routes         2.5 s  1,000 routes%n"));
    }

    @Test
    void onATerminalOneLineIsWrittenOverAndNeverWipedFirst() {
        run(true);

        assertThat(text.toString())
                .contains("\rread routes         2.0 s  [##########..........] 500 of 1,000  250/s  2 s left\u001b[K")
                .endsWith(String.format("\rread routes         2.5 s  1,000 routes\u001b[K%n"))
                .doesNotContain("\r\u001b[K");
    }

    @Test
    void aLongStageTellsNowAndThenHowFarItIsOnAPlainLine() {
        var progress = new TerminalProgress(new PrintWriter(text), false, clockNanos::get);
        progress.begin("assess spans", 1_000_000);
        for (int second = 1; second <= 61; second++) {
            clockNanos.addAndGet(1_000_000_000L);
            progress.advance(100);
        }

        assertThat(text.toString())
                .isEqualTo(String.format("assess spans       30.0 s  3,000 of 1,000,000  100/s  2 h 46 min left%n"
                        + "assess spans       60.0 s  6,000 of 1,000,000  100/s  2 h 45 min left%n"));
    }

    @Test
    void aStageThatCountsNothingShowsThatTimePasses() {
        var progress = new TerminalProgress(new PrintWriter(text), true, clockNanos::get);
        progress.begin("read inputs", -1);
        clockNanos.set(3_000_000_000L);
        progress.tick();

        assertThat(text.toString()).endsWith("\rread inputs         3.0 s  ...\u001b[K");
    }

    @Test
    void whatIsKnownByItsShareOnlyTellsTheTimeLeftToo() {
        var progress = new TerminalProgress(new PrintWriter(text), true, clockNanos::get);
        progress.begin("read inputs", -1);
        clockNanos.set(6_000_000_000L);
        progress.reach(0.25);
        progress.advance(1_500);

        assertThat(text.toString())
                .endsWith("\rread inputs         6.0 s  [#####...............] 1,500  250/s  18 s left\u001b[K");
    }

    @Test
    void shareThatNobodyKnowsTellsNoTimeLeft() {
        var progress = new TerminalProgress(new PrintWriter(text), true, clockNanos::get);
        progress.begin("read inputs", -1);
        clockNanos.set(6_000_000_000L);
        progress.reach(Double.NaN);
        progress.advance(1_500);

        assertThat(text.toString()).endsWith("\rread inputs         6.0 s  1,500  250/s\u001b[K");
    }

    @Test
    void noLineReachesTheEdgeOfAnOldTerminal() {
        var progress = new TerminalProgress(new PrintWriter(text), true, clockNanos::get);
        progress.begin("assess spans", 26_000_000_000L);
        clockNanos.set(1_000_000_000_000L);
        progress.advance(13_000_000_000L);

        assertThat(text.toString().split("\r"))
                .allSatisfy(line ->
                        assertThat(line.replace("\u001b[K", "").length()).isLessThan(80));
    }

    @Test
    void aRunThatFailsLeavesNoHalfLine() {
        var progress = new TerminalProgress(new PrintWriter(text), true, clockNanos::get);
        progress.begin("read inputs", -1);

        assertThat(progress.giveUp()).isEqualTo("read inputs");
        assertThat(progress.giveUp()).isEmpty();
        assertThat(text.toString()).endsWith("\r\u001b[K");
    }

    @ParameterizedTest
    @CsvSource({
        "0.4, 0 s",
        "59.4, 59 s",
        "59.6, 1 min 00 s",
        "200, 3 min 20 s",
        "3599.7, 1 h 00 min",
        "3900, 1 h 05 min"
    })
    void timeLeftIsSaidAsPeopleSayIt(double seconds, String expected) {
        assertThat(TerminalProgress.duration(seconds)).isEqualTo(expected);
    }

    private void run(boolean onTerminal) {
        var progress = new TerminalProgress(new PrintWriter(text), onTerminal, clockNanos::get);
        progress.begin("read routes", 1_000);
        clockNanos.set(2_000_000_000L);
        progress.advance(500);
        clockNanos.set(2_500_000_000L);
        progress.end("1,000 routes");
    }
}
