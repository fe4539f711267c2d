package org.spanroom.output.table;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A column of a table: what it is called, what it means, and how a row's value is found.
 *
 * <p>An empty cell is null, an empty {@code Optional}, a blank text, or a number that is not finite: no format can distinguish them
 * apart, so they are one.
 *
 * @param <R> what a row is
 * @param name name in GeoJSON, GeoPackage and CSV, with the unit as its last word
 * @param shortName name in Shapefiles, of at most 10 characters
 * @param decimals digits after the point in every format; 0 unless the type is {@link Type#REAL}
 * @param meaning one sentence for the data dictionary
 * @param cell finds a row's value: text, a whole number, a number, a Boolean, an optional of these, or null
 * @param range what a cell that is not empty may say
 */
public record Column<R>(
        String name,
        String shortName,
        Type type,
        int decimals,
        String meaning,
        Function<? super R, ?> cell,
        CellRange range) {
    private static final Pattern NAME = Pattern.compile("[a-z][a-z0-9_]{0,62}");
    private static final Pattern SHORT_NAME = Pattern.compile("[a-z][a-z0-9_]{0,9}");
    private static final int MOST_DECIMALS = 9;

    /** What the values of a column are. */
    public enum Type {
        TEXT,
        INTEGER,
        REAL,
        FLAG
    }

    public Column {
        if (!NAME.matcher(name).matches()) {
            throw new IllegalArgumentException("name must match " + NAME + ", was " + name);
        }
        if (!SHORT_NAME.matcher(shortName).matches()) {
            throw new IllegalArgumentException("shortName of " + name + " must match " + SHORT_NAME + ": " + shortName);
        }
        if (type == Type.REAL ? decimals < 1 || decimals > MOST_DECIMALS : decimals != 0) {
            throw new IllegalArgumentException("decimals of " + name + " do not suit " + type + ": " + decimals);
        }
        boolean isNumber = type == Type.REAL || type == Type.INTEGER;
        if (range instanceof CellRange.Numbers ? !isNumber : isNumber && range != CellRange.UNDECLARED) {
            throw new IllegalArgumentException("range of " + name + " does not suit " + type + ": " + range);
        }
    }

    public static <R> Column<R> text(String name, String shortName, String meaning, Function<? super R, ?> cell) {
        return new Column<>(name, shortName, Type.TEXT, 0, meaning, cell, CellRange.UNDECLARED);
    }

    /** A text of which not every one may stand there. */
    public static <R> Column<R> text(
            String name, String shortName, CellRange range, String meaning, Function<? super R, ?> cell) {
        return new Column<>(name, shortName, Type.TEXT, 0, meaning, cell, range);
    }

    public static <R> Column<R> integer(String name, String shortName, String meaning, Function<? super R, ?> cell) {
        return new Column<>(name, shortName, Type.INTEGER, 0, meaning, cell, CellRange.UNDECLARED);
    }

    /** A whole number that has a range. */
    public static <R> Column<R> integer(
            String name, String shortName, CellRange range, String meaning, Function<? super R, ?> cell) {
        return new Column<>(name, shortName, Type.INTEGER, 0, meaning, cell, range);
    }

    public static <R> Column<R> real(
            String name, String shortName, int decimals, String meaning, Function<? super R, ?> cell) {
        return new Column<>(name, shortName, Type.REAL, decimals, meaning, cell, CellRange.UNDECLARED);
    }

    /** A number that has a range. */
    public static <R> Column<R> real(
            String name, String shortName, int decimals, CellRange range, String meaning, Function<? super R, ?> cell) {
        return new Column<>(name, shortName, Type.REAL, decimals, meaning, cell, range);
    }

    public static <R> Column<R> flag(String name, String shortName, String meaning, Function<? super R, ?> cell) {
        return new Column<>(name, shortName, Type.FLAG, 0, meaning, cell, CellRange.UNDECLARED);
    }

    /** Returns the same column for rows of a narrower kind. */
    public <S extends R> Column<S> narrowed() {
        return new Column<>(name, shortName, type, decimals, meaning, cell, range);
    }

    /** Returns the same column for rows of another kind, with its cells found there. */
    public <S> Column<S> with(Function<? super S, ?> otherCell) {
        return new Column<>(name, shortName, type, decimals, meaning, otherCell, range);
    }

    /** Returns a row's cell as it is written: String, Long, Double or Boolean; nothing where it is empty. */
    public Optional<Object> value(R row) {
        var held = new HeldCell();
        put(row, held);
        return held.value();
    }

    /** Hands a row's cell to a writer, made harmless and rounded. */
    void put(R row, CellSink sink) {
        Object value = present(cell.apply(row));
        if (value == null) {
            sink.empty();
            return;
        }
        switch (type) {
            case TEXT -> putText(Text.clean(value.toString()), sink);
            case INTEGER -> sink.integer(((Number) value).longValue());
            case REAL -> putReal(((Number) value).doubleValue(), sink);
            case FLAG -> sink.flag((Boolean) value);
            default -> throw new IllegalStateException(type.toString());
        }
    }

    private static void putText(String text, CellSink sink) {
        if (text.isBlank()) {
            sink.empty();
        } else {
            sink.text(text);
        }
    }

    private void putReal(double value, CellSink sink) {
        if (Double.isFinite(value)) {
            sink.real(value, decimals);
        } else {
            sink.empty();
        }
    }

    private static @Nullable Object present(@Nullable Object value) {
        if (value instanceof OptionalDouble real) {
            return real.isPresent() ? real.getAsDouble() : null;
        }
        if (value instanceof OptionalInt integer) {
            return integer.isPresent() ? integer.getAsInt() : null;
        }
        if (value instanceof Optional<?> optional) {
            return optional.orElse(null);
        }
        return value;
    }
}
