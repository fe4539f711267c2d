package org.spanroom.input;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import org.spanroom.input.geopackage.GeoPackageCatalog;

/** Writes small GeoPackages statement by statement after OGC 12-128r19, whole or wrong on purpose. */
public final class SmallGeoPackage implements AutoCloseable {
    private final Connection connection;

    public SmallGeoPackage(Path file) throws SQLException {
        connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        run("PRAGMA application_id = 1196444487");
        run("CREATE TABLE gpkg_spatial_ref_sys (srs_name TEXT, srs_id INTEGER PRIMARY KEY, organization TEXT,"
                + " organization_coordsys_id INTEGER, definition TEXT)");
        run("INSERT INTO gpkg_spatial_ref_sys VALUES ('a', 4326, 'epsg', 4326, 'GEOGCS[...]'),"
                + " ('b', 77, 'own', 1, 'PROJCS[\"own\"]'), ('c', 78, 'NONE', 1, 'undefined'),"
                + " ('d', 99999, 'NONE', 99999, 'LOCAL_CS[\"Undefined SRS\",UNIT[\"metre\",1]]')");
        run("CREATE TABLE gpkg_contents (table_name TEXT, data_type TEXT, srs_id INTEGER)");
        run("CREATE TABLE gpkg_geometry_columns (table_name TEXT, column_name TEXT, geometry_type_name TEXT,"
                + " srs_id INTEGER, z INTEGER, m INTEGER)");
    }

    public void run(String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    /** Registers a layer whose geometry column is geom. */
    public void register(String table, int srsId) throws SQLException {
        String name = "'" + table.replace("'", "''") + "'";
        run("INSERT INTO gpkg_contents VALUES (" + name + ", 'features', " + srsId + ")");
        run("INSERT INTO gpkg_geometry_columns VALUES (" + name + ", 'geom', 'POINT', " + srsId + ", 0, 0)");
    }

    /** Makes a layer of points with the columns fid, geom, name and truth. */
    public void pointLayer(String table, int srsId, int points) throws SQLException {
        register(table, srsId);
        String quoted = GeoPackageCatalog.quoted(table);
        run("CREATE TABLE " + quoted + " (fid INTEGER PRIMARY KEY, geom BLOB, name TEXT, truth BOOLEAN)");
        connection.setAutoCommit(false);
        for (int i = 1; i <= points; i++) {
            insert(table, i, point(i, -i), "n" + i, i % 2);
        }
        connection.commit();
        connection.setAutoCommit(true);
    }

    public void insert(String table, Object... values) throws SQLException {
        String marks = "?, ".repeat(values.length - 1) + "?";
        try (PreparedStatement statement = connection.prepareStatement(
                "INSERT INTO " + GeoPackageCatalog.quoted(table) + " VALUES (" + marks + ")")) {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            statement.execute();
        }
    }

    public static byte[] point(double x, double y) {
        return ByteBuffer.allocate(29)
                .put(new byte[] {'G', 'P', 0, 0, 0, 0, 0, 0, 0})
                .putInt(1)
                .putDouble(x)
                .putDouble(y)
                .array();
    }

    @Override
    public void close() throws SQLException {
        connection.close();
    }
}
