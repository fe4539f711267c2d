package org.spanroom.output;

import static java.util.Map.entry;
import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;
import org.spanroom.output.table.UsColumns;
import org.spanroom.rank.Ranking;

/** Every table of results with columns in US units. */
class UsColumnsTest {
    private static final SpanLayout LAYOUT =
            new SpanLayout(Ranking.criteria(), true, List.of("depth_m", "street"), ColumnGroup.all());

    /** How much of the metric unit one US unit is: exact definitions, NIST SP 811 Appendix B. */
    private record Unit(String word, String exact) {}

    /** By the last words of a column's name, the longest first. */
    private static final List<Map.Entry<String, Unit>> UNITS = List.of(
            entry("_n_per_m", new Unit("_lbf_per_ft", "14.593902937206364829396325459317585")),
            entry("_mm2", new Unit("_in2", "645.16")),
            entry("_m3", new Unit("_ft3", "0.028316846592")),
            entry("_mm", new Unit("_in", "25.4")),
            entry("_km", new Unit("_mi", "1.609344")),
            entry("_kg", new Unit("_lb", "0.45359237")),
            entry("_m", new Unit("_ft", "0.3048")),
            entry("_n", new Unit("_lbf", "4.4482216152605")),
            entry("_l", new Unit("_gal", "3.785411784")));

    /** Last words of the names of numbers that both systems share. */
    private static final Set<String> SHARED =
            Set.of("pct", "ratio", "points", "hours", "minutes", "deg", "money", "value", "cable");

    static Stream<Table<?>> tables() {
        return ResultTables.ALL.stream().map(entry -> entry.table(LAYOUT));
    }

    @ParameterizedTest
    @MethodSource("tables")
    void metricTablesStayAsTheyAre(Table<?> table) {
        assertThat(UsColumns.in(table, UnitSystem.METRIC)).isSameAs(table);
    }

    /** No unit is missed: the last word of every number's name is a unit with a twin, or one that both systems share. */
    @ParameterizedTest
    @MethodSource("tables")
    void everyMetricColumnHasItsTwinBesideIt(Table<?> table) {
        List<? extends Column<?>> columns = UsColumns.in(table, UnitSystem.US).columns();
        List<String> names = columns.stream().map(Column::name).toList();
        var metric = new ArrayList<String>();
        for (Column<?> column : table.columns()) {
            String name = column.name();
            if (isOwn(name) || column.type() != Column.Type.REAL) {
                assertThat(isOwn(name) || unit(name) == null)
                        .as("%s is no number, but has a unit", name)
                        .isTrue();
                continue;
            }
            if (unit(name) == null && !name.endsWith("_unit")) {
                assertThat(SHARED).as(name).contains(name.substring(name.lastIndexOf('_') + 1));
                continue;
            }
            metric.add(name);
            assertThat(names.get(names.indexOf(name) + 1)).isEqualTo(twin(name));
        }

        List<String> units = table.columns().stream()
                .filter(column -> column.type() == Column.Type.TEXT)
                .map(Column::name)
                .filter(name -> name.endsWith("_unit"))
                .filter(name ->
                        metric.stream().anyMatch(value -> value.startsWith(name.substring(0, name.length() - 4))))
                .toList();
        assertThat(names).containsAll(units.stream().map(UsColumnsTest::twin).toList());
        assertThat(names).hasSize(table.columns().size() + metric.size() + units.size());
        assertThat(names)
                .containsSubsequence(table.columns().stream().map(Column::name).toList());
        assertThat(columns.stream().map(Column::shortName))
                .doesNotHaveDuplicates()
                .allMatch(name -> name.length() <= 10);
    }

    /** The real names, types and decimals, with invented cells: empty, not finite, zero, below zero, large. */
    @ParameterizedTest
    @MethodSource("tables")
    void aTwinIsTheWrittenMetricValueConverted(Table<?> real) {
        var random = new Random(real.name().hashCode());
        List<OptionalDouble> cells = new ArrayList<>(List.of(
                OptionalDouble.empty(), OptionalDouble.of(Double.NaN), OptionalDouble.of(0), OptionalDouble.of(-0.05)));
        for (int i = 0; i < 200; i++) {
            cells.add(OptionalDouble.of(random.nextGaussian() * Math.pow(10, random.nextInt(8) - 2)));
        }
        Table<OptionalDouble> table = Table.plain(
                "invented",
                "",
                real.columns().stream().map(UsColumnsTest::invented).toList());
        Table<OptionalDouble> us = UsColumns.in(table, UnitSystem.US);

        for (int i = 0; i + 1 < us.columns().size(); i++) {
            Column<OptionalDouble> metric = us.columns().get(i);
            Column<OptionalDouble> twin = us.columns().get(i + 1);
            if (metric.type() != Column.Type.REAL || !twin.name().equals(twin(metric.name()))) {
                continue;
            }
            for (OptionalDouble cell : cells) {
                Object written = metric.value(cell).orElse(null);
                Object shown = twin.value(cell).orElse(null);
                assertThat(shown).as(twin.name()).isEqualTo(written == null ? null : converted(metric, twin, written));
            }
        }
    }

    @Test
    void moneyForEachMeterIsConvertedTheOtherWay() {
        Table<Integer> table = Table.plain(
                "costs",
                "",
                List.of(
                        Column.real("recovery_money_per_cable_m", "rmon_pcm", 2, "", row -> 10.0),
                        Column.real("money_per_kg", "mon_kg", 2, "", row -> 1.0),
                        Column.real("trench_avoided_m", "trench_m", 1, "", row -> 10.0),
                        Column.real("neighbor_n_per_m", "neigh_npm", 3, "", row -> 14.594)));

        Table<Integer> us = UsColumns.in(table, UnitSystem.US);

        // 10 a meter are 3.048 a foot; 1 a kilogram is 0.45 a pound.
        assertThat(us.columns().stream()
                        .map(column -> column.name() + " " + column.value(0).orElse("")))
                .containsExactly(
                        "recovery_money_per_cable_m 10.0",
                        "recovery_money_per_cable_ft 3.05",
                        "money_per_kg 1.0",
                        "money_per_lb 0.45",
                        "trench_avoided_m 10.0",
                        "trench_avoided_ft 32.8",
                        "neighbor_n_per_m 14.594",
                        "neighbor_lbf_per_ft 1.0");
    }

    @Test
    void shortNamesThatWouldBeAlikeAreNumbered() {
        List<Column<Integer>> columns = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            columns.add(Column.real("abcdefgh" + i + "_m", "abcdefgh" + i, 1, "", row -> 1.0));
        }

        assertThat(UsColumns.in(Table.plain("many", "", columns), UnitSystem.US).columns())
                .hasSize(60)
                .extracting(Column::shortName)
                .doesNotHaveDuplicates();
    }

    /** A limit's own unit, row by row: the twins of found and allowed follow it. */
    @Test
    void valuesInTheUnitOfAnotherColumnFollowThat() {
        Table<String> table = Table.plain(
                "limits",
                "",
                List.of(
                        Column.real("pull_failing_found_in_unit", "found", 2, "", row -> 4448.22),
                        Column.text("pull_failing_unit", "unit", "", row -> row)));
        Table<String> us = UsColumns.in(table, UnitSystem.US);

        assertThat(us.columns())
                .extracting(Column::name)
                .containsExactly(
                        "pull_failing_found_in_unit",
                        "pull_failing_found_in_us_unit",
                        "pull_failing_unit",
                        "pull_failing_us_unit");
        assertThat(cells(us, "N")).containsExactly(4448.22, 1000.0, "N", "lbf");
        assertThat(cells(us, "m")).containsExactly(4448.22, 14593.9, "m", "ft");
        assertThat(cells(us, "degrees")).containsExactly(4448.22, 4448.22, "degrees", "degrees");
        assertThat(cells(us, "")).containsExactly(4448.22, 4448.22, "", "");
    }

    /** A row of a real table: 222.0704 m in the sample are 728.577 ft. */
    @Test
    void aRealRowHasBoth() {
        RankedSpan row = SampleResults.ranked("S-1", 1);
        Table<RankedSpan> us = UsColumns.in(ResultTables.SPANS.table(LAYOUT), UnitSystem.US);
        double lengthM = (double) value(us, "length_m", row);

        assertThat((double) value(us, "length_ft", row)).isEqualTo(Math.round(lengthM / 0.3048 * 1000) / 1000.0);
        assertThat(us.geometry()).isEqualTo(ResultTables.SPANS.table(LAYOUT).geometry());
        assertThat(us.hasZ()).isTrue();
    }

    /** The list that the coordinator of columns looks at: all last words in use, of every table. */
    @Test
    void allUnitsInUseAreKnown() {
        var words = new TreeSet<String>();
        tables().flatMap(table -> table.columns().stream())
                .filter(column -> column.type() == Column.Type.REAL && !isOwn(column.name()))
                .map(column -> unit(column.name()))
                .filter(unit -> unit != null)
                .forEach(unit -> words.add(unit.word()));

        assertThat(words).contains("_ft", "_in", "_lbf", "_lb", "_ft3", "_in2", "_gal", "_lbf_per_ft");
    }

    private static Object value(Table<RankedSpan> table, String name, RankedSpan row) {
        return table.columns().stream()
                .filter(column -> column.name().equals(name))
                .findFirst()
                .orElseThrow()
                .value(row)
                .orElseThrow();
    }

    private static List<Object> cells(Table<String> table, String row) {
        return table.columns().stream()
                .map(column -> column.value(row).orElse(""))
                .toList();
    }

    private static Column<OptionalDouble> invented(Column<?> real) {
        return switch (real.type()) {
            case REAL -> real.with(cell -> cell);
            case TEXT -> real.with(cell -> real.name().endsWith("_unit") ? "N" : "text");
            case INTEGER -> real.with(cell -> 1);
            case FLAG -> real.with(cell -> true);
        };
    }

    private static double converted(Column<?> metric, Column<?> twin, Object written) {
        String name = metric.name();
        var value = new BigDecimal(written.toString());
        var exact = new BigDecimal(
                name.endsWith("_unit") ? "4.4482216152605" : unit(name).exact());
        BigDecimal shown =
                name.contains("money_per") ? value.multiply(exact) : value.divide(exact, 30, RoundingMode.HALF_UP);
        return shown.setScale(twin.decimals(), RoundingMode.HALF_UP).doubleValue();
    }

    private static boolean isOwn(String name) {
        return name.startsWith("src_");
    }

    private static Unit unit(String name) {
        return UNITS.stream()
                .filter(known -> name.endsWith(known.getKey()))
                .findFirst()
                .map(Map.Entry::getValue)
                .orElse(null);
    }

    private static String twin(String name) {
        if (name.endsWith("_unit")) {
            return name.substring(0, name.length() - "unit".length()) + "us_unit";
        }
        return UNITS.stream()
                .filter(known -> name.endsWith(known.getKey()))
                .findFirst()
                .map(known -> name.substring(0, name.length() - known.getKey().length())
                        + known.getValue().word())
                .orElse("");
    }
}
