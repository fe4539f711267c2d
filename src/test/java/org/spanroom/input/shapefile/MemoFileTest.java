package org.spanroom.input.shapefile;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.input.FileMutator;
import org.spanroom.input.FuzzedFile;
import org.spanroom.input.ReadLayer;
import org.spanroom.input.layer.FileDigest;
import org.spanroom.input.shapefile.MemoBytes.Layout;

class MemoFileTest {
    private static final byte[] SHORT = "Ridge Row 5".getBytes(StandardCharsets.US_ASCII);
    private static final byte[] LONG =
            ("a".repeat(511) + "b".repeat(4000) + "z  \0").getBytes(StandardCharsets.US_ASCII);
    private static final byte[] ACCENTED = "Stra\u00dfe\r\nzwei".getBytes(Charset.forName("windows-1252"));

    @TempDir
    private Path folder;

    private static List<Object> routes(ReadLayer layer) {
        return layer.values().stream().map(values -> values.get(0)).toList();
    }

    @ParameterizedTest
    @EnumSource
    void textsOfAnyLengthAreReadInEveryLayout(Layout layout) throws IOException {
        MemoBytes memo = MemoBytes.of(layout, SHORT, LONG, new byte[0], ACCENTED);
        List<Integer> blocks = memo.blocks();
        Path file = memo.layer(
                folder,
                layout == Layout.VISUAL_FOXPRO,
                blocks.get(1),
                blocks.get(0),
                blocks.get(3),
                -1,
                blocks.get(2),
                blocks.get(0));

        ReadLayer layer = ReadLayer.of(file, "route", "kind");

        assertThat(routes(layer))
                .containsExactly(
                        "a".repeat(511) + "b".repeat(4000) + "z",
                        "Ridge Row 5",
                        "Stra\u00dfe\r\nzwei",
                        null,
                        null,
                        "Ridge Row 5");
        assertThat(layer.values())
                .allSatisfy(values -> assertThat(values.get(1)).isEqualTo("N"));
        assertThat(layer.details()).noneMatch(detail -> detail.contains("texts in"));
        assertThat(FileDigest.ofLayer(file))
                .extracting(digest -> digest.file().getFileName().toString())
                .contains("layer." + layout.ending);
    }

    @ParameterizedTest
    @EnumSource
    void whatIsNotWantedIsNotLookedFor(Layout layout) throws IOException {
        MemoBytes memo = MemoBytes.of(layout, SHORT);
        Path file = memo.layer(folder, false, memo.blocks().get(0), 999_999);
        Files.delete(folder.resolve("layer." + layout.ending));

        assertThat(ReadLayer.of(file, "kind").details()).isEmpty();
        assertThat(ReadLayer.of(file, "route", "kind").details())
                .containsExactly("the field \"route\" refers to texts in a .dbt or .fpt that is missing; they were"
                        + " treated as missing");
    }

    @ParameterizedTest
    @EnumSource
    void aFileThatIsCutOffLosesItsLastTextsOnly(Layout layout) throws IOException {
        MemoBytes memo = MemoBytes.of(layout, SHORT, LONG);
        Path file =
                memo.layer(folder, false, memo.blocks().get(0), memo.blocks().get(1), 900_000);
        int length = memo.blocks().get(1) * layout.blockSize + 1000;
        Files.write(folder.resolve("layer." + layout.ending), Arrays.copyOf(memo.bytes(), length));

        ReadLayer layer = ReadLayer.of(file, "route");

        assertThat(routes(layer)).containsExactly("Ridge Row 5", null, null);
        assertThat(layer.details())
                .containsExactly(
                        "the field \"route\": texts are beyond the end of their file; it seems truncated or"
                                + " belongs to another table (1 feature, number 3)",
                        "the field \"route\": texts extend beyond the end of their file; it seems truncated or"
                                + " damaged (1 feature, number 2)");
    }

    @ParameterizedTest
    @EnumSource(names = "DBASE_3", mode = EnumSource.Mode.EXCLUDE)
    void lengthsThatLieAreNotBelieved(Layout layout) throws IOException {
        MemoBytes memo = MemoBytes.of(layout, SHORT, SHORT, SHORT);
        boolean little = layout == Layout.DBASE_4;
        ByteBuffer bytes = ByteBuffer.wrap(memo.bytes()).order(little ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        bytes.putInt(memo.blocks().get(0) * layout.blockSize + 4, Integer.MAX_VALUE);
        bytes.putInt(memo.blocks().get(1) * layout.blockSize + 4, -1);
        bytes.putInt(memo.blocks().get(2) * layout.blockSize + 4, little ? 3 : Integer.MIN_VALUE);
        Path file = memo.layer(
                folder,
                false,
                memo.blocks().get(0),
                memo.blocks().get(1),
                memo.blocks().get(2));

        ReadLayer layer = ReadLayer.of(file, "route");

        assertThat(routes(layer)).containsOnlyNulls();
        assertThat(layer.details())
                .singleElement()
                .asString()
                .contains("beyond the end of their file", "(3 features, first number 1)");
    }

    @Test
    void aTextWithoutItsEndIsNotReadForEver() throws IOException {
        byte[] endless = new byte[MemoFile.LONGEST_TEXT * 2];
        Arrays.fill(endless, (byte) 'x');
        MemoBytes memo = MemoBytes.of(Layout.DBASE_3, endless);
        Path file = memo.layer(folder, false, memo.blocks().get(0));

        assertThat(ReadLayer.of(file, "route").details())
                .singleElement()
                .asString()
                .contains("texts are longer than 1048576 bytes");
    }

    @Test
    void oneTextNamedAgainAndAgainIsNotReadForHours() throws IOException {
        byte[] big = new byte[500_000];
        Arrays.fill(big, (byte) 'x');
        MemoBytes memo = MemoBytes.of(Layout.FOXPRO, big);
        int[] references =
                IntStream.range(0, 20_000).map(i -> memo.blocks().get(0)).toArray();

        assertThat(ReadLayer.of(memo.layer(folder, false, references), "route").details())
                .singleElement()
                .asString()
                .contains("the same texts are referenced repeatedly");
    }

    @Test
    void picturesAndObjectsAreNoTexts() throws IOException {
        MemoBytes memo = MemoBytes.of(Layout.FOXPRO, SHORT, SHORT);
        ByteBuffer.wrap(memo.bytes()).putInt(memo.blocks().get(0) * 64, 0);
        Path file =
                memo.layer(folder, false, memo.blocks().get(0), memo.blocks().get(1));

        assertThat(routes(ReadLayer.of(file, "route"))).containsExactly(null, "Ridge Row 5");
    }

    @Test
    void aFoxProFileWithoutASizeOfBlocksIsTold() throws IOException {
        MemoBytes memo = new MemoBytes(Layout.FOXPRO, new byte[600], List.of(8));

        assertThat(ReadLayer.of(memo.layer(folder, false, 8), "route").details())
                .singleElement()
                .asString()
                .contains("has no block size");
    }

    static IntStream seeds() {
        return IntStream.range(0, 120);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void changedFilesOfTextsNeverCrash(int seed) throws IOException {
        var random = new Random(seed);
        Layout layout = List.of(Layout.values()).get(seed % 4);
        MemoBytes memo = MemoBytes.of(layout, SHORT, LONG, ACCENTED);
        Path file = memo.layer(
                folder,
                seed % 2 == 0,
                memo.blocks().get(0),
                memo.blocks().get(1),
                random.nextInt(),
                memo.blocks().get(2));
        Files.write(folder.resolve("layer." + layout.ending), FileMutator.mutated(memo.bytes(), random));

        FuzzedFile.read(file);
    }
}
