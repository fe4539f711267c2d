package org.spanroom.output.geopackage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.model.Line;
import org.spanroom.output.Sample;
import org.spanroom.output.style.LayerStyle;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.output.table.Table;
import org.spanroom.testing.ExternalTool;
import org.spanroom.testing.GeoPackageValidator;

/** What a GeoPackage says of itself, by the extensions of OGC 12-128r18 (annexes F.8 and F.9, from memory) and by a convention. */
class SelfExplainingGeoPackageTest {
    private static final String ABOUT = "{\"program\": \"O'Span\"}\n";
    private static final Table<Sample> PLAIN = Table.plain("list", "A table without shapes.", Sample.COLUMNS);

    @TempDir
    Path folder;

    @Test
    void everyColumnHasANameOfItsOwnAndAMeaning() throws SQLException {
        Path file = write("named", LayerOptions.lonLat(Sample.WRITTEN).about(ABOUT));

        for (String table : query(file, "SELECT table_name FROM gpkg_contents")) {
            assertThat(query(file, "SELECT column_name FROM gpkg_data_columns WHERE table_name = '" + table + "'"))
                    .containsExactlyInAnyOrderElementsOf(
                            query(file, "SELECT name FROM pragma_table_info('" + table + "')"));
        }
        assertThat(query(file, "SELECT count(*) FROM gpkg_data_columns WHERE coalesce(name, title, description) = ''"))
                .containsExactly("0");
        assertThat(query(
                        file,
                        "SELECT name || '|' || title || '|' || description FROM gpkg_data_columns"
                                + " WHERE table_name = 'routes' AND column_name = 'length_m'"))
                .containsExactly("length, m|Length, m|How long.");
    }

    @Test
    void bothExtensionsAreRegisteredForTheirTables() throws SQLException {
        Path file = write("registered", LayerOptions.lonLat(Sample.WRITTEN).about(ABOUT));

        assertThat(query(
                        file,
                        "SELECT table_name || ' ' || extension_name || ' ' || scope FROM gpkg_extensions"
                                + " WHERE column_name IS NULL"))
                .containsExactly(
                        "gpkg_data_columns gpkg_schema read-write",
                        "gpkg_data_column_constraints gpkg_schema read-write",
                        "gpkg_metadata gpkg_metadata read-write",
                        "gpkg_metadata_reference gpkg_metadata read-write");
    }

    @Test
    void theFileSaysWhereItIsFrom() throws SQLException {
        Path file = write("about", LayerOptions.lonLat(Sample.WRITTEN).about(ABOUT));

        assertThat(query(file, "SELECT metadata FROM gpkg_metadata WHERE md_scope = 'dataset'"))
                .containsExactly(ABOUT);
        assertThat(query(file, "SELECT reference_scope || ' ' || timestamp FROM gpkg_metadata_reference"))
                .containsExactly("geopackage 2026-05-04T03:02:01.987Z");
        assertThat(ExternalTool.named("ogrinfo").run("-so", file)).contains("O'Span");
    }

    @Test
    void aFileThatIsToLookLikeAnOwnersSaysNothing() throws SQLException {
        Path file = write("bare", LayerOptions.lonLat(Sample.WRITTEN));

        assertThat(query(
                        file,
                        "SELECT name FROM sqlite_master WHERE name LIKE 'gpkg_data%' OR name LIKE 'gpkg_meta%'"
                                + " OR name = 'layer_styles'"))
                .isEmpty();
    }

    @Test
    void theSameInputGivesTheSameBytes() throws IOException {
        LayerOptions options = LayerOptions.lonLat(Sample.WRITTEN).about(ABOUT);

        assertThat(write("first", options)).hasSameBinaryContentAs(write("second", options));
    }

    /** Desktop GIS ask for the style of a layer by these columns, and take the one that is marked as default. */
    @Test
    void stylesStandInTheTableWhereDesktopGisLook() throws SQLException {
        Path file = write("styled", LayerOptions.lonLat(Sample.WRITTEN).about(ABOUT));
        var styles = new TreeMap<String, LayerStyle>();
        styles.put("routes", new LayerStyle("<sld/>", "<qml/>"));
        try (Connection connection = open(file)) {
            StyleTable.write(connection, styles, Sample.WRITTEN);
        }

        assertThat(query(
                        file,
                        "SELECT styleQML || styleSLD || styleName || update_time FROM layer_styles WHERE f_table_catalog = ''"
                                + " AND f_table_schema = '' AND f_table_name = 'routes'"
                                + " AND f_geometry_column = 'geom' AND useAsDefault"))
                .containsExactly("<qml/><sld/>default2026-05-04T03:02:01.987Z");
        assertThat(query(file, "SELECT data_type FROM gpkg_contents WHERE table_name = 'layer_styles'"))
                .containsExactly("attributes");
        GeoPackageValidator.demandNothingFound(file);
    }

    @Test
    void theStandardsValidatorFindsNothing() {
        GeoPackageValidator.demandNothingFound(
                write("degrees", LayerOptions.lonLat(Sample.WRITTEN).about(ABOUT)));
        GeoPackageValidator.demandNothingFound(
                write("meters", new LayerOptions(ReferenceSystem.parse("EPSG:32626"), Sample.WRITTEN).about(ABOUT)));
    }

    /** Lines of which some have heights, points, polygons of several parts, and a table. */
    private Path write(String name, LayerOptions options) {
        Path file = folder.resolve(name + ".gpkg");
        var ring = Line.ofXy(-30, 40, -29.9, 40, -29.9, 40.1, -30, 40);
        var inside = Line.ofXy(-29.95, 40.02, -29.93, 40.02, -29.93, 40.04, -29.95, 40.02);
        var further = Line.ofXy(-29.5, 40, -29.4, 40, -29.4, 40.1, -29.5, 40);
        try (var gpkg = new GeoPackageWriter(file, options);
                var lines = gpkg.layer(Sample.LINES.withZ());
                var points = gpkg.layer(Sample.POINTS);
                var areas = gpkg.layer(Sample.MULTIPOLYGONS);
                var list = gpkg.layer(PLAIN)) {
            lines.write(new Sample("high", 1L, 1, true, List.of(Line.ofXyz(-30, 40, 5.25, -29, 41, -6))));
            Sample.many(200, 3).forEach(row -> {
                lines.write(row);
                points.write(row);
                list.write(row);
            });
            areas.write(new Sample("areas", 1L, 1, true, List.of(ring, inside, further)));
            areas.write(Sample.EMPTY);
        }
        return file;
    }

    private static List<String> query(Path file, String sql) throws SQLException {
        var values = new ArrayList<String>();
        try (Connection connection = open(file);
                var rows = connection.createStatement().executeQuery(sql)) {
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
