package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the page on the annual program shows of the demo: every printed line is one of the command's own output. */
class DocumentedProgramTest {
    private static final Path PAGE = Path.of("src/site/markdown/program.md");

    @TempDir
    static Path folder;

    @Test
    void samplesAreLinesOfTheCommand() throws IOException {
        CommandRun done = CommandRun.of(
                "program",
                DemoRun.csv(folder).toString(),
                "--config",
                "sample-gis/program.yaml",
                "--skip",
                "curve,prices,draws",
                "--output",
                folder.resolve("program").toString());
        assertThat(done.exitCode()).as(done.err()).isZero();
        List<String> sample = DocumentedLines.of(PAGE);

        assertThat(sample).hasSizeGreaterThan(12);
        assertThat(done.out().lines().map(String::strip)).containsAll(sample);
    }
}
