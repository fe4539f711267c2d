package org.spanroom.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.model.bore.KnownPacking;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.network.BoreShape;

class PackingFileTest {
    private static final List<KnownPacking> PACKINGS = List.of(
            new KnownPacking(
                    BoreShape.ROUND, 50, List.of(10.0, 0.1), PackingOutcome.FITS, 10.1, List.of(-0.05, 0.0, 5.0, 1e-9)),
            new KnownPacking(BoreShape.SQUARE, 20, List.of(19.0), PackingOutcome.UNDECIDED, 20.5, List.of(0.0, 0.0)));

    @TempDir
    Path folder;

    @Test
    void whatIsWrittenIsReadToTheLastDigit() throws IOException {
        PackingFile file = file("1");

        assertThat(file.read()).isEmpty();
        file.write(PACKINGS);

        assertThat(file.read()).isEqualTo(PACKINGS);
        assertThat(folder.toFile().list()).containsExactly("packings.txt");
    }

    @Test
    void aDamagedFileIsRefused() throws IOException {
        file("1").write(PACKINGS);
        Path path = folder.resolve("packings.txt");
        Files.writeString(path, Files.readString(path).replace("10.1", "10.2"));

        assertThatThrownBy(() -> file("1").read())
                .isInstanceOf(IOException.class)
                .hasMessage("it is damaged");
        Files.writeString(path, "");
        assertThatThrownBy(() -> file("1").read())
                .isInstanceOf(IOException.class)
                .hasMessage("it is damaged");
    }

    @Test
    void aFileOfAnotherMethodIsRefused() throws IOException {
        file("1").write(PACKINGS);

        assertThatThrownBy(() -> file("2").read())
                .isInstanceOf(IOException.class)
                .hasMessage("it was written by another version");
    }

    private PackingFile file(String method) {
        return new PackingFile(folder.resolve("packings.txt"), method);
    }
}
