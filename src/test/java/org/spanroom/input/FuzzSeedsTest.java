package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.ProgramConfigReader;
import org.spanroom.config.ShippedConfig;
import org.spanroom.input.fieldbook.FieldBookReader;
import org.spanroom.input.fields.ConnectionsReader;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.program.Connection;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.RecordedSpans;

/** What the fuzzer begins with is valid, and each of its targets can be called: else a hunt would find only how files are refused. */
class FuzzSeedsTest {
    @TempDir
    Path folder;

    @Test
    void everyTargetReadsItsSeeds() throws Exception {
        FuzzSeeds.main(new String[] {folder.toString()});

        FuzzReplay.main(new String[] {folder.toString()});

        for (String target : FuzzRun.all()) {
            try (Stream<Path> seeds = Files.list(folder.resolve(target))) {
                assertThat(seeds).as(target).isNotEmpty();
            }
        }
    }

    @Test
    void theSeedsAreUnderstood() throws Exception {
        FuzzDocumentSeeds.write(folder);

        for (Path file : files("ConnectionsFuzz")) {
            assertThat(ConnectionsReader.read(file))
                    .extracting(Connection::problem)
                    .allMatch(Optional::isEmpty);
        }
        for (Path file : files("ProgramConfigFuzz")) {
            assertThat(ProgramConfigReader.read(file).years()).hasSize(3);
        }
        for (Path file : files("RunConfigFuzz")) {
            assertThat(ConfigReader.read(file).permit()).isNotNull();
        }
        int facts = 0;
        for (Path file : files("FieldBookFuzz")) {
            var book = new FieldBookReader(ShippedConfig.get().plausible()).read(file);
            assertThat(book.problems()).isEmpty();
            facts += book.rows();
        }
        assertThat(facts).isEqualTo(FieldFact.values().length);
    }

    @Test
    void theRecordOfARunAndItsSpansAreReadBack() throws Exception {
        Files.writeString(folder.resolve("run.json"), FuzzDocumentSeeds.runRecord(2));

        RecordedRun run = RecordedRun.read(folder);

        assertThat(run.spansFormat()).isEqualTo(RecordedSpans.FORMAT);
        assertThat(ConfigReader.readRecorded(run.file()).bend())
                .isEqualTo(ShippedConfig.get().bend());
    }

    private List<Path> files(String target) throws IOException {
        try (Stream<Path> files = Files.list(folder.resolve(target))) {
            return files.sorted().toList();
        }
    }
}
