package org.spanroom.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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
                  - {name: Early, shifts_per_week: 4, shift_hours: 12, shifts: days}
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

    /** One job, one amount: what the sheets plan is what {@code program.csv} says, to the rounding of each. */
    @Test
    void hoursAndCostAreThoseOfTheProgram() throws IOException {
        List<CSVRecord> rows =
                planned().stream().filter(row -> row.get("year").equals("1")).toList();
        assertTrue(rows.stream().anyMatch(row -> amount(row, "shared_hours") > 0), "a job shares a set-up");
        Path made = folder.resolve("amounts");
        assertEquals(ExitCode.OK, sheets("amounts", "--year", "1").exitCode());
        String text = String.join("\n", new PrintedSheets(made).pdfTexts()).replaceAll("\\s+", " ");

        for (CSVRecord row : rows) {
            List<CSVRecord> closeout = csv(made.resolve("closeout.csv")).stream()
                    .filter(blank -> blank.get("span").equals(row.get("span_id")))
                    .toList();
            double costMoney = amount(
                    closeout.stream()
                            .filter(blank -> blank.get("fact").equals("cost"))
                            .findFirst()
                            .orElseThrow(),
                    "planned");
            double stepHours = closeout.stream()
                    .filter(blank -> blank.get("fact").equals("step_hours"))
                    .mapToDouble(blank -> amount(blank, "planned"))
                    .sum();
            double siteHours = amount(row, "site_hours");
            double sharedHours = amount(row, "shared_hours");

            assertEquals(amount(row, "cost_money"), costMoney, 0.5, row.get("span_id"));
            assertEquals(siteHours + sharedHours, stepHours, 0.005 * closeout.size(), row.get("span_id"));
            assertTrue(
                    text.contains(
                            String.format(Locale.ROOT, "Cost by the program %,.0f USD, ", amount(row, "cost_money"))),
                    text);
            assertEquals(
                    sharedHours > 0,
                    text.contains(String.format(
                            Locale.ROOT,
                            "set-up shared with work before -%.2f On site in all, by the program %.2f",
                            sharedHours,
                            siteHours)),
                    text);
        }
    }

    private static double amount(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
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

    /** Crews that get the weeks of another run go to vaults that the run did not assess. */
    @ParameterizedTest
    @CsvSource({"sheets", "explain", "report"})
    void theProgramOfAnotherRunIsRefused(String command) throws IOException {
        Path other = Files.createDirectories(folder.resolve("other-" + command));
        for (String table : List.of("program", "reserve", "program_totals", "budget_curve", "program_connections")) {
            Path file = program.resolve(table + ".csv");
            if (Files.exists(file)) {
                Files.copy(file, other.resolve(table + ".csv"));
            }
        }
        CSVRecord first = planned().get(0);
        Path made = folder.resolve("refused-" + command);
        List<String> arguments = switch (command) {
            case "sheets" -> List.of(command, run.toString(), "--year", "1", "--output", made.toString());
            case "report" -> List.of(command, run.toString(), "--output", made + ".html");
            default -> List.of(command, first.get("span_id"), "--run", run.toString());
        };
        String row = Files.readString(other.resolve("program.csv"));
        String here = "," + first.get("span_id") + "," + first.get("rank") + ",";

        Files.writeString(other.resolve("program.csv"), row.replace(here, "," + first.get("span_id") + ",999,"));
        CommandRun otherRank = withProgram(arguments, other);
        assertEquals(ExitCode.INPUT, otherRank.exitCode(), otherRank.err());
        assertTrue(
                otherRank
                        .err()
                        .contains("the program was made of another run: it has the span '"
                                + first.get("span_id") + "' at rank 999, the run at " + first.get("rank")
                                + ". Name the program of this run."),
                otherRank.err());

        Files.writeString(other.resolve("program.csv"), row.replace(here, ",Elsewhere-1," + first.get("rank") + ","));
        CommandRun otherSpan = withProgram(arguments, other);
        assertEquals(ExitCode.INPUT, otherSpan.exitCode(), otherSpan.err());
        assertTrue(otherSpan.err().contains("it has the span 'Elsewhere-1', which is not in the run"), otherSpan.err());
        assertFalse(Files.exists(made));
    }

    private static CommandRun withProgram(List<String> arguments, Path other) {
        return CommandRun.of(Stream.concat(arguments.stream(), Stream.of("--program", other.toString()))
                .toArray(String[]::new));
    }

    private static List<CSVRecord> planned() throws IOException {
        return csv(program.resolve("program.csv"));
    }

    private static List<CSVRecord> csv(Path file) throws IOException {
        try (CSVParser parser = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(Files.newBufferedReader(file))) {
            return parser.getRecords();
        }
    }
}
