package org.spanroom.output.geopackage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.output.Sample;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.output.table.Table;
import org.spanroom.testing.ExternalTool;

/**
 * Holds GeoPackages to the requirements of OGC 12-128r18, cited by number from memory, and their index to SQLite's own
 * check.
 */
class GeoPackageWriterTest {
    @TempDir
    Path folder;

    @Test
    void theFileIsMarkedAsGeoPackage() throws SQLException {
        Path file = write(Sample.LINES, 3);

        // Requirement 2: application_id GPKG, user_version of the standard's version.
        assertThat(query(file, "PRAGMA application_id")).containsExactly("1196444487");
        assertThat(query(file, "PRAGMA user_version")).containsExactly("10300");
        // Requirements 6 and 7: SQLite finds the file sound and no foreign key broken.
        assertThat(query(file, "PRAGMA integrity_check")).containsExactly("ok");
        assertThat(query(file, "PRAGMA foreign_key_check")).isEmpty();
    }

    @Test
    void theRequiredTablesHaveTheirColumns() throws SQLException {
        Path file = write(Sample.LINES, 3);

        // Requirements 10, 13, 21 and 58.
        assertThat(columns(file, "gpkg_spatial_ref_sys"))
                .isEqualTo("srs_name srs_id organization organization_coordsys_id definition description");
        assertThat(columns(file, "gpkg_contents"))
                .isEqualTo("table_name data_type identifier description last_change min_x min_y max_x max_y srs_id");
        assertThat(columns(file, "gpkg_geometry_columns"))
                .isEqualTo("table_name column_name geometry_type_name srs_id z m");
        assertThat(columns(file, "gpkg_extensions"))
                .isEqualTo("table_name column_name extension_name definition scope");
    }

    @Test
    void theRequiredReferenceSystemsAreThereAndTheChosenOne() throws SQLException {
        Path file = folder.resolve("utm.gpkg");
        var options = new LayerOptions(ReferenceSystem.parse("EPSG:32626"), Sample.WRITTEN);
        try (var gpkg = new GeoPackageWriter(file, options);
                var layer = gpkg.layer(Sample.LINES)) {
            layer.write(Sample.of("x", -30, 40, -29.9, 40));
        }

        // Requirement 11.
        assertThat(query(file, "SELECT srs_id || organization || organization_coordsys_id FROM gpkg_spatial_ref_sys"))
                .containsExactly("-1NONE-1", "0NONE0", "4326EPSG4326", "32626EPSG32626");
        assertThat(query(file, "SELECT srs_id FROM gpkg_contents")).containsExactly("32626");
        assertThat(query(file, "SELECT srs_id FROM gpkg_geometry_columns")).containsExactly("32626");
        assertThat(query(file, "SELECT substr(hex(geom), 1, 16) FROM routes")).containsExactly("47500001727F0000");
    }

    @Test
    void aSystemWithoutACodeGetsANumberOfItsOwn() throws SQLException {
        Path file = folder.resolve("own.gpkg");
        String wkt = ReferenceSystem.parse("EPSG:32626").esriWkt().replace("WGS_1984_UTM_Zone_26N", "Our_Grid");
        ReferenceSystem own = ReferenceSystem.parse(wkt.replaceAll(",AUTHORITY\\[[^]]*\\]", ""));
        try (var gpkg = new GeoPackageWriter(file, new LayerOptions(own, Sample.WRITTEN));
                var layer = gpkg.layer(Sample.POINTS)) {
            layer.write(Sample.of("x", -30, 40, -29.9, 40));
        }

        assertThat(query(file, "SELECT organization FROM gpkg_spatial_ref_sys WHERE srs_id = 100000"))
                .containsExactly("NONE");
        assertThat(query(file, "SELECT srs_id FROM gpkg_geometry_columns")).containsExactly("100000");
    }

    @Test
    void contentsTellNameTimeAndBounds() throws SQLException {
        Path file = write(Sample.LINES, 0);

        // Requirement 15: the time as ISO 8601 in UTC. Bounds are empty in a layer without shapes.
        assertThat(
                        query(
                                file,
                                "SELECT data_type || ' ' || identifier || ' ' || last_change || coalesce(min_x, '') FROM gpkg_contents"))
                .containsExactly("features routes 2026-05-04T03:02:01.987Z");
    }

    @ParameterizedTest(name = "{0} rows")
    @ValueSource(ints = {0, 1, 50, 51, 52, 2601, 2602, 20_000})
    void theSpatialIndexIsWhatSqliteDemandsOfIt(int rows) throws SQLException {
        Path file = write(Sample.LINES, rows);

        assertThat(query(file, "SELECT rtreecheck('rtree_routes_geom')")).containsExactly("ok");
        assertThat(query(file, "SELECT count(*) FROM rtree_routes_geom"))
                .isEqualTo(query(file, "SELECT count(geom) FROM routes"));
        // Annex F.3, requirement 75: the index is registered.
        assertThat(query(file, "SELECT table_name || column_name || extension_name || scope FROM gpkg_extensions"))
                .containsExactly("routesgeomgpkg_rtree_indexwrite-only");
    }

    @Test
    void theIndexStaysTrueWhenSqliteInsertsAndDeletes() throws SQLException {
        Path file = write(Sample.LINES, 5000);

        try (Connection connection = open(file);
                var statement = connection.createStatement()) {
            statement.executeUpdate("DELETE FROM rtree_routes_geom WHERE id % 3 = 0");
            statement.executeUpdate(
                    "WITH RECURSIVE n(i) AS (SELECT 10000 UNION ALL SELECT i + 1 FROM n WHERE i < 12000)"
                            + " INSERT INTO rtree_routes_geom SELECT i, -30, -29.9, 40, 40.1 FROM n");
        }

        assertThat(query(file, "SELECT rtreecheck('rtree_routes_geom')")).containsExactly("ok");
    }

    /** GDAL writes the standard's triggers too; ours differ from its text in blanks only. */
    @Test
    void theIndexTriggersAreThoseThatGdalWrites() throws SQLException {
        Path ours = write(Sample.LINES, 3);
        Path theirs = folder.resolve("gdal.gpkg");
        ExternalTool.named("ogr2ogr")
                .run("-f", "GPKG", theirs.toString(), ours.toString(), "-dsco", "VERSION=1.3", "-nln", "routes");

        assertThat(triggers(ours)).isEqualTo(triggers(theirs)).hasSize(6);
    }

    @Test
    void severalLayersAndATableFitIntoOneFile() throws SQLException {
        Path file = folder.resolve("several.gpkg");
        Table<Sample> plain = Table.plain("list", "A table without shapes.", Sample.COLUMNS);
        try (var gpkg = new GeoPackageWriter(file, LayerOptions.lonLat(Sample.WRITTEN));
                var lines = gpkg.layer(Sample.LINES);
                var points = gpkg.layer(Sample.POINTS);
                var list = gpkg.layer(plain)) {
            Sample.many(100, 3).forEach(row -> {
                lines.write(row);
                points.write(row);
                list.write(row);
            });
        }

        assertThat(query(file, "SELECT table_name || ' ' || data_type FROM gpkg_contents ORDER BY 1"))
                .containsExactly("list attributes", "places features", "routes features");
        assertThat(query(file, "SELECT count(*) FROM list")).containsExactly("100");
    }

    @Test
    void theSameRowsGiveTheSameBytes() throws IOException {
        byte[] first = Files.readAllBytes(write(Sample.LINES, 1000));
        Files.delete(folder.resolve("rows.gpkg"));

        assertThat(Files.readAllBytes(write(Sample.LINES, 1000))).isEqualTo(first);
    }

    @Test
    void hostileTextsAreKeptAsTheyAre() throws SQLException {
        String text = "'); DROP TABLE gpkg_contents; -- \" ]]> \n" + "x".repeat(100_000);
        Path file = folder.resolve("hostile.gpkg");
        try (var gpkg = new GeoPackageWriter(file, LayerOptions.lonLat(Sample.WRITTEN));
                var layer = gpkg.layer(Sample.LINES)) {
            layer.write(Sample.of(text, 0, 0, 1, 1));
        }

        assertThat(query(file, "SELECT label FROM routes")).containsExactly(text);
    }

    @Test
    void aNameWithMarksOfUrlsIsAFileLikeAnyOther() throws IOException {
        Path odd = Files.createDirectory(folder.resolve("a?mode=memory&b #c"));
        try (var gpkg = new GeoPackageWriter(odd.resolve("x.gpkg"), LayerOptions.lonLat(Sample.WRITTEN));
                var layer = gpkg.layer(Sample.LINES)) {
            layer.write(Sample.of("x", 0, 0, 1, 1));
        }

        assertThat(odd.resolve("x.gpkg")).isNotEmptyFile();
    }

    private Path write(Table<Sample> table, int rows) {
        Path file = folder.resolve("rows.gpkg");
        try (var gpkg = new GeoPackageWriter(file, LayerOptions.lonLat(Sample.WRITTEN));
                var layer = gpkg.layer(table)) {
            Sample.many(rows, 11).forEach(layer::write);
        }
        return file;
    }

    private static Map<String, String> triggers(Path file) throws SQLException {
        var triggers = new TreeMap<String, String>();
        try (Connection connection = open(file);
                var rows = connection
                        .createStatement()
                        .executeQuery(
                                "SELECT name, sql FROM sqlite_master WHERE type = 'trigger' AND name LIKE 'rtree%'")) {
            while (rows.next()) {
                triggers.put(
                        rows.getString(1),
                        rows.getString(2).replaceAll("[\\s\"]+", "").toLowerCase(java.util.Locale.ROOT));
            }
        }
        return triggers;
    }

    private static String columns(Path file, String table) throws SQLException {
        return String.join(" ", query(file, "SELECT name FROM pragma_table_info('" + table + "')"));
    }

    private static List<String> query(Path file, String sql) throws SQLException {
        var values = new ArrayList<String>();
        try (Connection connection = open(file);
                var statement = connection.createStatement();
                var rows = statement.executeQuery(sql)) {
            while (rows.next()) {
                values.add(rows.getString(1));
            }
        }
        return values;
    }

    private static Connection open(Path file) throws SQLException {
        return DriverManager.getConnection("jdbc:sqlite:" + file);
    }
}
