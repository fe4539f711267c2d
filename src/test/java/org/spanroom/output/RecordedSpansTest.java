package org.spanroom.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.finding.InputException;
import org.spanroom.model.ColumnGroup;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.output.columns.SpanRules;
import org.spanroom.output.columns.StandingColumns;
import org.spanroom.output.table.CellRange;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.RowRule;
import org.spanroom.rank.Ranking;

/** Checks that no cell of a recorded span can say what the program never writes. */
class RecordedSpansTest {
    /** Names, and what an owner recorded or a config calls things: any text may stand there. */
    private static final Set<String> FREE = Set.of(
            "span_id",
            "duct",
            "duct_bank",
            "routes",
            "vault_a",
            "vault_b",
            "owner",
            "surface",
            "pull_better_vault",
            "zone_kinds",
            "recovery_needs",
            "exclusion_text",
            "pull_choice",
            "proposal_reason",
            "contradiction",
            "zones",
            "zones_to_come",
            "permits_avoided",
            "section_id",
            "position_quality",
            "rejected",
            "field_entries",
            "joint_owners",
            "hole_a",
            "hole_b",
            "catalog_rows");

    private static final String LINE = "LINESTRING (1.5 2,3 4)";

    @TempDir
    Path folder;

    private static List<Column<?>> columns() {
        var layout = new SpanLayout(Ranking.criteria(), false, List.of(), ColumnGroup.all());
        var all = new ArrayList<Column<?>>(SpanColumns.all(layout).columns());
        all.add(StandingColumns.REASONS);
        all.add(SpanColumns.FEASIBLE_DRAWS);
        return all;
    }

    /** A ranked span that keeps every rule: numbers are 0 where they may be, texts that have a range are empty. */
    private static Map<String, String> good() {
        var row = new LinkedHashMap<String, String>();
        for (Column<?> column : columns()) {
            row.put(
                    column.name(),
                    switch (column.type()) {
                        case TEXT -> column.range() == CellRange.UNDECLARED ? "any" : "";
                        case FLAG -> "false";
                        case INTEGER -> "0";
                        case REAL -> "0.00";
                    });
        }
        row.put("rank", "1");
        row.put("line_wkt", LINE);
        return row;
    }

    @Test
    void aSpanAsItIsWrittenIsRead() {
        assertThatCode(() -> read(good())).doesNotThrowAnyException();
    }

    static Stream<String> everyColumnSaysWhatMayStandThere() {
        return columns().stream().map(Column::name);
    }

    @ParameterizedTest
    @MethodSource
    void everyColumnSaysWhatMayStandThere(String name) {
        Column<?> column = column(name);
        boolean declared = column.range() != CellRange.UNDECLARED;
        assertThat(declared || column.type() == Column.Type.FLAG || FREE.contains(name))
                .as("%s has a range, or its texts are free", name)
                .isTrue();
        assertThat(declared && FREE.contains(name))
                .as("%s is free and has a range", name)
                .isFalse();
    }

    static Stream<Arguments> aValueOutsideIsRefused() {
        return columns().stream().flatMap(column -> outside(column).map(value -> Arguments.of(column.name(), value)));
    }

    private static Stream<String> outside(Column<?> column) {
        return switch (column.type()) {
            case TEXT -> FREE.contains(column.name()) ? Stream.empty() : Stream.of("?", ";", "2027-02-29");
            case FLAG -> Stream.of("maybe", "1", "TRUE");
            case INTEGER, REAL ->
                Stream.concat(
                        Stream.of("NaN", "Infinity", "-Infinity", "1e400", "1E400", "x", " 1", "0x1p3", "1d", "-", "."),
                        beyond(column));
        };
    }

    private static Stream<String> beyond(Column<?> column) {
        var limits = (CellRange.Numbers) column.range();
        var values = new ArrayList<String>();
        if (column.type() == Column.Type.INTEGER) {
            values.addAll(List.of("0.5", "1.0", "1E2"));
            values.add(Long.toString((long) limits.lowest() - 1));
            values.add(Long.toString((long) limits.highest() + 1));
        } else {
            if (limits.lowest() == 0) {
                values.add("-0.01");
                values.add("-5");
            }
            if (limits.highest() < Double.MAX_VALUE) {
                values.add(Double.toString(Math.nextUp(limits.highest())));
            }
        }
        return values.stream();
    }

    @ParameterizedTest
    @MethodSource
    void aValueOutsideIsRefused(String column, String value) {
        assertRefused(column, value);
    }

    @ParameterizedTest
    @CsvSource({
        "line_wkt, LINESTRING (1.5 2)",
        "line_wkt, 'LINESTRING (1.5 2,3 91)'",
        "line_wkt, 'LINESTRING (1.5 2,361 4)'",
        "line_wkt, 'LINESTRING (1.5 2,NaN 4)'",
        "line_wkt, 'LINESTRING (1.5 2,3 x)'",
        "line_wkt, 'LINESTRING (1.5 2,3)'",
        "line_wkt, 'LINESTRING Z (1.5 2 0,3 4)'",
        "line_wkt, 'LINESTRING Z (1.5 2 0,3 4 NaN)'",
        "line_wkt, 'LINESTRING (1.5 2,)'",
        "line_wkt, 'LINESTRING ()'",
        "line_wkt, 'LINESTRING (1.5 2,3 4'",
        "line_wkt, 'POINT (1.5 2)'",
        "line_wkt, x",
        "embargo_until, 2027-2-28",
        "embargo_until, 2027-13-01",
        "cut_banned_until, for good",
        "zone_dates, event 2027-02-29/2027-03-01",
        "zone_dates, 2027-02-28/2027-03-01",
        "zone_dates, event 2027-02-28",
        "feasible_draws, 11112222333344445",
        "feasible_draws, g",
        "assumed, flooded;",
        "pull_outcome, c",
        "knowledge_pct, 100.01",
        "ease_water_places, 4",
    })
    void aTextThatIsNoneIsRefused(String column, String value) {
        assertRefused(column, value);
    }

    @ParameterizedTest
    @CsvSource({
        "line_wkt, 'LINESTRING (-180.5 -90,3 90)'",
        "line_wkt, 'LINESTRING Z (1.5 2 12.25,3 4 -1)'",
        "line_wkt, ''",
        "embargo_until, 2028-02-29",
        "cut_banned_until, for_good",
        "cut_banned_until, 2028-02-29",
        "zone_dates, event ../2028-02-29;cut ban 2025-01-11/..",
        "feasible_draws, fffffffffffffffe",
        "assumed, inside_diameter;flooded",
        "pull_outcome, neither",
        "knowledge_pct, 100.00",
        "pull_bad_n, 1.7E18",
        "co2e_ice_kg, -1047.5",
        "lead_avoided_days, -5",
        "bank_place, -4",
        "fill_now_pct, 100.24",
        "length_m, 123456789012.345",
        "cautions, water;night_only",
    })
    void aValueThatTheProgramWritesIsRead(String column, String value) {
        var row = good();
        row.put(column, value);

        assertThatCode(() -> read(row)).doesNotThrowAnyException();
    }

    static Stream<Arguments> cellsThatDoNotGoTogetherAreRefused() {
        return SpanRules.ALL.stream().flatMap(RecordedSpansTest::broken);
    }

    /** Each rule is broken at each column that it can be broken at. */
    private static Stream<Arguments> broken(RowRule rule) {
        var cases = new ArrayList<Arguments>();
        List<String> names = rule.columns();
        switch (rule.kind()) {
            case FILLED -> names.forEach(name -> cases.add(Arguments.of(name, Map.of(name, ""))));
            case TOGETHER ->
                names.forEach(name -> cases.add(Arguments.of(
                        name.equals(names.get(0)) ? names.get(1) : name,
                        name.equals("exclusion")
                                ? Map.of(name, "pull_fails", "rank", "")
                                : Map.of(name, good().get(name).isEmpty() ? "pull_fails" : ""))));
            case EITHER -> {
                cases.add(Arguments.of(names.get(0), Map.of(names.get(0), "")));
                cases.add(Arguments.of(names.get(0), Map.of(names.get(1), "pull_fails", "reasons", "pull_fails")));
            }
            case ASCENDING -> {
                for (int place = 0; place + 1 < names.size(); place++) {
                    cases.add(Arguments.of(names.get(place), Map.of(names.get(place), "9")));
                }
            }
            case PARTS -> names.subList(0, 2).forEach(name -> cases.add(Arguments.of(names.get(0), Map.of(name, "9"))));
            case PRICED_PARTS ->
                cases.add(Arguments.of(
                        names.get(2),
                        Map.of(
                                names.get(0),
                                "1",
                                names.get(2),
                                "9",
                                "site_hours",
                                "1",
                                "recovery_money",
                                "8.7",
                                "build_money",
                                "8.7")));
            case DIFFERENCE -> names.forEach(name -> cases.add(Arguments.of(names.get(0), Map.of(name, "7"))));
        }
        return cases.stream();
    }

    @ParameterizedTest
    @MethodSource
    void cellsThatDoNotGoTogetherAreRefused(String column, Map<String, String> cells) {
        var row = good();
        row.putAll(cells);

        assertThatThrownBy(() -> read(row))
                .isInstanceOf(InputException.class)
                .hasMessageContaining(RecordedSpans.FILE)
                .hasMessageContaining("span '" + row.get("span_id") + "': " + column + " is ")
                .hasMessageContaining("; expected ");
    }

    @Test
    void theColumnsOfRulesAreThere() {
        List<String> names = columns().stream().map(Column::name).toList();

        assertThat(SpanRules.ALL).allSatisfy(rule -> assertThat(names).containsAll(rule.columns()));
    }

    /** An excluded span of unknown contents has neither effort nor room. */
    @Test
    void aSpanWithoutEffortIsRead() {
        var row = good();
        SpanRules.ALL.stream()
                .filter(rule -> rule.kind() == RowRule.Kind.TOGETHER)
                .forEach(rule -> rule.columns().forEach(name -> row.put(name, "")));
        row.put("rank", "");
        row.put("exclusion", "contents_unknown");
        row.put("reasons", "contents_unknown;no_cable_hold");

        assertThatCode(() -> read(row)).doesNotThrowAnyException();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"0", "-0.00", "0.1", "123.456", "99999999999999.9", "1E16", "1.7976931348623157E308", "0.3"})
    void numbersAreReadAsJavaReadsThem(String cell) {
        assertThat(Cells.number(cell)).isEqualTo(Double.parseDouble(cell));
    }

    @Test
    void theMessageIsOneLineThatNamesEverything() {
        var row = good();
        row.put("site_hours", "-5");

        assertThatThrownBy(() -> read(row))
                .hasMessage(folder.resolve(RecordedSpans.FILE)
                        + ": span 'any': site_hours is '-5'; expected a number, 0 or larger. "
                        + "Make the run again with this version.");
    }

    private static Column<?> column(String name) {
        return columns().stream()
                .filter(column -> column.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private void assertRefused(String column, String value) {
        var row = good();
        row.put(column, value);

        assertThatThrownBy(() -> read(row))
                .isInstanceOf(InputException.class)
                .hasMessageContaining(RecordedSpans.FILE)
                .hasMessageContaining("span 'any': " + column + " is '" + value + "'; expected ")
                .hasMessageContaining("Make the run again")
                .hasMessageNotContaining("\n");
    }

    private void read(Map<String, String> row) {
        try {
            Files.writeString(folder.resolve("run.json"), """
                    {"version": "1", "started_at": "2027-01-15T00:00:00Z", "spans": 1, "run_spans": 1, "run_spans_format": %d,
                     "lengths_m": {"routes": 1, "spans": 1, "remainders": 0},
                     "inputs": [{"role": "routes", "file": "r.geojson", "sha256": "0",
                                 "features_read": 1, "features_used": 1, "features_rejected": 0}]}
                    """.formatted(RecordedSpans.FORMAT));
            var packed = new GZIPOutputStream(Files.newOutputStream(folder.resolve(RecordedSpans.FILE)));
            try (Writer file = new OutputStreamWriter(packed, StandardCharsets.UTF_8)) {
                file.write(String.join(",", row.keySet()) + "\r\n");
                file.write(String.join(
                                ",",
                                row.values().stream()
                                        .map(cell -> cell.contains(",") ? '"' + cell + '"' : cell)
                                        .toList())
                        + "\r\n");
            }
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
        RecordedSpans spans = RecordedSpans.open(RecordedRun.read(folder), columns());
        assertThat(spans.read(columns(), true, any -> {})).isEqualTo(1);
    }
}
