package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.model.fieldwork.CloseoutRow;
import org.spanroom.output.columns.FieldworkColumns;
import org.spanroom.output.text.CsvWriter;

/**
 * The close-out file that the demo ships: it fills in blanks of the demo's sheets, and the next ranking follows it. The property that
 * reporting just what was planned changes nothing else is tested here too.
 */
class DemoCloseoutTest {
    private static final Path SHIPPED = Path.of("sample-gis", "closeout.csv");
    private static final Path RESOURCE = Path.of("src/main/resources/org/spanroom/sample/closeout.csv");
    private static final String ENTERED = "2027-02-21";

    @TempDir
    static Path shared;

    private static Path run;
    private static List<CloseoutRow> template;

    @BeforeAll
    static void makeSheets() throws IOException {
        run = DemoRun.csv(shared);
        var arguments = new ArrayList<>(List.of("sheets", run.toString()));
        arguments.addAll(DemoCrew.spans());
        // What the crews report against is what the program plans: set-ups that jobs share count once.
        arguments.addAll(List.of("--program", "src/test/resources/demo-program"));
        arguments.addAll(List.of("--output", shared.resolve("sheets").toString()));
        CommandRun sheets = CommandRun.of(arguments.toArray(String[]::new));
        assertThat(sheets.exitCode()).as(sheets.err()).isZero();
        template = rows(shared.resolve("sheets/closeout.csv"));
        if (Boolean.getBoolean("spanroom.rewrite")) {
            Files.createDirectories(RESOURCE.getParent());
            Files.deleteIfExists(RESOURCE);
            write(new DemoCrew().fill(template), RESOURCE);
            Files.copy(RESOURCE, SHIPPED, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    @Test
    void theShippedFileIsWhatTheCrewsFillIn() throws IOException {
        Path filled = shared.resolve("filled.csv");
        write(new DemoCrew().fill(template), filled);

        assertThat(Files.readString(SHIPPED)).isEqualTo(Files.readString(filled));
        assertThat(Files.readString(RESOURCE)).isEqualTo(Files.readString(filled));
    }

    @Test
    void itIsEnteredWholeAndTheNextRankingFollows() throws IOException {
        Path book = shared.resolve("book/field_book.csv");
        CommandRun closeout = closeout(SHIPPED, book);
        assertThat(closeout.exitCode()).as(closeout.out() + closeout.err()).isZero();

        Path next = rank(book, "next");

        Map<String, CSVRecord> spans = spans(next);
        for (String span : DemoCrew.spans()) {
            String exclusion = spans.get(span).get("exclusion");
            switch (span) {
                case "B149-1:V3-1051:V3-1052" -> assertThat(exclusion).isEqualTo("duct_blocked");
                case "B154-3:V3-1001:V3-1007" -> assertThat(exclusion).isEqualTo("in_work");
                default -> assertThat(exclusion).as(span).isEqualTo("work_done");
            }
        }
    }

    /** Of the reported spans status and contents change; no other span changes its verdict, its room or its money. */
    @Test
    void whatIsReportedAsPlannedChangesTheReportedSpansOnly() throws IOException {
        Path file = shared.resolve("as-planned.csv");
        write(asPlanned(template), file);
        Path book = shared.resolve("planned/field_book.csv");
        CommandRun closeout = closeout(file, book);
        assertThat(closeout.exitCode()).as(closeout.out() + closeout.err()).isZero();

        Map<String, CSVRecord> before = spans(run);
        Map<String, CSVRecord> after = spans(rank(book, "as-planned"));

        assertThat(after.keySet()).isEqualTo(before.keySet());
        assertThat(chances(after)).as("the sum of all chances").isGreaterThan(chances(before));
        for (Map.Entry<String, CSVRecord> span : before.entrySet()) {
            CSVRecord now = after.get(span.getKey());
            if (DemoCrew.spans().contains(span.getKey())) {
                assertThat(now.get("exclusion")).isEqualTo("work_done");
                assertThat(now.get("positions_now")).isEqualTo(span.getValue().get("positions_after"));
            } else {
                for (String column : List.of("exclusion", "positions_now", "positions_after")) {
                    assertThat(now.get(column))
                            .as(span.getKey() + " " + column)
                            .isEqualTo(span.getValue().get(column));
                }
                demandSameMoney(span.getValue(), now);
                demandNotLessLikely(span.getValue(), now);
            }
        }
    }

    /** A vault that is recorded as 8 ft deep is 2.44 m deep on the sheet, not 2.4384 m; pumping it costs 4 cents more. */
    private static void demandSameMoney(CSVRecord before, CSVRecord now) {
        String recorded = before.get("recovery_money");
        if (recorded.isEmpty()) {
            assertThat(now.get("recovery_money")).isEmpty();
        } else {
            double money = Double.parseDouble(recorded);
            assertThat(Double.parseDouble(now.get("recovery_money")))
                    .as(before.get("span_id") + " recovery_money")
                    .isCloseTo(money, within(1e-5 * money));
        }
    }

    /** Like ducts were as recorded, so that this one is taken to be as recorded rather more than before. */
    private static void demandNotLessLikely(CSVRecord before, CSVRecord now) {
        for (String column : List.of("feasible_chance_pct", "knowledge_pct")) {
            if (!before.get(column).isEmpty()) {
                assertThat(Double.parseDouble(now.get(column)))
                        .as(before.get("span_id") + " " + column)
                        .isGreaterThanOrEqualTo(Double.parseDouble(before.get(column)));
            }
        }
    }

    @Test
    void whatIsReportedAsPlannedLeavesRatesEqualAndNarrowsTheirSpread() throws IOException {
        Path file = shared.resolve("as-planned-2.csv");
        write(asPlanned(template), file);
        Path book = shared.resolve("planned-2/field_book.csv");
        assertThat(closeout(file, book).exitCode()).isZero();
        Path learned = shared.resolve("learned");

        CommandRun learn = CommandRun.of(
                "learn", "--run", run.toString(), "--field-book", book.toString(), "--output", learned.toString());

        assertThat(learn.exitCode()).as(learn.err()).isZero();
        int changed = 0;
        for (CSVRecord rate : records(learned.resolve("rate_changes.csv"))) {
            if (rate.get("value_after_unit").isEmpty()) {
                continue;
            }
            changed++;
            assertThat(rate.get("value_after_unit")).as(rate.toString()).isEqualTo(rate.get("value_before_unit"));
            assertThat(Double.parseDouble(rate.get("low_after_unit")))
                    .isGreaterThanOrEqualTo(Double.parseDouble(rate.get("low_before_unit")));
            assertThat(Double.parseDouble(rate.get("high_after_unit")))
                    .isLessThanOrEqualTo(Double.parseDouble(rate.get("high_before_unit")));
        }
        assertThat(changed).isGreaterThan(10);
    }

    private static List<CloseoutRow> asPlanned(List<CloseoutRow> rows) {
        var planned = new ArrayList<CloseoutRow>();
        for (CloseoutRow row : rows) {
            String value = row.fact().equals("status") ? "done" : row.planned();
            if (!value.isEmpty()) {
                planned.add(new CloseoutRow(
                        row.code(),
                        row.span(),
                        row.vault(),
                        row.fact(),
                        row.item(),
                        row.planned(),
                        value,
                        row.unit(),
                        "crew",
                        "2027-02-01",
                        "",
                        ""));
            }
        }
        return planned;
    }

    private static CommandRun closeout(Path file, Path book) throws IOException {
        Files.createDirectories(book.getParent());
        return CommandRun.of(
                "closeout",
                file.toString(),
                "--run",
                run.toString(),
                "--field-book",
                book.toString(),
                "--entered",
                ENTERED);
    }

    private static Path rank(Path book, String name) {
        Path results = shared.resolve(name);
        CommandRun ranked = CommandRun.of(
                "rank",
                "--config",
                "sample-gis/spanroom.yaml",
                "--field-book",
                book.toString(),
                "--output",
                results.toString(),
                "--formats",
                "csv");
        assertThat(ranked.exitCode()).as(ranked.err()).isZero();
        return results;
    }

    private static double chances(Map<String, CSVRecord> spans) {
        return spans.values().stream()
                .filter(row -> !DemoCrew.spans().contains(row.get("span_id")))
                .map(row -> row.get("feasible_chance_pct"))
                .filter(chance -> !chance.isEmpty())
                .mapToDouble(Double::parseDouble)
                .sum();
    }

    private static Map<String, CSVRecord> spans(Path results) throws IOException {
        Map<String, CSVRecord> spans = new HashMap<>();
        records(results.resolve("spans.csv")).forEach(row -> spans.put(row.get("span_id"), row));
        return spans;
    }

    private static List<CSVRecord> records(Path file) throws IOException {
        try (CSVParser parser = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(Files.newBufferedReader(file))) {
            return parser.getRecords();
        }
    }

    private static List<CloseoutRow> rows(Path file) throws IOException {
        return records(file).stream()
                .map(row -> new CloseoutRow(
                        row.get("code"),
                        row.get("span"),
                        row.get("vault"),
                        row.get("fact"),
                        row.get("item"),
                        row.get("planned"),
                        row.get("value"),
                        row.get("unit"),
                        row.get("by"),
                        row.get("date"),
                        row.get("supersedes"),
                        row.get("note")))
                .toList();
    }

    private static void write(List<CloseoutRow> rows, Path file) throws IOException {
        try (var csv = new CsvWriter<>(file, FieldworkColumns.CLOSEOUT)) {
            rows.forEach(csv::write);
        }
    }
}
