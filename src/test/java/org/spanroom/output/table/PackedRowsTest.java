package org.spanroom.output.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.spanroom.output.text.CsvFile;

/** Rows that were packed are written byte for byte as rows that were not. */
class PackedRowsTest {
    private static final double[] HARD_NUMBERS = {
        0,
        -0.0,
        0.0005,
        -0.0005,
        1e-320,
        0.1,
        2.675,
        1e15 + 0.5,
        562_949_953_421.311,
        562_949_953_421.312,
        -1e300,
        9e18,
        123.4565
    };
    private static final long[] HARD_WHOLES = {
        0, 1, -1, 63, 64, Integer.MIN_VALUE, 1L << 60, 1L << 61, -(1L << 61), Long.MAX_VALUE, Long.MIN_VALUE
    };

    /** Those of a text that fills a block: without its mark and length, three empty cells, and the length of the row. */
    private static final int MOST_CHARACTERS = (1 << 20) - 1 - 3 - 3 - 3;

    @TempDir
    Path folder;

    /** A row with a cell of each type. */
    private record Cells(
            @Nullable String text,
            @Nullable Long whole,
            @Nullable Double real,
            @Nullable Boolean flag,
            String name) {}

    private static final Column<Cells> NAME = Column.text("name", "name", "The name.", Cells::name);

    private static final Table<Cells> TABLE = Table.plain(
            "cells",
            "Cells.",
            List.of(
                    Column.text("label", "label", "A text.", Cells::text),
                    NAME,
                    Column.integer("count", "count", "A whole number.", Cells::whole),
                    Column.real("length_m", "length_m", 3, "A number.", Cells::real),
                    Column.flag("wet", "wet", "A flag.", Cells::flag)));

    @ParameterizedTest
    @EnumSource
    void rowsInAnotherOrderAreWrittenAsThoseThatWereNotPacked(Where where) throws IOException {
        demandSame(where, draw(4000, 50));
    }

    /** More different texts than get numbers. */
    @ParameterizedTest
    @EnumSource
    void textsAreKeptHoweverManyThereAre(Where where) throws IOException {
        demandSame(where, draw(70_000, Integer.MAX_VALUE));
    }

    /** Rows of every length around those that are read back at once, and one that fills a block by itself. */
    @ParameterizedTest
    @EnumSource
    void longRowsAreKept(Where where) throws IOException {
        // Texts beyond the first 65 536 are kept as they are.
        List<Cells> rows = new ArrayList<>(draw(66_000, Integer.MAX_VALUE));
        IntStream.range(230, 270).forEach(length -> rows.add(text("x".repeat(length))));
        rows.add(text("y".repeat(MOST_CHARACTERS)));
        rows.add(text("z".repeat(40_000)));

        demandSame(where, rows);
    }

    @ParameterizedTest
    @EnumSource
    void rowsOfManyFillersAreFoundByTheirNumbers(Where where) throws IOException {
        List<Cells> rows = draw(3000, 100);
        PackedRows<Cells, Cells> packed = store(where, rows.size());
        List<PackedRows<Cells, Cells>.Filler> fillers = new ArrayList<>();
        IntStream.range(0, 5).forEach(thread -> fillers.add(packed.newFiller()));
        for (int number = rows.size() - 1; number >= 0; number--) {
            fillers.get(number % fillers.size()).add(number, rows.get(number));
        }
        packed.end();

        assertThat(bytes(packed, rows, inOrder(rows.size()))).isEqualTo(bytes(rows, inOrder(rows.size())));
        packed.close();
    }

    /** A row larger than what can be held makes the store say so, instead of losing the row. */
    @ParameterizedTest
    @EnumSource
    void rowsThatCannotBeHeldAreReported(Where where) {
        PackedRows<Cells, Cells> packed = store(where, 70_000);
        PackedRows<Cells, Cells>.Filler filler = packed.newFiller();
        for (int number = 0; number < 65_536; number++) {
            filler.add(number, text("t" + number));
        }
        assertThat(packed.isIncomplete()).isFalse();

        filler.add(65_536, text("x".repeat(MOST_CHARACTERS + 1)));
        filler.add(65_537, text("x"));
        packed.end();

        assertThat(packed.isIncomplete()).isTrue();
        // The file is gone too.
        assertThat(folder).isEmptyDirectory();
    }

    /** A row that no one would hand over must not be lost without a word. */
    @ParameterizedTest
    @EnumSource
    void aRowAfterTheLastIsRefused(Where where) {
        PackedRows<Cells, Cells> packed = store(where, 3);
        PackedRows<Cells, Cells>.Filler filler = packed.newFiller();
        filler.add(0, text("a"));
        packed.end();

        assertThatThrownBy(() -> filler.add(1, text("b"))).isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> packed.newFiller().add(2, text("c"))).isInstanceOf(IllegalStateException.class);
        packed.close();
    }

    /** As when the disk is full: the store says that it has not all rows, and the run goes on without it. */
    @Test
    void aFileThatCannotBeWrittenIsReported() {
        PackedRows<Cells, Cells> packed = store(Where.FILE, 10);
        PackedRows<Cells, Cells>.Filler filler = packed.newFiller();
        filler.add(0, text("a"));
        packed.close();
        packed.end();

        assertThat(packed.isIncomplete()).isTrue();
    }

    @Test
    void aFileThatCannotBeMadeGivesNoStore() {
        assertThat(PackedRows.<Cells, Cells>inFile(TABLE.columns(), Map.of(), 10, folder.resolve("no/rows")))
                .isEmpty();
    }

    /** A killed program leaves no such file, which may be large. */
    @Test
    @EnabledOnOs({OS.LINUX, OS.MAC})
    void theFileHasNoNameWhileItIsUsed() throws IOException {
        PackedRows<Cells, Cells> packed = store(Where.FILE, 1);
        packed.newFiller().add(0, text("a"));
        packed.end();

        assertThat(packed.isIncomplete()).isFalse();
        assertThat(folder).isEmptyDirectory();
        packed.close();
    }

    /** As of a disk that loses what it took: a row must not come back with empty cells. */
    @Test
    void aDamagedRowIsRefused() {
        var blocks = new MemoryBlocks();
        var packed = new PackedRows<Cells, Cells>(TABLE.columns(), Map.of("name", NAME), 1, blocks);
        packed.newFiller().add(0, text("a"));
        packed.end();
        RowBlocks.Reading reading = blocks.newReading();
        reading.go(0);
        Arrays.fill(reading.bytes(), (byte) 0);
        PackedRows<Cells, Cells>.Reader reader = packed.newReader();

        assertThatThrownBy(() -> reader.read(0)).hasMessageContaining("damaged");
    }

    /** Where rows are held. */
    private enum Where {
        MEMORY,
        FILE
    }

    private PackedRows<Cells, Cells> store(Where where, int rows) {
        return where == Where.MEMORY
                ? new PackedRows<>(TABLE.columns(), Map.of("name", NAME), rows)
                : PackedRows.inFile(TABLE.columns(), Map.of("name", NAME), rows, folder.resolve("rows"))
                        .orElseThrow();
    }

    private static Cells text(String text) {
        return new Cells(text, null, null, null, "n");
    }

    private void demandSame(Where where, List<Cells> rows) throws IOException {
        PackedRows<Cells, Cells> packed = store(where, rows.size());
        PackedRows<Cells, Cells>.Filler filler = packed.newFiller();
        for (int number = 0; number < rows.size(); number++) {
            filler.add(number, rows.get(number));
        }
        packed.end();
        List<Integer> order = new ArrayList<>(inOrder(rows.size()));
        Collections.shuffle(order, new Random(7));

        assertThat(packed.isIncomplete()).isFalse();
        assertThat(bytes(packed, rows, order)).isEqualTo(bytes(rows, order));
        packed.close();
    }

    private static List<Integer> inOrder(int count) {
        return IntStream.range(0, count).boxed().toList();
    }

    private byte[] bytes(List<Cells> rows, List<Integer> order) throws IOException {
        Path file = folder.resolve("plain.csv");
        var csv = new CsvFile(file, TABLE);
        var batch = new TableBatch<>(TABLE, OutputCrs.lonLat(), List.of(csv));
        order.forEach(number -> batch.add(rows.get(number)));
        batch.append();
        csv.close();
        return Files.readAllBytes(file);
    }

    private byte[] bytes(PackedRows<Cells, Cells> packed, List<Cells> rows, List<Integer> order) throws IOException {
        Path file = folder.resolve("packed.csv");
        var csv = new CsvFile(file, TABLE);
        var batch = new TableBatch<>(TABLE, OutputCrs.lonLat(), List.of(csv));
        PackedRows<Cells, Cells>.Reader reader = packed.newReader();
        int[] columns = IntStream.range(0, TABLE.columns().size()).toArray();
        reader.prefetch(order.stream().mapToInt(Integer::intValue).toArray());
        for (int number : order) {
            reader.read(number);
            batch.add(reader, columns, rows.get(number), Shape.EMPTY);
        }
        batch.append();
        csv.close();
        return Files.readAllBytes(file);
    }

    private static List<Cells> draw(int count, int texts) {
        var random = new Random(1);
        var rows = new ArrayList<Cells>();
        for (int i = 0; i < count; i++) {
            boolean some = random.nextInt(5) > 0;
            rows.add(new Cells(
                    some ? "Größe 東 " + random.nextInt(texts) : random.nextBoolean() ? null : " ",
                    random.nextInt(4) == 0 ? null : whole(random),
                    random.nextInt(4) == 0 ? null : real(random),
                    random.nextInt(3) == 0 ? null : random.nextBoolean(),
                    "name " + i));
        }
        return rows;
    }

    private static long whole(Random random) {
        return random.nextBoolean() ? random.nextInt(100_000) - 500 : HARD_WHOLES[random.nextInt(HARD_WHOLES.length)];
    }

    private static double real(Random random) {
        return switch (random.nextInt(4)) {
            case 0 -> HARD_NUMBERS[random.nextInt(HARD_NUMBERS.length)];
            case 1 -> Double.longBitsToDouble(random.nextLong());
            default -> random.nextGaussian() * Math.pow(10, random.nextInt(13));
        };
    }
}
