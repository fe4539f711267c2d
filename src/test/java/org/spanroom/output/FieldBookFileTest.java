package org.spanroom.output;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.InputException;
import org.spanroom.input.fieldbook.FieldBookReader;
import org.spanroom.input.layer.SourceNumber;
import org.spanroom.model.SpreadsheetText;
import org.spanroom.model.effort.EffortStep;
import org.spanroom.model.fieldwork.BookRow;
import org.spanroom.model.fieldwork.FactUnit;
import org.spanroom.model.fieldwork.FactValue;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.output.folder.OutputException;

/** What is entered comes back as it was entered, whatever the texts are. */
class FieldBookFileTest {
    private static final LocalDate DAY = LocalDate.of(2027, 3, 31);
    private static final String[] TEXTS = {
        "plain",
        "with, comma",
        "with \"quotes\"",
        "semi;colon",
        "=SUM(A1)",
        "-12",
        "-x",
        "+1-2",
        "@home",
        "'quoted",
        "''=x",
        "'=x",
        "Zoë",
        "管道",
        "|",
        "#",
        "0012",
        "1,5",
        "yes",
        "a:b:c",
        "%7C",
        "\uFF1Dx",
        "x".repeat(400)
    };

    @TempDir
    Path folder;

    private static FieldBookReader reader() {
        return new FieldBookReader(ShippedConfig.get().plausible());
    }

    private static String text(Random random) {
        return TEXTS[random.nextInt(TEXTS.length)];
    }

    private static <T> T anyOf(T[] values, Random random) {
        return values[random.nextInt(values.length)];
    }

    private static FieldEntry entry(int number, Random random) {
        FieldFact fact = anyOf(FieldFact.values(), random);
        return new FieldEntry(
                number,
                fact,
                text(random),
                item(fact, random),
                value(fact, random),
                random.nextBoolean() && fact.kind().isNumber()
                        ? Optional.of(value(fact, random, unit(fact)))
                        : Optional.empty(),
                text(random),
                DAY.minusDays(random.nextInt(4000)),
                number > 1 && random.nextInt(5) == 0
                        ? OptionalInt.of(1 + random.nextInt(number - 1))
                        : OptionalInt.empty(),
                "00c0ffee",
                random.nextBoolean() ? "" : text(random));
    }

    private static String item(FieldFact fact, Random random) {
        String end = random.nextBoolean() ? "a" : "b";
        return switch (fact.item()) {
            case NONE -> "";
            case STEP -> anyOf(EffortStep.values(), random).key();
            case END -> end;
            case INNERDUCT_AT_END, CABLE_AT_END -> text(random) + " " + end;
            default -> text(random);
        };
    }

    private static FactUnit unit(FieldFact fact) {
        return fact.kind().units().get(0);
    }

    private static FactValue value(FieldFact fact, Random random) {
        return value(fact, random, unit(fact));
    }

    private static FactValue value(FieldFact fact, Random random, FactUnit unit) {
        return switch (fact.kind()) {
            case WORD ->
                FactValue.ofText(fact.words().get(random.nextInt(fact.words().size())));
            case ANSWER -> FactValue.ofText(random.nextBoolean() ? "yes" : "no");
            case DAY -> FactValue.ofText(DAY.minusDays(random.nextInt(9000)).toString());
            case TEXT -> FactValue.ofText(text(random));
            case COUNT -> FactValue.ofNumber("3", unit, 3);
            case DIAMETER -> diameter(fact, unit);
            case LIGHT -> FactValue.ofNumber("-23.5", unit, -23.5);
            case PERCENT -> FactValue.ofNumber("20.9", unit, 20.9);
            case AIR_VOLUME, LENGTH -> FactValue.ofNumber("2.5", unit, 2.5);
            default -> FactValue.ofNumber("12.25", unit, 12.25);
        };
    }

    private static FactValue diameter(FieldFact fact, FactUnit unit) {
        double mm = switch (fact) {
            case INNERDUCT_WALL -> 3.1;
            case CABLE_DIAMETER -> 17.5;
            case INNERDUCT_DIAMETER -> 42.2;
            case COVER_SIZE -> 700;
            default -> 101.6;
        };
        return FactValue.ofNumber(SourceNumber.canonical(mm), unit, mm);
    }

    private Path write(Path file, List<FieldEntry> entries) {
        try (FieldBookFile book = FieldBookFile.open(file)) {
            book.append(entries.stream().map(entry -> new BookRow(entry, DAY)).toList());
        }
        return file;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void whatIsEnteredComesBackWhateverTheTextsAre(long seed) {
        var random = new Random(seed);
        Path file = folder.resolve("book.csv");
        var all = new ArrayList<FieldEntry>();
        for (int batch = 0; batch < 4; batch++) {
            List<FieldEntry> more = IntStream.rangeClosed(all.size() + 1, all.size() + 60)
                    .mapToObj(number -> entry(number, random))
                    .toList();
            write(file, more);
            all.addAll(more);
        }

        FieldBookReader.Read read = reader().read(file);

        assertEquals(List.of(), read.problems());
        assertEquals(all, read.book().all());
        assertEquals(240, read.lastNumber());
        assertTrue(read.plain());
    }

    @Test
    void everyTextOfFewSignsComesBack() {
        List<String> signs = List.of("'", "=", "-", "1", "a", "\"", ",");
        List<String> texts = Stream.of(signs)
                .flatMap(one -> one.stream()
                        .flatMap(a -> one.stream().flatMap(b -> one.stream().map(c -> a + b + c))))
                .toList();

        texts.forEach(text -> {
            assertEquals(text, SpreadsheetText.restored(SpreadsheetText.guarded(text)));
            assertTrue(!SpreadsheetText.guarded(text).startsWith("="), text);
        });
    }

    /** Rows are added behind what is there, which stays byte for byte: an earlier run finds its beginning again. */
    @Test
    void theBeginningThatARunHasReadIsFoundAgain() throws IOException {
        var random = new Random(7);
        Path file = write(folder.resolve("book.csv"), List.of(entry(1, random), entry(2, random)));
        FieldBookReader.Read first = reader().read(file);
        byte[] before = Files.readAllBytes(file);
        write(file, List.of(entry(3, random)));

        byte[] after = Files.readAllBytes(file);
        assertArrayEquals(before, Arrays.copyOf(after, before.length));
        FieldBookReader.Read again = reader().readBeginning(file, first.digest().sha256Hex());
        assertEquals(first.book().all(), again.book().all());
        assertEquals(first.digest(), again.digest());
        assertEquals(3, reader().read(file).book().all().size());

        after[before.length - 3] ^= 1;
        Files.write(file, after);
        var refused = assertThrows(
                InputException.class,
                () -> reader().readBeginning(file, first.digest().sha256Hex()));
        assertTrue(refused.getMessage().contains("its first rows are not those that the run has read"));
    }

    @Test
    void aBookWhoseLastLineHasNoEndGetsOne() throws IOException {
        var random = new Random(8);
        Path file = write(folder.resolve("book.csv"), List.of(entry(1, random)));
        Files.writeString(file, Files.readString(file).strip());
        FieldBookReader.Read first = reader().read(file);
        write(file, List.of(entry(2, random)));

        assertEquals(2, reader().read(file).book().all().size());
        assertEquals(
                1,
                reader().readBeginning(file, first.digest().sha256Hex())
                        .book()
                        .all()
                        .size());
    }

    /** Of a book that was changed by hand: no entry can make itself, or one that comes later, disappear. */
    @Test
    void onlyAnEarlierEntryCanBeCorrected() throws IOException {
        Path file = folder.resolve("book.csv");
        String rows = """
                format,entry,span,vault,fact,item,value,unit,date,supersedes
                1,1,D1:V1:V2,,status,,in_work,,2027-03-01,2
                1,2,D1:V1:V2,,status,,done,,2027-03-02,2
                1,3,D1:V1:V2,,status,,done,,2027-03-02,1
                """;
        FieldBookReader.Read read = reader().read(Files.writeString(file, rows));

        assertEquals(
                List.of(3), read.book().all().stream().map(FieldEntry::number).toList());
        assertEquals(2, read.rejected());
        assertTrue(read.problems().get(0).words().contains("entry 1 cannot correct entry 2. Name an earlier entry."));
        assertTrue(read.problems().get(1).words().contains("entry 2 cannot correct entry 2"));
    }

    @Test
    void severalThatEnterAtOnceLoseNothing() {
        Path file = folder.resolve("book.csv");
        IntStream.range(0, 8).parallel().forEach(thread -> {
            for (int i = 0; i < 10; i++) {
                try (FieldBookFile book = FieldBookFile.open(file)) {
                    int next = Files.exists(file) ? reader().read(file).lastNumber() + 1 : 1;
                    book.append(List.of(new BookRow(entry(next, new Random(next)), DAY)));
                }
            }
        });

        FieldBookReader.Read read = reader().read(file);
        assertEquals(List.of(), read.problems());
        assertEquals(
                IntStream.rangeClosed(1, 80).boxed().toList(),
                read.book().all().stream().map(FieldEntry::number).toList());
    }

    @Test
    void aLinkStaysALinkAndRightsStay() throws IOException {
        Path there = Files.createDirectories(folder.resolve("share")).resolve("book.csv");
        write(there, List.of(entry(1, new Random(1))));
        Files.setPosixFilePermissions(there, PosixFilePermissions.fromString("rw-rw-r--"));
        Path link = Files.createSymbolicLink(folder.resolve("book.csv"), there);

        write(link, List.of(entry(2, new Random(2))));

        assertTrue(Files.isSymbolicLink(link));
        assertEquals(2, reader().read(there).book().all().size());
        assertEquals("rw-rw-r--", PosixFilePermissions.toString(Files.getPosixFilePermissions(there)));
        try (Stream<Path> left = Files.list(there.getParent())) {
            assertEquals(1, left.count());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"run.json", ".results"})
    void aBookInAFolderOfResultsIsRefused(String marker) throws IOException {
        Path results = Files.createDirectories(folder.resolve("results/below"));
        Files.writeString(results.getParent().resolve(marker), "");

        var refused = assertThrows(OutputException.class, () -> FieldBookFile.open(results.resolve("book.csv")));

        assertTrue(refused.getMessage().contains("lies in a folder of results"), refused.getMessage());
    }

    @Test
    void rowsThatCannotBeUsedAreLeftOutWithTheirReason() throws IOException {
        Path file = write(folder.resolve("book.csv"), List.of(entry(1, new Random(1)), entry(2, new Random(2))));
        Files.writeString(
                file,
                Files.readString(file)
                        + "2,3,r,D1:V1:V2,,status,,,done,,C,2027-03-01,,,2027-03-31\n"
                        + "1,2,r,D1:V1:V2,,status,,,done,,C,2027-03-01,,,2027-03-31\n"
                        + "1,x,r,D1:V1:V2,,status,,,done,,C,2027-03-01,,,2027-03-31\n"
                        + "1,6,r,,,status,,,done,,C,2027-03-01,,,2027-03-31\n"
                        + "1,7,r,D1:V1:V2,,status,,,finished,,C,2027-03-01,,,2027-03-31\n"
                        + "1,8,r,D1:V1:V2,,status,,,done,,C,2027-03-01,99,,2027-03-31\n"
                        + "1,9,r,D1:V1:V2,,status,,,done,,C,2027-03-01,7,,2027-03-31\n");

        FieldBookReader.Read read = reader().read(file);

        assertEquals(
                List.of("format", "entry", "entry", "span", "value", "supersedes"),
                read.problems().stream().map(problem -> problem.column()).toList());
        assertEquals(
                List.of(1, 2, 9),
                read.book().all().stream().map(FieldEntry::number).toList());
        assertEquals(6, read.rejected());
        assertEquals(9, read.lastNumber());
    }

    @Test
    void theHeaderIsThatOfTheDataDictionary() throws IOException {
        Path file = write(folder.resolve("book.csv"), List.of(entry(1, new Random(1))));

        assertEquals(
                "format,entry,run,span,vault,fact,item,planned,value,unit,by,date,supersedes,note,entered",
                Files.readString(file, StandardCharsets.UTF_8)
                        .lines()
                        .findFirst()
                        .orElseThrow());
    }
}
