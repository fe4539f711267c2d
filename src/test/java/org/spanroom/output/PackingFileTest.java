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
import org.spanroom.model.network.BoreShape;

class PackingFileTest {
    private static final List<KnownPacking> PACKINGS = List.of(
            new KnownPacking(
                    BoreShape.ROUND,
                    2,
                    List.of(10.0, 0.1, 0.1),
                    List.of(0, 1, 1),
                    17,
                    List.of(
                            new KnownPacking.Found(0, 10.2, List.of(-0.05, 0.0, 5.0, 1e-9, 5.0, 0.1)),
                            new KnownPacking.Found(9, 10.1, List.of(0.0, 0.0, 5.0, 1e-9, 5.0, 0.1)))),
            new KnownPacking(
                    BoreShape.SQUARE,
                    0,
                    List.of(19.0),
                    List.of(0),
                    0,
                    List.of(new KnownPacking.Found(0, 19, List.of(0.0, 0.0)))));

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
