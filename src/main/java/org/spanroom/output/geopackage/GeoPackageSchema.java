package org.spanroom.output.geopackage;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.spanroom.output.table.OutputCrs;

/**
 * The tables that OGC 12-128r18 demands of a GeoPackage, in its own words where it gives the SQL (annexes C and F.3).
 */
final class GeoPackageSchema {
    private static final String SPATIAL_REF_SYS = """
            CREATE TABLE gpkg_spatial_ref_sys (
              srs_name TEXT NOT NULL,
              srs_id INTEGER PRIMARY KEY,
              organization TEXT NOT NULL,
              organization_coordsys_id INTEGER NOT NULL,
              definition TEXT NOT NULL,
              description TEXT
            )""";

    private static final String CONTENTS = """
            CREATE TABLE gpkg_contents (
              table_name TEXT NOT NULL PRIMARY KEY,
              data_type TEXT NOT NULL,
              identifier TEXT UNIQUE,
              description TEXT DEFAULT '',
              last_change DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')),
              min_x DOUBLE,
              min_y DOUBLE,
              max_x DOUBLE,
              max_y DOUBLE,
              srs_id INTEGER,
              CONSTRAINT fk_gc_r_srs_id FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys(srs_id)
            )""";

    private static final String GEOMETRY_COLUMNS = """
            CREATE TABLE gpkg_geometry_columns (
              table_name TEXT NOT NULL,
              column_name TEXT NOT NULL,
              geometry_type_name TEXT NOT NULL,
              srs_id INTEGER NOT NULL,
              z TINYINT NOT NULL,
              m TINYINT NOT NULL,
              CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name),
              CONSTRAINT uk_gc_table_name UNIQUE (table_name),
              CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES gpkg_contents(table_name),
              CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys (srs_id)
            )""";

    private static final String EXTENSIONS = """
            CREATE TABLE gpkg_extensions (
              table_name TEXT,
              column_name TEXT,
              extension_name TEXT NOT NULL,
              definition TEXT NOT NULL,
              scope TEXT NOT NULL,
              CONSTRAINT ge_tce UNIQUE (table_name, column_name, extension_name)
            )""";

    private static final String INSERT_SYSTEM = "INSERT INTO gpkg_spatial_ref_sys VALUES (?, ?, ?, ?, ?, ?)";

    private static final DateTimeFormatter TIMESTAMP = DateTimeFormatter.ofPattern(
                    "yyyy-MM-dd'T'HH:mm:ss.SSS'Z'", Locale.ROOT)
            .withZone(ZoneOffset.UTC);

    private GeoPackageSchema() {}

    /** Creates an empty GeoPackage whose layers may use the given frame. */
    static void create(Connection connection, OutputCrs frame) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.executeUpdate(SPATIAL_REF_SYS);
            statement.executeUpdate(CONTENTS);
            statement.executeUpdate(GEOMETRY_COLUMNS);
            statement.executeUpdate(EXTENSIONS);
        }
        OutputCrs lonLat = OutputCrs.lonLat();
        try (PreparedStatement insert = connection.prepareStatement(INSERT_SYSTEM)) {
            system(insert, "Undefined cartesian SRS", -1, "NONE", "undefined");
            system(insert, "Undefined geographic SRS", 0, "NONE", "undefined");
            system(insert, lonLat.name(), lonLat.srsId(), lonLat.organization(), lonLat.wkt());
            if (frame.srsId() != lonLat.srsId()) {
                system(insert, frame.name(), frame.srsId(), frame.organization(), frame.wkt());
            }
        }
    }

    /** Returns a time as gpkg_contents wants it. */
    static String timestamp(Instant time) {
        return TIMESTAMP.format(time);
    }

    /** Returns the statement that registers a table of one of the standard's extensions that readers and writers need. */
    static String extension(String table, String extension) {
        return "INSERT INTO gpkg_extensions VALUES ('" + table + "', NULL, 'gpkg_" + extension
                + "', 'http://www.geopackage.org/spec130/#extension_" + extension + "', 'read-write')";
    }

    private static void system(PreparedStatement insert, String name, int id, String organization, String definition)
            throws SQLException {
        insert.setString(1, name);
        insert.setInt(2, id);
        insert.setString(3, organization);
        insert.setInt(4, id);
        insert.setString(5, definition);
        insert.setString(6, null);
        insert.executeUpdate();
    }

    /** Returns the triggers that keep a spatial index true when others change the layer (annex F.3). */
    static List<String> indexTriggers(String table) {
        String index = "\"rtree_" + table + "_geom\"";
        String box = "(NEW.\"fid\", ST_MinX(NEW.\"geom\"), ST_MaxX(NEW.\"geom\"), ST_MinY(NEW.\"geom\"),"
                + " ST_MaxY(NEW.\"geom\"))";
        String put = "INSERT OR REPLACE INTO " + index + " VALUES " + box + ";";
        String drop = "DELETE FROM " + index + " WHERE id = OLD.\"fid\";";
        String filled = "(NEW.\"geom\" NOTNULL AND NOT ST_IsEmpty(NEW.\"geom\"))";
        String empty = "(NEW.\"geom\" ISNULL OR ST_IsEmpty(NEW.\"geom\"))";
        String same = "OLD.\"fid\" = NEW.\"fid\" AND ";
        String moved = "OLD.\"fid\" != NEW.\"fid\" AND ";
        String both = "DELETE FROM " + index + " WHERE id IN (OLD.\"fid\", NEW.\"fid\");";
        return List.of(
                trigger(table, "insert", "INSERT", filled, put),
                trigger(table, "update1", "UPDATE OF \"geom\"", same + filled, put),
                trigger(table, "update2", "UPDATE OF \"geom\"", same + empty, drop),
                trigger(table, "update3", "UPDATE", moved + filled, drop + " " + put),
                trigger(table, "update4", "UPDATE", moved + empty, both),
                trigger(table, "delete", "DELETE", "OLD.\"geom\" NOT NULL", drop));
    }

    private static String trigger(String table, String name, String event, String condition, String action) {
        return "CREATE TRIGGER \"rtree_" + table + "_geom_" + name + "\" AFTER " + event + " ON \"" + table + "\" WHEN "
                + condition + " BEGIN " + action + " END";
    }
}
