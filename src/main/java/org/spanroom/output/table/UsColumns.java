package org.spanroom.output.table;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.UsUnit;

/**
 * Adds to a table, behind each column of a metric unit, a twin in the US customary one. The unit is the last word of a column's name; a
 * twin is calculated from the metric value as that is written, so the two columns of a file agree.
 *
 * <p>A column named {@code X_in_unit} has its unit in the table's text column whose name has the same beginning and ends in {@code _unit}: its
 * twin is {@code X_in_us_unit}, and that column's {@code _us_unit}. The owner's own fields, {@code src_}, have no unit that is known.
 */
public final class UsColumns {
    private static final String OWN_FIELD = "src_";
    private static final String UNIT = "_unit";
    private static final String IN_UNIT = "_in_unit";
    private static final int LONGEST_SHORT_NAME = 10;
    private static final int MOST_DECIMALS = 9;

    /** The longest word first: a name that ends in kg_per_m ends in m too. */
    private static final List<UsUnit> BY_WORD = Stream.of(UsUnit.values())
            .sorted(Comparator.comparingInt((UsUnit unit) -> -unit.metricWord().length()))
            .toList();

    private UsColumns() {}

    /** Returns the table as it is written for such units. */
    public static <R> Table<R> in(Table<R> table, UnitSystem units) {
        return units.isUs() ? added(table) : table;
    }

    private static <R> Table<R> added(Table<R> table) {
        Set<String> taken = new HashSet<>();
        table.columns().forEach(column -> taken.add(column.shortName()));
        List<Column<R>> all = new ArrayList<>();
        for (Column<R> column : table.columns()) {
            all.add(column);
            findTwin(column, table, taken).ifPresent(twin -> {
                taken.add(twin.shortName());
                all.add(twin);
            });
        }
        return table.with(table.shape(), all);
    }

    private static <R> Optional<Column<R>> findTwin(Column<R> column, Table<R> table, Set<String> taken) {
        if (column.name().startsWith(OWN_FIELD)) {
            return Optional.empty();
        }
        if (column.type() == Column.Type.TEXT && isUnit(column, table)) {
            return Optional.of(unitName(column, taken));
        }
        if (column.type() != Column.Type.REAL) {
            return Optional.empty();
        }
        if (column.name().endsWith(IN_UNIT)) {
            return findUnit(column, table).map(unit -> inUnit(column, unit, taken));
        }
        return BY_WORD.stream()
                .filter(unit -> column.name().endsWith("_" + unit.metricWord()))
                .findFirst()
                .map(unit -> inOneUnit(column, unit, taken));
    }

    private static <R> Column<R> inOneUnit(Column<R> column, UsUnit unit, Set<String> taken) {
        String stem = stem(column.name(), unit.metricWord());
        boolean inverse = isPer(stem);
        DoubleUnaryOperator conversion = inverse ? unit::perUnit : unit::of;
        int decimals = inverse ? column.decimals() : unit.decimals(column.decimals());
        return Column.real(
                stem + "_" + unit.word(),
                shortName(column.shortName(), unit.metricWord(), shortWord(unit), taken),
                Math.max(1, Math.min(MOST_DECIMALS, decimals)),
                "The same in " + unit.symbol().replace("/", " per ") + (inverse ? " instead of " + unit.metric() : "")
                        + ".",
                row -> converted(column.value(row), conversion));
    }

    /** Returns whether a name that goes on with a unit is that of something for each of it, as money_per_cable. */
    private static boolean isPer(String stem) {
        return stem.endsWith("_per") || stem.contains("_per_");
    }

    private static <R> Column<R> inUnit(Column<R> column, Column<R> unit, Set<String> taken) {
        return Column.real(
                stem(column.name(), "unit") + "_us_unit",
                shortName(column.shortName(), "", "us", taken),
                column.decimals(),
                "The same in the unit of " + usName(unit) + ".",
                row -> {
                    String metric = unit.value(row).map(Object::toString).orElse("");
                    return converted(column.value(row), value -> UnitSystem.US.value(value, metric));
                });
    }

    private static <R> Column<R> unitName(Column<R> column, Set<String> taken) {
        return Column.text(
                usName(column),
                shortName(column.shortName(), "", "us", taken),
                "Unit of the columns that end in _us_unit: lbf, lbf/ft, ft or degrees.",
                row -> column.value(row).map(unit -> UnitSystem.US.unit(unit.toString())));
    }

    private static String usName(Column<?> unit) {
        return stem(unit.name(), "unit") + "_us_unit";
    }

    private static boolean isUnit(Column<?> column, Table<?> table) {
        return column.name().endsWith(UNIT)
                && table.columns().stream()
                        .anyMatch(other -> other.name().endsWith(IN_UNIT)
                                && findUnit(other, table).filter(column::equals).isPresent());
    }

    /** Finds the column of a value's unit: of those whose names have the same beginning, the one that shares the longest. */
    private static <R> Optional<Column<R>> findUnit(Column<?> value, Table<R> table) {
        return table.columns().stream()
                .filter(other ->
                        other.type() == Column.Type.TEXT && other.name().endsWith(UNIT))
                .filter(other -> value.name().startsWith(stem(other.name(), "unit") + "_"))
                .max(Comparator.comparingInt(other -> other.name().length()));
    }

    private static Optional<Double> converted(Optional<Object> metric, DoubleUnaryOperator conversion) {
        return metric.map(value -> conversion.applyAsDouble(((Number) value).doubleValue()));
    }

    private static String stem(String name, String lastWord) {
        return name.substring(0, name.length() - lastWord.length() - 1);
    }

    private static String shortWord(UsUnit unit) {
        return unit.word().replace("_per_", "");
    }

    /** Returns a name for Shapefiles that is not taken, made of the metric one's, without its unit where that has it. */
    private static String shortName(String metric, String metricWord, String word, Set<String> taken) {
        String stem = metric.endsWith("_" + metricWord) ? stem(metric, metricWord) : metric;
        for (int number = 1; ; number++) {
            String end = (number == 1 ? "" : Integer.toString(number)) + "_" + word;
            String name = stem.substring(0, Math.min(stem.length(), LONGEST_SHORT_NAME - end.length())) + end;
            if (!taken.contains(name)) {
                return name;
            }
        }
    }
}
