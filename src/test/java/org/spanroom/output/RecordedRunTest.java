package org.spanroom.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.finding.InputException;

/** What a record says is taken as it is, or refused: never as another number. */
class RecordedRunTest {
    @TempDir
    Path folder;

    @Test
    void aFormatBeyondAnyIsNotTakenForOurs() throws IOException {
        long beyond = (1L << Integer.SIZE) + RecordedSpans.FORMAT;
        Files.writeString(folder.resolve("run.json"), """
                {"version": "1", "started_at": "2027-01-15T00:00:00Z", "spans": 1, "run_spans": 1, "run_spans_format": %d,
                 "lengths_m": {"routes": 1, "spans": 1, "remainders": 0},
                 "inputs": [{"role": "routes", "file": "r.geojson", "sha256": "0",
                             "features_read": 1, "features_used": 1, "features_rejected": 0}]}
                """.formatted(beyond));

        assertThat(RecordedRun.read(folder).spansFormat()).isNotEqualTo(RecordedSpans.FORMAT);
    }

    /** The numbers are edits that a person or a script may make; each is refused by the name of its member. */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "version    | \"x\"    | version must be a version such as 1.0.0, is \"x\"",
                "version    | -1       | version must be a text, is -1",
                "version    |          | version must be a text, and is missing",
                "started_at | -1       | started_at must be a text, is -1",
                "started_at | \"x\"    | started_at must be a time such as 2027-01-15T08:00:00Z, is \"x\"",
                "started_at | \"+100000-01-01T00:00:00Z\" | started_at must be a time",
                "started_at |          | started_at must be a text, and is missing",
                "inputs     |          | inputs must be a list, and is missing",
                "inputs     | []       | it names no inputs",
                "spans      | 1e300    | spans must be a whole number from 0 to 1e15, is 1.0E300",
                "sections   | null     | sections must be a whole number from 0 to 1e15, is null",
                "vaults     | \"x\"    | vaults must be a whole number from 0 to 1e15, is \"x\"",
                "zones      | -1       | zones must be a whole number from 0 to 1e15, is -1"
            })
    void anEditedMemberIsNamed(String member, @Nullable String value, String words) throws IOException {
        var mapper = new ObjectMapper();
        ObjectNode record = (ObjectNode) mapper.readTree("""
                {"version": "1", "started_at": "2027-01-15T00:00:00Z", "spans": 1, "run_spans": 1,
                 "lengths_m": {"routes": 1, "spans": 1, "remainders": 0},
                 "inputs": [{"role": "routes", "file": "r.geojson", "sha256": "0",
                             "features_read": 1, "features_used": 1, "features_rejected": 0}]}
                """);
        Files.writeString(folder.resolve("run.json"), record.toString());
        assertThat(RecordedRun.read(folder).spans()).isEqualTo(1);
        record.remove(member);
        if (value != null) {
            record.set(member, mapper.readTree(value));
        }
        Files.writeString(folder.resolve("run.json"), record.toString());

        assertThatThrownBy(() -> RecordedRun.read(folder))
                .isInstanceOf(InputException.class)
                .hasMessageContaining(words)
                .hasMessageEndingWith("Make the run again with this version.");
    }
}
