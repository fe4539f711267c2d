package org.spanroom.output.table;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * A table or layer: what its rows are and which columns and shapes they have, whatever format it is written in.
 *
 * @param <R> what a row is
 * @param meaning one sentence for the data dictionary
 * @param hasZ whether shapes keep their third ordinate where they have one
 * @param shape finds a row's shape; {@link Shape#EMPTY} for a row that has none
 */
public record Table<R>(
        String name,
        String meaning,
        GeometryKind geometry,
        boolean hasZ,
        Function<? super R, Shape> shape,
        List<Column<R>> columns) {
    /** Names that GeoPackage files need for themselves. */
    private static final Set<String> RESERVED = Set.of("fid", "geom");

    public Table {
        columns = List.copyOf(columns);
        Set<String> names = new TreeSet<>(RESERVED);
        Set<String> shortNames = new TreeSet<>();
        for (Column<R> column : columns) {
            if (!names.add(column.name()) || !shortNames.add(column.shortName())) {
                throw new IllegalArgumentException(
                        "a name occurs twice or is reserved: " + column.name() + ", " + column.shortName());
            }
        }
    }

    /** Returns a table without shapes. */
    public static <R> Table<R> plain(String name, String meaning, List<Column<R>> columns) {
        return new Table<>(name, meaning, GeometryKind.NONE, false, row -> Shape.EMPTY, columns);
    }

    /** Returns a layer whose shapes lie in the plane. */
    public static <R> Table<R> layer(
            String name,
            String meaning,
            GeometryKind geometry,
            Function<? super R, Shape> shape,
            List<Column<R>> columns) {
        return new Table<>(name, meaning, geometry, false, shape, columns);
    }

    /** Returns this layer with the third ordinates of its shapes. */
    public Table<R> withZ() {
        return new Table<>(name, meaning, geometry, true, shape, columns);
    }

    /** Returns a table of the same name and kind, of other rows. */
    public <S> Table<S> with(Function<? super S, Shape> otherShape, List<Column<S>> otherColumns) {
        return new Table<>(name, meaning, geometry, hasZ, otherShape, otherColumns);
    }

    void putCells(R row, CellSink sink) {
        for (int i = 0; i < columns.size(); i++) {
            columns.get(i).put(row, sink);
        }
    }
}
