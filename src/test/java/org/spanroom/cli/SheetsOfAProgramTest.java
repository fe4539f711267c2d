package org.spanroom.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The sheets of one year of a program: its spans and no others, in the order of its calendar, with week and crew. */
class SheetsOfAProgramTest {
    @TempDir
    static Path folder;

    private static Path run;
    private static Path program;

    @BeforeAll
    static void makeAProgram() throws IOException {
        run = folder.resolve("run");
        program = folder.resolve("program");
        Path config = ProgramTown.write(folder);
        CommandRun ranked = CommandRun.of("rank", "--config", config.toString(), "--output", run.toString(), "--quiet");
        assertEquals(ExitCode.OK, ranked.exitCode(), ranked.err());
        Path crews = Files.writeString(folder.resolve("program.yaml"), """
                first_day: 2027-02-01
                crews:
                  - {name: Early, shifts_per_week: 4, shift_hours: 7.5, shifts: days}
                years: [{money: 30000}, {money: 30000}]
                """);
        CommandRun planned = CommandRun.of(
                "program",
                run.toString(),
                "--config",
                crews.toString(),
                "--skip",
                "curve,prices,draws",
                "--output",
                program.toString(),
                "--quiet");
        assertEquals(ExitCode.OK, planned.exitCode(), planned.err());
    }

    private static CommandRun sheets(String name, String... more) {
        return CommandRun.of(Stream.concat(
                        Stream.of(
                                "sheets",
                                run.toString(),
                                "--program",
                                program.toString(),
                                "--output",
                                folder.resolve(name).toString()),
                        Stream.of(more))
                .toArray(String[]::new));
    }

    @Test
    void aYearHasItsSpansInTheOrderOfTheCalendar() throws IOException {
        for (String year : List.of("1", "2")) {
            CommandRun made = sheets("year-" + year, "--year", year);
            assertEquals(ExitCode.OK, made.exitCode(), made.err());
            List<CSVRecord> rows = planned().stream()
                    .filter(row -> row.get("year").equals(year))
                    .toList();
            assertFalse(rows.isEmpty());
            List<String> texts = new PrintedSheets(folder.resolve("year-" + year)).pdfTexts();

            assertEquals(
                    rows.size(),
                    texts.stream().filter(text -> text.contains("STOP RULE")).count());
            String covers = String.join(
                    "\n",
                    texts.stream().filter(text -> text.startsWith("Section ")).toList());
            for (CSVRecord row : rows) {
                assertTrue(covers.contains(row.get("first_day")), row.get("span_id") + " in " + covers);
                assertTrue(covers.contains("Early"), covers);
            }
            List<String> weeks = rows.stream().map(row -> row.get("first_day")).toList();
            int at = -1;
            for (String day : weeks.stream().distinct().toList()) {
                int next = covers.indexOf(day);
                assertTrue(next > at, "the first day " + day + " comes after earlier ones");
                at = next;
            }
        }
    }

    @Test
    void aYearThatTheProgramDoesNotHaveIsRefused() {
        CommandRun made = sheets("year-9", "--year", "9");

        assertEquals(ExitCode.INPUT, made.exitCode(), made.err());
        assertTrue(
                made.err().contains("no span of the program is in year 9. Name one of its years with --year."),
                made.err());
        assertFalse(Files.exists(folder.resolve("year-9")));
    }

    private static List<CSVRecord> planned() throws IOException {
        try (CSVParser parser = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(Files.newBufferedReader(program.resolve("program.csv")))) {
            return parser.getRecords();
        }
    }
}
