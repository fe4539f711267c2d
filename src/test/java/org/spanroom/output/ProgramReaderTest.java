package org.spanroom.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.finding.InputException;
import org.spanroom.model.program.ProgramResults;
import org.spanroom.model.program.RecordedProgram;
import org.spanroom.output.table.LayerOptions;

class ProgramReaderTest {
    @TempDir
    Path folder;

    @Test
    void whatWasWrittenIsReadBack() {
        RecordedProgram program = ProgramReader.read(written(AnnualSample.results()));

        assertEquals(
                List.of("S1", "S2", "S3", "S4"), List.copyOf(program.planned().keySet()));
        assertEquals(
                new RecordedProgram.Planned(
                        "S1",
                        "B1",
                        1,
                        LocalDate.of(2027, 3, 1),
                        "crew 1",
                        1,
                        LocalDate.of(2027, 3, 1),
                        LocalDate.of(2027, 3, 1),
                        new RecordedProgram.Amounts(6.5, 0, 1000, 800),
                        LocalDate.of(2027, 1, 30),
                        List.of("hospital", "library"),
                        "It saves most for its money."),
                program.planned().get("S1"));
        assertEquals(2, program.planned().get("S2").place());
        assertEquals(
                new RecordedProgram.Amounts(6, 0.5, 1000, 800),
                program.planned().get("S2").amounts());
        assertEquals(LocalDate.of(2027, 3, 15), program.planned().get("S3").lastDay());
        assertEquals(2, program.planned().get("S4").year());
        assertEquals(List.of(), program.planned().get("S4").connections());
        assertEquals(
                List.of(
                        new RecordedProgram.Reserved(
                                "R1", "B1", OptionalInt.of(1), "the budget of both years is used up"),
                        new RecordedProgram.Reserved("R2", "B2", OptionalInt.empty(), "must not")),
                List.copyOf(program.reserved().values()));
    }

    /** The guard against formulas in spreadsheets, quotes and line breaks are gone again. */
    @Test
    void hostileNamesComeBackAsTheyAre() throws IOException {
        String span = "=HYPERLINK(\"x\",\"y\")";
        String crew = "-crew, \"1\"\r\n2";
        var item = new AnnualSample.Item(span, "@B1").by(crew, 1, "2027-03-01").build();
        Path written = written(AnnualSample.results(List.of(item), List.of()));

        RecordedProgram.Planned planned = ProgramReader.read(written).planned().get(span);

        assertEquals(crew, planned.crew());
        assertEquals("@B1", planned.sectionId());
        assertTrue(Files.readString(written.resolve("program.csv"))
                .contains(",\"'-crew, \"\"1\"\"\r\n2\",1,1,'@B1,\"'=HYPERLINK(\"\"x\"\",\"\"y\"\")\","));
    }

    @Test
    void anEmptyProgramIsReadBack() {
        RecordedProgram program = ProgramReader.read(written(AnnualSample.results(List.of(), List.of())));

        assertTrue(program.planned().isEmpty());
        assertFalse(program.reserved().isEmpty());
    }

    @Test
    void aFolderWithoutAProgramIsRefused() {
        assertEquals(
                folder + ": the folder holds no program (no program.csv). Name the folder of a program.",
                message(folder));
    }

    @Test
    void aMissingReserveIsNamed() throws IOException {
        Path written = written(AnnualSample.results());
        Files.delete(written.resolve("reserve.csv"));

        assertTrue(message(written).contains("reserve.csv: it is missing. "), message(written));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "program.csv | 2027-03-12           | 2027-13-12   | row 3: first_day is no day: 2027-13-12",
                "program.csv | 2,2028-03-06,crew 1  | two,2028-03-06,crew 1 | row 4: year is no whole number: two",
                "program.csv | B1,S4                | B1,S1        | row 4: its span is in it twice",
                "program.csv | ,span_id,            | ,span,       | it has no column span_id",
                "program.csv | ,apply_by,           | ,apply,      | row 1: it has no apply_by",
                "program.csv | ,B3,S3,              | ,\"B3,S3,    | it cannot be read back",
                "program.csv | ,week,               | ,year,       | row 1: year is no whole number: 2027-03-01",
                "program.csv | 6.00,0.50            | six,0.50     | row 2: site_hours must be a number; was six",
                "program.csv | 6.00,0.50            | 6.00,-0.50   | row 2: shared_hours must be 0 or more; was -0.50",
                "program.csv | ,cost_money,         | ,cost,       | row 1: it has no cost_money",
                "reserve.csv | 1,R1                 | 1.5,R1       | row 1: place is no whole number: 1.5",
                "reserve.csv | ,must not            | ''           | row 2: it has no why_not"
            })
    void damageIsNamedInOneLine(String name, String before, String after, String problem) throws IOException {
        Path written = written(AnnualSample.results());
        Path file = written.resolve(name);
        String text = Files.readString(file);
        assertTrue(text.contains(before), text);
        Files.writeString(file, text.replace(before, after == null ? "" : after));

        assertEquals(file + ": " + problem + ". Make the program again with this version.", message(written));
    }

    @Test
    void whatIsNoTextIsRefused() throws IOException {
        Path written = written(AnnualSample.results());
        Path file = written.resolve("reserve.csv");
        Files.write(file, Files.readString(file).replace("R1", "\u00e9").getBytes(StandardCharsets.ISO_8859_1));

        assertEquals(file + ": it cannot be read back. Make the program again with this version.", message(written));
    }

    @Test
    void anEmptyFileIsRefused() throws IOException {
        Path written = written(AnnualSample.results());
        Path file = written.resolve("program.csv");
        Files.writeString(file, "");

        assertEquals(file + ": it has no column span_id. Make the program again with this version.", message(written));
    }

    private Path written(ProgramResults results) {
        Path target = folder.resolve("program");
        AnnualWriter.write(
                AnnualSample.network(),
                results,
                Map.of(),
                new JsonObject(),
                target,
                false,
                LayerOptions.lonLat(Instant.parse("2027-01-15T08:00:00Z")));
        return target;
    }

    private static String message(Path program) {
        return assertThrows(InputException.class, () -> ProgramReader.read(program))
                .getMessage();
    }
}
