package org.spanroom.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.input.fieldbook.FieldBookReader;
import org.spanroom.sample.DemoCity;
import org.spanroom.testing.FolderState;
import org.spanroom.testing.ForkedRun;

/** Out to the crew and back: what is entered decides what the next ranking says, and earlier runs stay what they were. */
class CloseoutCommandTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String HEADER = "code,span,vault,fact,item,planned,value,unit,by,date,supersedes,note\n";

    @TempDir
    static Path shared;

    @TempDir
    Path folder;

    private static Path config;
    private static Path first;
    private static List<String> best;

    @BeforeAll
    static void rankACity() throws IOException {
        Path city = shared.resolve("city");
        DemoCity.write(300, 3, city);
        config = city.resolve("spanroom.yaml");
        first = shared.resolve("first");
        rank(first);
        best = spans(first).stream()
                .filter(row -> !row.get("rank").isEmpty())
                .map(row -> row.get("span_id"))
                .limit(12)
                .toList();
    }

    private static CommandRun rank(Path to, String... more) {
        var arguments = new ArrayList<>(List.of(
                "rank", "--config", config.toString(), "--output", to.toString(), "--formats", "csv", "--quiet"));
        arguments.addAll(Arrays.asList(more));
        CommandRun run = CommandRun.of(arguments.toArray(String[]::new));
        assertEquals(0, run.exitCode(), run.err());
        return run;
    }

    private static List<CSVRecord> spans(Path run) throws IOException {
        try (CSVParser parser = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(Files.newBufferedReader(run.resolve("spans.csv")))) {
            return parser.getRecords();
        }
    }

    private static Map<String, Map<String, String>> byId(Path run) throws IOException {
        Map<String, Map<String, String>> rows = new HashMap<>();
        spans(run).forEach(row -> rows.put(row.get("span_id"), row.toMap()));
        return rows;
    }

    private Path file(String... rows) throws IOException {
        return Files.writeString(folder.resolve("closeout.csv"), HEADER + String.join("\n", rows) + "\n");
    }

    private static String row(String span, String fact, String item, String value) {
        return "," + span + ",," + fact + "," + item + ",," + value + ",,crew 1,2026-11-02,,";
    }

    private CommandRun closeout(Path file, Path book, String... more) {
        var arguments = new ArrayList<>(
                List.of("closeout", file.toString(), "--run", first.toString(), "--field-book", book.toString()));
        arguments.addAll(Arrays.asList(more));
        return CommandRun.of(arguments.toArray(String[]::new));
    }

    private Path book(String... rows) throws IOException {
        Path book = folder.resolve("book.csv");
        CommandRun run = closeout(file(rows), book);
        assertEquals(0, run.exitCode(), run.out() + run.err());
        return book;
    }

    @Test
    void statesOfTheWorkDecideWhatIsRanked() throws IOException {
        Path book = book(
                row(best.get(0), "status", "", "done"),
                row(best.get(0), "innerduct_out", "innerduct-1", "yes"),
                row(best.get(1), "status", "", "in_work"),
                row(best.get(2), "status", "", "stopped"),
                row(best.get(2), "status_reason", "", "gauge at limit"),
                row(best.get(3), "status", "", "planned"),
                row(best.get(4), "blocked_at", "a", "3 m"));
        Path second = folder.resolve("second");
        rank(second, "--field-book", book.toString());

        Map<String, Map<String, String>> rows = byId(second);
        assertEquals("work_done", rows.get(best.get(0)).get("exclusion"));
        assertEquals("in_work", rows.get(best.get(1)).get("exclusion"));
        assertEquals("", rows.get(best.get(2)).get("exclusion"));
        assertTrue(rows.get(best.get(2)).get("cautions").startsWith("work_stopped"));
        assertFalse(rows.get(best.get(3)).get("rank").isEmpty());
        assertEquals("duct_blocked", rows.get(best.get(4)).get("exclusion"));
        assertEquals("done", rows.get(best.get(0)).get("work_status"));
        assertFalse(byId(first).get(best.get(0)).containsKey("work_status"));

        JsonNode input = input(second);
        assertEquals(7, input.get("features_read").asInt());
        assertEquals(7, input.get("features_used").asInt());
        assertEquals(book.toString(), input.get("file").asText());
        assertEquals(
                book.toString(),
                JSON.readTree(second.resolve("run.json").toFile())
                        .at("/config/inputs/field_book/file")
                        .asText());
    }

    private static JsonNode input(Path run) throws IOException {
        for (JsonNode input : JSON.readTree(run.resolve("run.json").toFile()).get("inputs")) {
            if (input.get("role").asText().equals("field_book")) {
                return input;
            }
        }
        throw new AssertionError("no field book");
    }

    /** Everything that explain shows of a duct, reported as it is recorded. */
    private static List<String> asRecorded(String span) throws IOException {
        JsonNode duct = JSON.readTree(CommandRun.of("explain", span, "--run", first.toString(), "--json")
                        .out())
                .get("duct");
        var rows = new ArrayList<String>();
        rows.add(row(span, "duct_flooded", "", duct.get("flooded").asBoolean() ? "yes" : "no"));
        if (!duct.get("condition").asText().equals("unknown")) {
            rows.add(row(span, "duct_condition", "", duct.get("condition").asText()));
        }
        int cables = 0;
        for (JsonNode innerduct : duct.get("innerducts")) {
            String name = innerduct.get("innerduct").asText();
            rows.add(row(span, "innerduct_there", name, "yes"));
            for (JsonNode cable : innerduct.get("cables")) {
                cables += cable(span, cable, name, rows);
            }
        }
        for (JsonNode cable : duct.get("loose_cables")) {
            cables += cable(span, cable, "loose", rows);
        }
        if (duct.get("sleeves").isEmpty()) {
            rows.add(row(
                    span, "innerducts_found", "", "" + duct.get("innerducts").size()));
            rows.add(row(span, "cables_found", "", "" + cables));
        }
        return rows;
    }

    private static int cable(String span, JsonNode cable, String in, List<String> rows) {
        String name = cable.get("cable").asText();
        rows.add(row(span, "cable_there", name, "yes"));
        rows.add(row(span, "cable_in", name, in));
        if (!cable.get("service").asText().equals("unknown")) {
            rows.add(row(span, "cable_service", name, cable.get("service").asText()));
        }
        return 1;
    }

    @Test
    void factsThatEqualTheRecordsMoveNoRank() throws IOException {
        Path recorded = folder.resolve("recorded");
        // Ducts that are found as recorded make the simulation surer of others; what is compared here is what is
        // calculated.
        rank(recorded, "--columns", "provenance", "--no-uncertainty");
        List<String> known = spans(recorded).stream()
                .filter(row -> row.get("assumed").isEmpty()
                        && row.get("contents_source").equals("recorded"))
                .map(row -> row.get("span_id"))
                .limit(8)
                .toList();
        assertEquals(8, known.size());
        var rows = new ArrayList<String>();
        for (String span : known) {
            rows.addAll(asRecorded(span));
        }
        Path second = folder.resolve("second");
        rank(
                second,
                "--field-book",
                book(rows.toArray(String[]::new)).toString(),
                "--columns",
                "provenance",
                "--no-uncertainty");

        Map<String, Map<String, String>> before = byId(recorded);
        Map<String, Map<String, String>> after = byId(second);
        List<String> fresh = List.of("work_status", "work_status_day", "blocked_at_m", "field_entries");
        long reported = after.values().stream()
                .filter(row -> !row.get("field_entries").isEmpty())
                .count();
        assertEquals(8, reported);
        after.values().forEach(row -> fresh.forEach(row::remove));
        // What opened ducts say of like ones moves towards the record; see LearnedOfRunTest.
        for (Map<String, Map<String, String>> run : List.of(before, after)) {
            run.values()
                    .forEach(row ->
                            List.of("feasible_chance_pct", "top_chance_pct").forEach(row::remove));
        }
        for (Map.Entry<String, Map<String, String>> span : before.entrySet()) {
            assertEquals(span.getValue(), after.get(span.getKey()));
        }
        assertEquals(before.keySet(), after.keySet());
    }

    @Test
    void aFileThatIsAppliedTwiceIsNoticed() throws IOException {
        Path book = book(row(best.get(0), "status", "", "done"), row(best.get(1), "status", "", "in_work"));
        byte[] before = Files.readAllBytes(book);

        CommandRun again = closeout(folder.resolve("closeout.csv"), book);
        assertEquals(ExitCode.INPUT, again.exitCode());
        assertTrue(
                again.out()
                        .contains("2 rows (lines 2, 3): it is already entered as entry 1; the other rows are similar."),
                again.out());
        assertTrue(again.out().contains("\n--json lists each of these rows.\n"), again.out());
        assertTrue(again.out().contains("All of it is entered already."), again.out());
        assertArrayEquals(before, Files.readAllBytes(book));

        CommandRun more = closeout(
                file(row(best.get(0), "status", "", "done"), row(best.get(2), "status", "", "permitted")),
                book,
                "--partial");
        assertEquals(ExitCode.FINDINGS, more.exitCode());
        assertTrue(more.out().contains("entry 3"), more.out());
        assertTrue(Files.readString(book).startsWith(new String(before, StandardCharsets.UTF_8)));
    }

    @Test
    void nothingIsEnteredWhereARowIsNotUnderstood() throws IOException {
        Path book = folder.resolve("book.csv");
        Path file = file(row(best.get(0), "status", "", "done"), row("D:1:2", "status", "", "done"));

        CommandRun whole = closeout(file, book);
        assertEquals(ExitCode.INPUT, whole.exitCode());
        assertTrue(whole.out().contains("line 3, span: the run has no span 'D:1:2'"), whole.out());
        assertFalse(whole.out().contains("--json"), whole.out());
        assertFalse(Files.exists(book));

        assertEquals(
                ExitCode.FINDINGS, closeout(file, book, "--partial", "--check").exitCode());
        assertFalse(Files.exists(book));
        assertEquals(List.of("closeout.csv"), FolderState.names(folder));

        JsonNode partial =
                JSON.readTree(closeout(file, book, "--partial", "--json").out());
        assertEquals(1, partial.get("entries").asInt());
        assertEquals(1, partial.get("rows_refused").asInt());
        assertEquals(3, partial.at("/problems/0/line").asInt());
        assertEquals(1, partial.at("/entries_by_use/status").asInt());
        assertTrue(Files.exists(book));
    }

    @Test
    void aBookThatTheConfigNamesNeedsNoOption() throws IOException {
        Path book = book(row(best.get(0), "status", "", "in_work"));
        Path second = folder.resolve("second");
        rank(second, "--field-book", book.toString());
        Path file = file(row(best.get(1), "status", "", "in_work"));

        CommandRun run = CommandRun.of("closeout", file.toString(), "--run", second.toString());

        assertEquals(0, run.exitCode(), run.err());
        assertTrue(run.out().contains("entry 2"), run.out());
        assertFalse(run.out().contains("Add to it"), run.out());
        assertEquals(
                ExitCode.USAGE,
                CommandRun.of("closeout", file.toString(), "--run", first.toString())
                        .exitCode());
        assertEquals(ExitCode.OUTPUT, closeout(file, first.resolve("book.csv")).exitCode());
    }

    @Test
    void anEarlierRunStaysWhatItWasWhenRowsAreAdded() throws IOException {
        Path book = book(row(best.get(0), "status", "", "in_work"));
        Path second = folder.resolve("second");
        rank(second, "--field-book", book.toString());
        String before = explained(second);
        assertEquals(
                0,
                closeout(file(row(best.get(0), "status", "", "done"), row(best.get(1), "status", "", "done")), book)
                        .exitCode());

        assertEquals(before, explained(second));
        assertTrue(before.contains("recovery of this span is under way"), before);
        CommandRun report = CommandRun.of(
                "report",
                second.toString(),
                "--output",
                folder.resolve("page.html").toString());
        assertEquals(0, report.exitCode(), report.err());

        Files.writeString(book, Files.readString(book).replaceFirst("crew 1", "crew 2"));
        CommandRun changed = CommandRun.of("explain", best.get(0), "--run", second.toString());
        assertEquals(ExitCode.INPUT, changed.exitCode());
        assertTrue(changed.complaint().contains("its first rows are not those that the run has read"), changed.err());
    }

    private static String explained(Path run) {
        CommandRun explained = CommandRun.of("explain", best.get(0), "--run", run.toString());
        assertEquals(0, explained.exitCode(), explained.err());
        return explained.out();
    }

    @Test
    void aDayInThePastShowsWhatWasKnownThen() throws IOException {
        Path book = book(row(best.get(0), "status", "", "done"));
        Path then = folder.resolve("then");
        rank(then, "--field-book", book.toString(), "--as-of", "2026-11-01");
        Path now = folder.resolve("now");
        rank(now, "--field-book", book.toString(), "--as-of", "2026-11-02");

        Map<String, Map<String, String>> rows = byId(then);
        rows.values().forEach(row -> assertEquals("", row.remove("work_status")));
        assertEquals(byId(first), rows);
        assertEquals("work_done", byId(now).get(best.get(0)).get("exclusion"));
        assertTrue(explained(then).contains("rank 1 of"));
        assertTrue(explained(now).contains("recovery of this span is done"));
        CommandRun none = CommandRun.of("rank", "--config", config.toString(), "--as-of", "2026-11-01");
        assertEquals(ExitCode.USAGE, none.exitCode());
        assertTrue(none.err().contains("--as-of needs a field book"), none.err());
        assertEquals(
                ExitCode.USAGE,
                CommandRun.of("rank", "--field-book", book.toString(), "--as-of", "11/1/2026")
                        .exitCode());
    }

    @Test
    void compareSaysWhatTheFieldBookChanged() throws IOException {
        String vault = best.get(3).split(":", -1)[1];
        Path book = book(
                row(best.get(0), "status", "", "done"),
                row(best.get(0), "cables_found", "", "1"),
                ",," + vault + ",vault_water,,,yes,,crew 1,2026-11-02,,");
        Path second = folder.resolve("second");
        rank(second, "--field-book", book.toString());

        Path moves = folder.resolve("moves");
        CommandRun compared =
                CommandRun.of("compare", first.toString(), second.toString(), "--output", moves.toString());
        assertEquals(0, compared.exitCode(), compared.err());
        assertTrue(compared.out().contains("Only the second run has 3 entries of the field book:"), compared.out());
        assertTrue(compared.out().contains("(1 done)"), compared.out());
        String table = Files.readString(moves.resolve("moves.csv"));
        assertTrue(table.contains("done (entry 1); cables found 1 (entry 2)"), table);

        CommandRun back = CommandRun.of(
                "compare", second.toString(), first.toString(), "--output", moves.toString(), "--overwrite");
        assertEquals(0, back.exitCode(), back.err());
        assertTrue(Files.readString(moves.resolve("moves.csv")).contains("without done (entry 1)"));
    }

    @Test
    void entriesThatTheDataDoesNotHaveAreFindingsAndTheRunGoesOn() throws IOException {
        Path book =
                book(row(best.get(0), "status", "", "done"), row(best.get(0), "innerduct_out", "innerduct-77", "yes"));
        Files.writeString(
                book,
                Files.readString(book)
                        + "1,3,r,OLD:V1:V2,,status,,,done,,C,2026-11-02,,,2026-11-03\n"
                        + "1,4,r,OLD:V1:V2,,status,,,finished,,C,2026-11-02,,,2026-11-03\n");
        Path second = folder.resolve("second");
        rank(second, "--field-book", book.toString());

        JsonNode counts = JSON.readTree(second.resolve("run.json").toFile()).get("findings_by_code");
        assertEquals(1, counts.get("field_entry_unmatched").asInt());
        assertEquals(1, counts.get("field_entry_contradicts").asInt());
        assertEquals(1, counts.get("field_row_unusable").asInt());
        assertEquals(1, input(second).get("features_rejected").asInt());
        CommandRun more = closeout(file(row(best.get(1), "status", "", "done")), book);
        assertEquals(ExitCode.INPUT, more.exitCode());
        assertTrue(more.err().contains("line 5, value: 'finished' is not a value of status"), more.err());
    }

    /** A process that is killed while it writes leaves the book as it was, or with all of the new rows. */
    @ParameterizedTest
    @ValueSource(strings = {".book.csv.lock", ".book.csv.writing"})
    void aKilledProcessLeavesNoHalfRow(String when) throws IOException {
        Path book = book(row(best.get(0), "status", "", "done"));
        List<String> rows = IntStream.range(0, 60_000)
                .mapToObj(i -> row(best.get(i % best.size()), "contact", "call " + i, "number " + i))
                .toList();
        Path file = file(rows.toArray(String[]::new));
        byte[] before = Files.readAllBytes(book);
        List<String> arguments =
                List.of("closeout", file.toString(), "--run", first.toString(), "--field-book", book.toString());

        try (ForkedRun run = ForkedRun.start(
                List.of(),
                List.of("-Xmx512m"),
                Main.class,
                Files.createDirectories(folder.resolve("log")),
                arguments)) {
            run.await(() -> Files.exists(folder.resolve(when)));
            run.signal("KILL");
            run.exitCode();
        }

        byte[] after = Files.readAllBytes(book);
        FieldBookReader.Read read = new FieldBookReader(ShippedConfig.get().plausible()).read(book);
        assertEquals(List.of(), read.problems());
        assertArrayEquals(before, Arrays.copyOf(after, before.length));
        assertTrue(read.rows() == 1 || read.rows() == 60_001, "rows: " + read.rows());

        CommandRun next = closeout(file(row(best.get(1), "status", "", "done")), book);
        assertEquals(0, next.exitCode(), next.out() + next.err());
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(
                    List.of("book.csv", "closeout.csv", "log"),
                    left.map(path -> path.getFileName().toString()).sorted().toList());
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    @Test
    void severalProcessesThatEnterAtOnceLoseNothing() throws IOException {
        Path book = folder.resolve("book.csv");
        var runs = new ArrayList<ForkedRun>();
        for (int i = 0; i < 3; i++) {
            Path file = Files.writeString(
                    folder.resolve("part" + i + ".csv"), HEADER + row(best.get(i), "status", "", "planned") + "\n");
            runs.add(ForkedRun.start(
                    List.of(),
                    List.of("-Xmx256m"),
                    Main.class,
                    folder,
                    List.of("closeout", file.toString(), "--run", first.toString(), "--field-book", book.toString())));
        }
        for (ForkedRun run : runs) {
            assertEquals(0, run.exitCode(), run.err());
            run.close();
        }

        FieldBookReader.Read read = new FieldBookReader(ShippedConfig.get().plausible()).read(book);
        assertEquals(List.of(), read.problems());
        assertEquals(3, read.book().all().size());
        assertEquals(3, read.lastNumber());
    }

    /** One day of entering is wrong for all rows: one complaint with its remedy; programs still get each line. */
    @Test
    void rowsThatAreAllInTheFutureAreOneComplaint() throws IOException {
        Path file = file(row(best.get(0), "status", "", "done"), row(best.get(1), "status", "", "done"));
        Path book = folder.resolve("none.csv");

        CommandRun run = closeout(file, book, "--entered", "2026-10-01");

        assertEquals(3, run.exitCode());
        assertTrue(
                run.out()
                        .contains("2 rows are dated after the day of entering, 2026-10-01; if the work was entered on a"
                                + " later day, use --entered DAY."),
                run.out());
        assertTrue(run.out().contains("No row was entered."), run.out());
        assertFalse(run.out().contains("line 2"), run.out());
        JsonNode json = JSON.readTree(
                closeout(file, book, "--entered", "2026-10-01", "--json").out());
        assertEquals(2, json.at("/problems/0/line").asInt());
        assertEquals(3, json.at("/problems/1/line").asInt());
        assertFalse(Files.exists(book));
    }
}
