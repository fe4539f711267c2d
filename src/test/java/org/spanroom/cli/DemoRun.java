package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;

/** A run on the demo city, for tests of the commands that read one. */
public final class DemoRun {
    private DemoRun() {}

    /** Makes a run in CSV and returns its folder. */
    public static Path csv(Path folder) {
        Path run = folder.resolve("demo");
        CommandRun ranked = CommandRun.of(
                "rank", "--config", "sample-gis/spanroom.yaml", "--output", run.toString(), "--formats", "csv");
        assertThat(ranked.exitCode()).as(ranked.err()).isZero();
        return run;
    }
}
