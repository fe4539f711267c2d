package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class TerminalProgressTest {
    private final StringWriter text = new StringWriter();
    private final AtomicLong clockNanos = new AtomicLong();

    @Test
    void elsewhereThanOnATerminalOneLineTellsAFinishedStage() {
        run(false);

        assertThat(text.toString()).isEqualTo(String.format("read routes         2.5 s  1,000 routes%n"));
    }

    @Test
    void onATerminalABarGrowsAndIsWipedAtTheEnd() {
        run(true);

        assertThat(text.toString())
                .contains("read routes      [###############...............] 500 of 1,000  250/s  2 s left")
                .endsWith(String.format("\r\u001b[Kread routes         2.5 s  1,000 routes%n"));
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
