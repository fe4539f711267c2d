package org.spanroom.output.geopackage;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.spanroom.output.table.ByteBlock;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Extent;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.OutputCrs;
import org.spanroom.output.table.Row;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;
import org.spanroom.output.table.TableFile;

/**
 * One layer of a GeoPackage on its way into the file.
 *
 * <p>The spatial index is built when the layer closes; until then 24 bytes a row are held for it. Rows of several layers may come
 * in between one another.
 */
final class GeoPackageLayer implements TableFile {
    private final Table<?> table;
    private final OutputCrs frame;
    private final boolean hasShapes;
    private final Extent extent = new Extent();
    private final SpatialIndex index = new SpatialIndex();
    private @Nullable Trees trees;
    private long fid;
    private long shapesWithoutPlace;

    /** The b-trees behind a layer; those of the index are there only if it has shapes. */
    private record Trees(SqliteTable rows, List<SqliteTable> index) {}

    GeoPackageLayer(Table<?> table, OutputCrs frame) {
        this.table = table;
        this.frame = frame;
        this.hasShapes = table.geometry() != GeometryKind.NONE;
    }

    /** Lets SQLite create the layer's tables, which are filled past it afterwards. */
    void create(Connection connection, SqlitePages pages) throws SQLException {
        String index = indexName();
        GeoPackageWriter.execute(connection, List.of(tableSql()));
        if (hasShapes) {
            GeoPackageWriter.execute(
                    connection,
                    List.of("CREATE VIRTUAL TABLE \"" + index + "\" USING rtree(id, minx, maxx, miny, maxy)"));
        }
        trees = new Trees(
                tree(connection, pages, table.name()),
                hasShapes
                        ? List.of(
                                tree(connection, pages, index + "_node"),
                                tree(connection, pages, index + "_parent"),
                                tree(connection, pages, index + "_rowid"))
                        : List.of());
    }

    Table<?> table() {
        return table;
    }

    @Override
    public RowBatch newBatch() {
        return new Records();
    }

    /** Returns the bounds of the shapes written so far. */
    Extent extent() {
        return extent;
    }

    /** Returns how many shapes have no place in the frame; their rows have no geometry. */
    long shapesWithoutPlace() {
        return shapesWithoutPlace;
    }

    @Override
    public void close() {
        trees().rows().close();
        if (!index.isEmpty()) {
            List<SqliteTable> tables = trees().index();
            index.write(tables.get(0), tables.get(1), tables.get(2));
        }
    }

    /** Registers the layer in the GeoPackage, once its rows are in the file. */
    void register(Connection connection, Instant lastChange) throws SQLException {
        try (PreparedStatement contents =
                connection.prepareStatement("INSERT INTO gpkg_contents VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")) {
            contents.setString(1, table.name());
            contents.setString(2, hasShapes ? "features" : "attributes");
            contents.setString(3, table.name());
            contents.setString(4, table.meaning());
            contents.setString(5, GeoPackageSchema.timestamp(lastChange));
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
            registerShapes(connection);
        }
    }

    private void registerShapes(Connection connection) throws SQLException {
        String name = "'" + table.name() + "', 'geom', ";
        int z = table.hasZ() ? 2 : 0;
        GeoPackageWriter.execute(
                connection,
                List.of(
                        "INSERT INTO gpkg_geometry_columns VALUES (" + name + "'" + geometryType() + "', "
                                + frame.srsId() + ", " + z + ", 0)",
                        "INSERT INTO gpkg_extensions VALUES (" + name + "'gpkg_rtree_index', "
                                + "'http://www.geopackage.org/spec120/#extension_rtree', 'write-only')"));
        GeoPackageWriter.execute(connection, GeoPackageSchema.indexTriggers(table.name()));
    }

    private Trees trees() {
        if (trees == null) {
            throw new IllegalStateException("the layer " + table.name() + " has not been created");
        }
        return trees;
    }

    private static SqliteTable tree(Connection connection, SqlitePages pages, String table) throws SQLException {
        try (PreparedStatement query =
                connection.prepareStatement("SELECT rootpage FROM sqlite_master WHERE type = 'table' AND name = ?")) {
            query.setString(1, table);
            try (var rows = query.executeQuery()) {
                return new SqliteTable(pages, rows.getInt(1));
            }
        }
    }

    private String indexName() {
        return "rtree_" + table.name() + "_geom";
    }

    private String tableSql() {
        String columns = table.columns().stream()
                .map(column -> ",\n  \"" + column.name() + "\" " + sqlType(column.type()))
                .collect(Collectors.joining());
        String shape = hasShapes ? ",\n  \"geom\" " + geometryType() : "";
        return "CREATE TABLE \"" + table.name() + "\" (\n  \"fid\" INTEGER PRIMARY KEY NOT NULL" + shape + columns
                + "\n)";
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

    /** Records of rows, which get their numbers when they are appended. */
    private final class Records implements RowBatch {
        private final SqliteRecord record = new SqliteRecord();
        private final ByteBlock block = new ByteBlock(1 << 16);
        private final List<Extent> boxes = new ArrayList<>();
        private int[] ends = new int[64];
        private int rows;
        private int withoutPlace;

        @Override
        public void add(Row<?> row) {
            record.clear();
            record.nothing(); // stands for the row's number
            if (hasShapes) {
                shape(row);
            }
            for (int column = 0; column < row.size(); column++) {
                cell(row, column);
            }
            record.copyTo(block);
            if (rows == ends.length) {
                ends = Arrays.copyOf(ends, 2 * rows);
            }
            ends[rows++] = block.size();
        }

        @Override
        public void append() {
            int start = 0;
            for (int i = 0; i < rows; i++) {
                fid++;
                trees().rows().add(fid, block.array(), start, ends[i] - start);
                start = ends[i];
                if (hasShapes && !boxes.get(i).isEmpty()) {
                    extent.add(boxes.get(i));
                    index.add(fid, boxes.get(i));
                }
            }
            shapesWithoutPlace += withoutPlace;
            withoutPlace = 0;
            rows = 0;
            boxes.clear();
            block.clear();
        }

        private void shape(Row<?> row) {
            Shape shape = row.placed();
            Extent box = Extent.of(shape);
            boxes.add(box);
            if (shape.isEmpty()) {
                withoutPlace += row.isWithoutPlace() ? 1 : 0;
                record.nothing();
            } else {
                record.blob(GeoPackageBlob.encode(shape, table, frame.srsId()));
            }
        }

        private void cell(Row<?> row, int column) {
            switch (row.cell(column)) {
                case TEXT -> {
                    int start = row.start(column);
                    record.text(row.bytes(), start, row.length(column));
                }
                case INTEGER, FLAG -> record.integer(row.whole(column));
                case REAL -> record.real(row.rounded(column));
                default -> record.nothing();
            }
        }
    }
}
