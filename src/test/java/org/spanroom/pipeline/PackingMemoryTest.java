package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.bore.RoomAssessor;
import org.spanroom.config.OutputConfig;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.model.OutputFormat;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;

class PackingMemoryTest {
    @TempDir
    Path folder;

    private final FindingLog findings = new FindingLog();

    @Test
    void whatOneRunFoundTheNextOneKnows() {
        Path file = folder.resolve("new").resolve("packings.txt");
        var first = new RoomAssessor(ShippedConfig.get().room());
        look(first, duct(42));
        memory(file).keep(first);

        var second = new RoomAssessor(ShippedConfig.get().room());
        memory(file).recall(second);

        assertThat(second.known()).isEqualTo(first.known()).isNotEmpty();
        assertThat(findings.all()).isEmpty();
    }

    @Test
    void aFileThatHoldsAllThatIsKnownStaysAsItIs() throws IOException {
        Path file = folder.resolve("packings.txt");
        var first = new RoomAssessor(ShippedConfig.get().room());
        look(first, duct(42));
        memory(file).keep(first);
        FileTime longAgo = FileTime.from(Instant.EPOCH);
        Files.setLastModifiedTime(file, longAgo);

        learnMore(file, duct(42));
        assertThat(Files.getLastModifiedTime(file)).isEqualTo(longAgo);

        learnMore(file, duct(36));
        assertThat(Files.getLastModifiedTime(file)).isGreaterThan(longAgo);
    }

    /** Only evidence takes a search where the bore is not crowded. */
    private static void look(RoomAssessor assessor, Duct duct) {
        assertThat(assessor.assess(duct).crossSection().orElseThrow().before().marginMm())
                .isPositive();
    }

    private void learnMore(Path file, Duct duct) {
        var next = new RoomAssessor(ShippedConfig.get().room());
        PackingMemory memory = memory(file);
        memory.recall(next);
        look(next, duct);
        memory.keep(next);
    }

    @Test
    void aDamagedFileIsANoteAndIsNotUsed() throws IOException {
        Path file = Files.writeString(folder.resolve("packings.txt"), "what is this?\n");
        var assessor = new RoomAssessor(ShippedConfig.get().room());

        memory(file).recall(assessor);

        assertThat(assessor.known()).isEmpty();
        assertThat(findings.countByCode()).containsOnlyKeys(FindingCode.PACKING_FILE_UNUSABLE);
    }

    @Test
    void aFileThatCannotBeWrittenIsANote() throws IOException {
        Path noFolder = Files.writeString(folder.resolve("file"), "");

        memory(noFolder.resolve("packings.txt"))
                .keep(new RoomAssessor(ShippedConfig.get().room()));

        assertThat(findings.countByCode()).containsOnlyKeys(FindingCode.PACKING_FILE_UNUSABLE);
    }

    @Test
    void aFileAmongTheResultsIsRefused() {
        assertThatThrownBy(
                        () -> PackingMemory.check(output(folder.resolve("run").resolve("packings.txt"))))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("output.packing_file");
        PackingMemory.check(output(folder.resolve("packings.txt")));
    }

    private PackingMemory memory(Path file) {
        return new PackingMemory(output(file), findings);
    }

    private OutputConfig output(Path file) {
        return new OutputConfig(
                Optional.of(folder.resolve("run")),
                Optional.empty(),
                List.of(OutputFormat.CSV),
                List.of(),
                Optional.of(file));
    }

    private static Duct duct(double innerductMm) {
        var innerduct = new Innerduct("i", innerductMm, 4, List.of(new Cable("c", 12, 0.1, Service.LIVE)));
        return new Duct(
                "d",
                "",
                BoreShape.ROUND,
                100,
                "",
                "",
                false,
                new Contents(List.of(innerduct), List.of(), true),
                false,
                Condition.SOUND,
                "",
                "",
                OptionalInt.empty(),
                Set.of());
    }
}
