package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The demo city with two fields in another unit than its config says: both head what the commands print. */
class UnitDoubtsCommandTest {
    private static final String BORE =
            "  Check the unit of bore_in in the config: 886 of 891 values are implausible in millimeters (mm); plausible would be 886";
    private static final String LENGTH =
            "  Check the unit of length_ft in the config: 979 of 995 recorded lengths are 3.281 times the drawn ones, as if they"
                    + " were in feet (ft), not in meters (m)";

    @TempDir
    static Path folder;

    private static Path config;
    private static Path run;
    private static CommandRun ranked;

    @BeforeAll
    static void rank() throws IOException {
        Path data = Path.of("sample-gis").toAbsolutePath();
        String yaml = Files.readString(data.resolve("spanroom.yaml"))
                .replace("file: ", "file: " + data + "/")
                .replace("{field: bore_in, unit: in}", "{field: bore_in, unit: mm}")
                .replace("{field: length_ft, unit: ft}", "{field: length_ft, unit: m}");
        config = Files.writeString(folder.resolve("wrong.yaml"), yaml);
        run = folder.resolve("run");
        ranked = CommandRun.of("rank", "--config", config.toString(), "--output", run.toString());
    }

    @Test
    void rankPrintsThemBeforeTheFirstFigure() {
        assertThat(ranked.exitCode()).as(ranked.err()).isZero();
        assertThat(ranked.out().strip().lines().limit(5))
                .satisfiesExactly(
                        line -> assertThat(line)
                                .isEqualTo("Do not use these results before the units of the data are right:"),
                        line -> assertThat(line).startsWith(BORE),
                        line -> assertThat(line).startsWith(LENGTH),
                        line -> assertThat(line).isEmpty(),
                        line -> assertThat(line).contains("spans are candidates"));
        assertThat(ranked.out()).as("each once").doesNotContain("Note: Check");
    }

    @Test
    void theRecordOfTheRunHasThemAsNotes() throws IOException {
        var notes =
                new ObjectMapper().readTree(run.resolve("run.json").toFile()).get("notes");

        assertThat(notes).hasSize(2);
        assertThat(notes.get(0).asText()).startsWith(BORE.strip());
        assertThat(notes.get(1).asText()).startsWith(LENGTH.strip());
    }

    @Test
    void checkPrintsThemFirst() {
        CommandRun checked = CommandRun.of("check", "--config", config.toString());

        assertThat(checked.out().strip()).startsWith("Fix first:\n" + BORE).contains("\n" + LENGTH);
    }

    @Test
    void thePageBeginsItsCautionsWithThem() throws IOException {
        Path page = folder.resolve("page.html");
        CommandRun reported = CommandRun.of("report", run.toString(), "--output", page.toString(), "--details", "0");

        assertThat(reported.exitCode()).as(reported.err()).isZero();
        assertThat(Files.readString(page))
                .contains(
                        "The data of 2 fields do not fit the configured unit; do not use these results before that is fixed.")
                .contains(LENGTH.strip());
    }
}
