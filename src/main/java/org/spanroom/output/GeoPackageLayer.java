package org.spanroom.output;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Types;
import java.util.Collections;
import java.util.stream.Collectors;

/**
 * One layer of a GeoPackage on its way into the database.
 *
 * <p>The spatial index is built when the layer closes; until then 24 bytes a row are held for it.
 */
final class GeoPackageLayer<R> implements RowWriter<R> {
    private final GeoPackageWriter owner;
    private final Connection connection;
    private final Table<R> table;
    private final Frame frame;
    private final boolean hasShapes;
    private final PreparedStatement insert;
    private final Cells cells;
    private final Extent extent = new Extent();
    private final SpatialIndex index = new SpatialIndex();
    private long fid;

    GeoPackageLayer(GeoPackageWriter owner, Connection connection, Table<R> table) throws SQLException {
        this.owner = owner;
        this.connection = connection;
        this.table = table;
        this.frame = owner.frame();
        this.hasShapes = table.geometry() != GeometryKind.NONE;
        createTable();
        String marks = String.join(", ", Collections.nCopies(table.columns().size() + (hasShapes ? 2 : 1), "?"));
        this.insert = connection.prepareStatement("INSERT INTO \"" + table.name() + "\" VALUES (" + marks + ")");
        this.cells = new Cells(insert);
    }

    @Override
    public void write(R row) {
        try {
            fid++;
            insert.setLong(1, fid);
            if (hasShapes) {
                putShape(frame.place(table.shape().apply(row)));
            }
            cells.next = hasShapes ? 3 : 2;
            table.putCells(row, cells);
            insert.executeUpdate();
        } catch (SQLException failure) {
            throw owner.failed(failure);
        }
    }

    @Override
    public void close() {
        try (insert) {
            if (hasShapes) {
                index.write(connection, "rtree_" + table.name() + "_geom");
                execute(GeoPackageSchema.indexTriggers(table.name()));
            }
            register();
        } catch (SQLException failure) {
            throw owner.failed(failure);
        }
    }

    private void putShape(Shape shape) throws SQLException {
        if (shape.isEmpty()) {
            insert.setNull(2, Types.BLOB);
            return;
        }
        Extent box = Extent.of(shape);
        extent.add(box);
        index.add(fid, box);
        insert.setBytes(2, GeoPackageBlob.encode(shape, table, box, frame.srsId()));
    }

    private void createTable() throws SQLException {
        String columns = table.columns().stream()
                .map(column -> ",\n  \"" + column.name() + "\" " + sqlType(column.type()))
                .collect(Collectors.joining());
        String shape = hasShapes ? ",\n  \"geom\" " + geometryType() : "";
        execute("CREATE TABLE \"" + table.name() + "\" (\n  \"fid\" INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL" + shape
                + columns + "\n)");
    }

    private void register() throws SQLException {
        try (PreparedStatement contents =
                connection.prepareStatement("INSERT INTO gpkg_contents VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")) {
            contents.setString(1, table.name());
            contents.setString(2, hasShapes ? "features" : "attributes");
            contents.setString(3, table.name());
            contents.setString(4, table.meaning());
            contents.setString(5, owner.lastChange());
            if (!extent.isEmpty()) {
                contents.setDouble(6, extent.minX());
                contents.setDouble(7, extent.minY());
                contents.setDouble(8, extent.maxX());
                contents.setDouble(9, extent.maxY());
            }
            if (hasShapes) {
                contents.setInt(10, frame.srsId());
            }
            contents.executeUpdate();
        }
        if (hasShapes) {
            registerShapes();
        }
    }

    private void registerShapes() throws SQLException {
        String name = "'" + table.name() + "', 'geom', ";
        execute(
                "INSERT INTO gpkg_geometry_columns VALUES (" + name + "'" + geometryType() + "', " + frame.srsId()
                        + ", " + (table.hasZ() ? 2 : 0) + ", 0)",
                "INSERT INTO gpkg_extensions VALUES (" + name
                        + "'gpkg_rtree_index', 'http://www.geopackage.org/spec120/#extension_rtree', 'write-only')");
    }

    private void execute(String... statements) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.executeUpdate(sql);
            }
        }
    }

    private String geometryType() {
        return switch (table.geometry()) {
            case LINE -> "LINESTRING";
            case MULTILINE -> "MULTILINESTRING";
            default -> table.geometry().name();
        };
    }

    private static String sqlType(Column.Type type) {
        return switch (type) {
            case TEXT -> "TEXT";
            case INTEGER -> "INTEGER";
            case REAL -> "DOUBLE";
            case FLAG -> "BOOLEAN";
        };
    }

    /** Binds cells to the statement. */
    private final class Cells implements CellSink {
        private final PreparedStatement statement;
        private int next;

        Cells(PreparedStatement statement) {
            this.statement = statement;
        }

        @Override
        public void empty() {
            try {
                statement.setNull(next++, Types.NULL);
            } catch (SQLException failure) {
                throw owner.failed(failure);
            }
        }

        @Override
        public void text(String text) {
            try {
                statement.setString(next++, text);
            } catch (SQLException failure) {
                throw owner.failed(failure);
            }
        }

        @Override
        public void integer(long value) {
            try {
                statement.setLong(next++, value);
            } catch (SQLException failure) {
                throw owner.failed(failure);
            }
        }

        @Override
        public void real(double value, int decimals) {
            try {
                statement.setDouble(next++, Decimals.round(value, decimals));
            } catch (SQLException failure) {
                throw owner.failed(failure);
            }
        }

        @Override
        public void flag(boolean value) {
            integer(value ? 1 : 0);
        }
    }
}
