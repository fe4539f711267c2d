package org.spanroom.output;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a record says is taken as it is, or refused: never as another number. */
class RecordedRunTest {
    @TempDir
    Path folder;

    @Test
    void aFormatBeyondAnyIsNotTakenForOurs() throws IOException {
        long beyond = (1L << Integer.SIZE) + RecordedSpans.FORMAT;
        Files.writeString(folder.resolve("run.json"), """
                {"version": "1", "spans": 1, "run_spans": 1, "run_spans_format": %d,
                 "lengths_m": {"routes": 1, "spans": 1, "remainders": 0},
                 "inputs": [{"role": "routes", "file": "r.geojson", "sha256": "0",
                             "features_read": 1, "features_used": 1, "features_rejected": 0}]}
                """.formatted(beyond));

        assertThat(RecordedRun.read(folder).spansFormat()).isNotEqualTo(RecordedSpans.FORMAT);
    }
}
