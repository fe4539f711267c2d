package org.spanroom.input.geopackage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.InputException;
import org.spanroom.input.LayerSources;
import org.spanroom.input.ReadLayer;
import org.spanroom.input.SmallGeoPackage;
import org.spanroom.input.layer.LayerInfo;
import org.spanroom.input.layer.SourceFeature;

/** Tables and their meaning: OGC GeoPackage Encoding Standard 1.4, OGC 12-128r19. */
class GeoPackageSourceTest {
    @TempDir
    private Path folder;

    private Path file() {
        return folder.resolve("city #1 100%?.gpkg");
    }

    @Test
    void onlyLayerIsReadWithItsKeysValuesAndTypes() throws SQLException {
        try (var geoPackage = new SmallGeoPackage(file())) {
            geoPackage.register("odd \"name\"; DROP TABLE x", 4326);
            geoPackage.run("CREATE TABLE \"odd \"\"name\"\"; DROP TABLE x\" (id INTEGER PRIMARY KEY, r REAL, GEOM BLOB,"
                    + " t TEXT, b BOOLEAN, d DATE, x BLOB, \"select \"\" from\" INTEGER)");
            geoPackage.insert(
                    "odd \"name\"; DROP TABLE x",
                    9,
                    1.5,
                    SmallGeoPackage.point(1, 2),
                    "ä",
                    1,
                    "2024-02-29",
                    new byte[3],
                    7);
            geoPackage.insert("odd \"name\"; DROP TABLE x", 3, null, null, "", 0, null, null, 1L << 40);
        }

        ReadLayer layer = ReadLayer.withAllFields(file());

        assertThat(layer.findings().all()).isEmpty();
        assertThat(layer.header().layerName()).isEqualTo("odd \"name\"; DROP TABLE x");
        assertThat(layer.header().crsDefinition()).contains("EPSG:4326");
        assertThat(layer.header().fields()).containsExactly("id", "r", "t", "b", "d", "x", "select \" from");
        assertThat(layer.features()).extracting(SourceFeature::fileId).containsExactly("3", "9");
        assertThat(layer.geometries()).containsExactly("NONE", "POINTS [1.0, 2.0]");
        assertThat(layer.values())
                .containsExactly(
                        Arrays.asList(3L, null, "", false, null, null, 1L << 40),
                        Arrays.asList(9L, 1.5, "ä", true, "2024-02-29", null, 7L));
    }

    @Test
    void layerIsChosenByNameAndOtherwiseTheyAreListed() throws SQLException {
        try (var geoPackage = new SmallGeoPackage(file())) {
            geoPackage.pointLayer("vaults", 4326, 3);
            geoPackage.pointLayer("routes", 77, 2);
            geoPackage.run("INSERT INTO gpkg_contents VALUES ('notes', 'attributes', 0)");
        }

        assertThat(LayerSources.list(file()))
                .containsExactly(new LayerInfo("routes", "POINT", 2), new LayerInfo("vaults", "POINT", 3));
        assertThat(ReadLayer.of(file(), Optional.of("vaults"), List.of("name", "none"))
                        .values())
                .startsWith(Arrays.asList("n1", null));
        assertThatThrownBy(() -> ReadLayer.of(file()))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("routes, vaults");
        assertThatThrownBy(() -> ReadLayer.of(file(), Optional.of("notes"), List.of()))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("no layer \"notes\"")
                .hasMessageContaining("routes, vaults");
    }

    /** Requirement 33 of the standard: header and layer name the same system; 0 and -1 name none. */
    @Test
    void aGeometryThatNamesAnotherReferenceSystemIsNamed() throws SQLException {
        try (var geoPackage = new SmallGeoPackage(file())) {
            geoPackage.pointLayer("a", 4326, 1);
            int id = 2;
            for (int srsId : new int[] {4326, 2263, -1}) {
                byte[] shape = SmallGeoPackage.point(3, 4);
                ByteBuffer.wrap(shape).putInt(4, srsId);
                geoPackage.insert("a", id++, shape, "x", 0);
            }
            byte[] little = SmallGeoPackage.point(3, 4);
            little[3] = 1;
            ByteBuffer.wrap(little).order(ByteOrder.LITTLE_ENDIAN).putInt(4, 3857);
            geoPackage.insert("a", id, little, "x", 0);
        }

        ReadLayer layer = ReadLayer.of(file());

        assertThat(layer.features()).hasSize(5);
        assertThat(layer.header().crsDefinition()).contains("EPSG:4326");
        assertThat(layer.codes()).containsOnly(FindingCode.GEOMETRY_SRS_DIFFERS);
        assertThat(layer.findings().all()).extracting(Finding::featureId).containsExactly("3", "5");
        assertThat(layer.findings().all().get(0).detail())
                .startsWith("feature 3 of the layer: ")
                .contains("reference system 2263 (srs_id), its layer 4326; it was read in that of the layer");
        assertThat(layer.findings().all().get(1).detail()).contains("reference system 3857");
    }

    @ParameterizedTest
    @CsvSource(
            nullValues = "none",
            value = {
                "4326, EPSG:4326",
                "77, 'PROJCS[\"own\"]'",
                "78, none",
                "99999, none",
                "0, none",
                "-1, none",
                "5, none"
            })
    void referenceSystemComesFromItsTable(int srsId, String expected) throws SQLException {
        try (var geoPackage = new SmallGeoPackage(file())) {
            geoPackage.pointLayer("a", srsId, 1);
        }

        ReadLayer layer = ReadLayer.of(file());

        assertThat(layer.header().crsDefinition()).isEqualTo(Optional.ofNullable(expected));
        assertThat(layer.codes()).isEqualTo(srsId == 5 ? List.of(FindingCode.LAYER_ISSUE) : List.of());
    }

    @Test
    void viewIsALayerToo() throws SQLException {
        try (var geoPackage = new SmallGeoPackage(file())) {
            geoPackage.run("CREATE TABLE base (fid INTEGER PRIMARY KEY, geom BLOB, name TEXT)");
            geoPackage.insert("base", 1, SmallGeoPackage.point(1, 2), "x");
            geoPackage.run("CREATE VIEW seen AS SELECT fid AS OGC_FID, geom, upper(name) AS name FROM base");
            geoPackage.register("seen", 4326);
        }

        ReadLayer layer = ReadLayer.withAllFields(file());

        assertThat(layer.values()).containsExactly(List.of(1L, "X"));
        assertThat(layer.geometries()).containsExactly("POINTS [1.0, 2.0]");
    }

    @Test
    void damagedGeometriesAreRejectedOneByOne() throws SQLException {
        try (var geoPackage = new SmallGeoPackage(file())) {
            geoPackage.pointLayer("a", 4326, 1);
            geoPackage.insert("a", 2, new byte[] {1, 2, 3}, "x", 0);
            geoPackage.insert("a", 3, "POINT (1 2)", "x", 0);
            geoPackage.insert("a", 4, SmallGeoPackage.point(Double.NEGATIVE_INFINITY, 0), "x", 0);
            geoPackage.insert("a", 5, new byte[0], "x", 0);
        }

        ReadLayer layer = ReadLayer.of(file());

        assertThat(layer.met()).isEqualTo(5);
        assertThat(layer.features()).hasSize(1);
        assertThat(layer.rejected()).isEqualTo(4);
        assertThat(layer.codes()).containsOnlyOnce(FindingCode.BAD_COORDINATE);
    }

    @Test
    void wrongApplicationIdIsReportedAndReadAllTheSame() throws SQLException {
        try (var geoPackage = new SmallGeoPackage(file())) {
            geoPackage.pointLayer("a", 4326, 1);
            geoPackage.run("PRAGMA application_id = 7");
        }

        ReadLayer layer = ReadLayer.of(file());

        assertThat(layer.features()).hasSize(1);
        assertThat(layer.details()).containsExactly("the application id of the file is 0x00000007, not GeoPackage's");
    }

    @ParameterizedTest
    @CsvSource({
        "DROP TABLE gpkg_contents, gpkg_contents",
        "DROP TABLE gpkg_geometry_columns, gpkg_geometry_columns",
        "DROP TABLE gpkg_spatial_ref_sys, gpkg_spatial_ref_sys",
        "DELETE FROM gpkg_contents, no layer of features",
        "DROP TABLE a, declares the geometry column",
        "UPDATE gpkg_geometry_columns SET column_name = 'x', declares the geometry column",
        "ALTER TABLE gpkg_contents RENAME COLUMN data_type TO x, its tables cannot be read"
    })
    void whatIsMissingIsNamedInOneLine(String damage, String words) throws SQLException {
        try (var geoPackage = new SmallGeoPackage(file())) {
            geoPackage.pointLayer("a", 4326, 1);
            geoPackage.run(damage);
        }

        assertThatThrownBy(() -> ReadLayer.of(file()))
                .isInstanceOf(InputException.class)
                .hasMessageContaining(words)
                .hasMessageNotContaining("\n");
    }

    /** The size in the header of a database: file format of SQLite 3, sqlite.org/fileformat2.html, section 1.3. */
    @ParameterizedTest
    @ValueSource(ints = {1, 100, 4096, 9000})
    void aFileThatIsCutOffIsNamedAsSuch(int bytes) throws SQLException, IOException {
        try (var geoPackage = new SmallGeoPackage(file())) {
            geoPackage.pointLayer("a", 4326, 200);
        }
        byte[] whole = Files.readAllBytes(file());
        Files.write(file(), Arrays.copyOf(whole, whole.length - bytes));

        assertThatThrownBy(() -> ReadLayer.of(file()))
                .isInstanceOf(InputException.class)
                .hasMessage(String.format(
                        Locale.ROOT,
                        "%s: it is cut off: it has %,d bytes, and its header states %,d. Copy all of it, or export it again.",
                        file(),
                        whole.length - bytes,
                        whole.length));
    }

    /** What follows the last page, and a count that an old program left behind, do not matter. */
    @Test
    void aLongerFileAndAnInvalidCountAreRead() throws SQLException, IOException {
        try (var geoPackage = new SmallGeoPackage(file())) {
            geoPackage.pointLayer("a", 4326, 2);
        }
        byte[] whole = Files.readAllBytes(file());
        Files.write(file(), Arrays.copyOf(whole, whole.length + 100));
        assertThat(ReadLayer.of(file()).met()).isEqualTo(2);

        whole[31]++;
        whole[95]++;
        Files.write(file(), whole);
        assertThat(ReadLayer.of(file()).met()).isEqualTo(2);
    }

    @Test
    void databaseInWriteAheadModeIsReadAndNothingIsWrittenBesideIt() throws SQLException, IOException {
        try (var geoPackage = new SmallGeoPackage(file())) {
            geoPackage.run("PRAGMA journal_mode = WAL");
            geoPackage.pointLayer("a", 4326, 2);
        }
        assertThat(ReadLayer.of(file()).met()).isEqualTo(2);
        assertThat(names()).containsExactly(file().getFileName().toString());
    }

    @Test
    void rowsThatAreStillInTheWriteAheadLogAreRead() throws SQLException, IOException {
        Path copy = folder.resolve("copy.gpkg");
        try (var geoPackage = new SmallGeoPackage(file())) {
            geoPackage.run("PRAGMA journal_mode = WAL");
            geoPackage.pointLayer("a", 4326, 2);
            Files.copy(file(), copy);
            Files.copy(file().resolveSibling(file().getFileName() + "-wal"), folder.resolve("copy.gpkg-wal"));
        }

        assertThat(ReadLayer.of(copy).met()).isEqualTo(2);
    }

    @Test
    void lockedDatabaseIsNamedAsSuch() throws SQLException {
        try (var geoPackage = new SmallGeoPackage(file())) {
            geoPackage.pointLayer("a", 4326, 1);
            geoPackage.run("BEGIN EXCLUSIVE");

            assertThatThrownBy(() -> ReadLayer.of(file()))
                    .isInstanceOf(InputException.class)
                    .hasMessageContaining("locked");
        }
    }

    @Test
    void announcedCountIsTakenOnlyWhereItCanBe() throws SQLException {
        try (var geoPackage = new SmallGeoPackage(file())) {
            geoPackage.pointLayer("a", 4326, 2);
            geoPackage.run("CREATE TABLE gpkg_ogr_contents (table_name TEXT, feature_count INTEGER)");
            geoPackage.run("INSERT INTO gpkg_ogr_contents VALUES ('a', 2)");
        }
        assertThat(ReadLayer.of(file()).header().featureCount()).isEqualTo(2);

        Path hostile = folder.resolve("b.gpkg");
        try (var geoPackage = new SmallGeoPackage(hostile)) {
            geoPackage.pointLayer("a", 4326, 2);
            geoPackage.run("CREATE TABLE gpkg_ogr_contents (table_name TEXT, feature_count INTEGER)");
            geoPackage.run("INSERT INTO gpkg_ogr_contents VALUES ('a', 9223372036854775807)");
        }
        assertThat(ReadLayer.of(hostile).header().featureCount()).isEqualTo(-1);
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }
}
