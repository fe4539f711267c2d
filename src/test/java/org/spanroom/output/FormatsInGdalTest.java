package org.spanroom.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.algorithm.RectangleLineIntersector;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.model.Line;
import org.spanroom.output.geopackage.GeoPackageWriter;
import org.spanroom.output.shapefile.ShapefileWriter;
import org.spanroom.output.table.Decimals;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.output.table.RowWriter;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;
import org.spanroom.output.text.GeoJsonWriter;
import org.spanroom.testing.ExternalTool;

/** What GDAL, which we did not write, reads from our files. */
class FormatsInGdalTest {
    private static final List<Sample> ROWS = List.of(
            Sample.of("plain", -30, 40, -29.99, 40.01, -29.98, 40.0),
            Sample.EMPTY,
            new Sample(
                    "Größe \"東\" \uD83D\uDEA7, ]]> 'x'; \\",
                    -5L,
                    -0.0004,
                    false,
                    List.of(Line.ofXy(-30, 40.1, -30, 40.2))),
            new Sample(
                    "big", 9_007_199_254_740_993L, 1234567.8904, true, List.of(Line.ofXy(-29.5, 40.1, -29.4, 40.2))));

    private static final List<Sample> RINGS = List.of(
            new Sample(
                    "with a hole",
                    1L,
                    1,
                    true,
                    List.of(
                            Line.ofXy(-30, 40, -29, 40, -29, 41, -30, 41, -30, 40),
                            Line.ofXy(-29.8, 40.2, -29.6, 40.2, -29.6, 40.4, -29.8, 40.2))),
            Sample.EMPTY);

    /** The same polygon, and a square of 0.1 by 0.1 degrees beside it. */
    private static final List<Sample> AREAS = List.of(
            new Sample(
                    "of two parts",
                    1L,
                    1,
                    true,
                    Stream.concat(
                                    RINGS.get(0).lines().stream(),
                                    Stream.of(Line.ofXy(-28.5, 40, -28.5, 40.1, -28.4, 40.1, -28.4, 40, -28.5, 40)))
                            .toList()),
            RINGS.get(0),
            Sample.EMPTY);

    @TempDir
    Path folder;

    @ParameterizedTest(name = "{0} {1}")
    @MethodSource("formatsAndKinds")
    void everyRowComesBack(String format, Table<Sample> table) throws IOException, ParseException {
        List<Sample> rows = switch (table.geometry()) {
            case POLYGON -> RINGS;
            case MULTIPOLYGON -> AREAS;
            default -> ROWS;
        };
        Path file = write(format, table, rows, ReferenceSystem.crs84());

        List<CSVRecord> back = read(file);

        assertThat(back).hasSameSizeAs(rows);
        for (int i = 0; i < rows.size(); i++) {
            assertCells(back.get(i), rows.get(i), format);
            assertShape(back.get(i), table.shape().apply(rows.get(i)));
        }
    }

    @ParameterizedTest(name = "{0} in {1}")
    @MethodSource("formatsAndSystems")
    void positionsSurviveTheWayThroughAnotherReferenceSystem(String format, String system)
            throws IOException, ParseException {
        Path file = write(format, Sample.LINES, ROWS, ReferenceSystem.parse(system));

        List<CSVRecord> back = read(file, "-t_srs", "EPSG:4326");

        assertShape(back.get(0), Sample.LINES.shape().apply(ROWS.get(0)));
        assertThat(ExternalTool.named("ogrinfo").run("-so", "-al", file.toString()))
                .contains("ID[\"EPSG\"," + system.substring(5) + "]");
    }

    @ParameterizedTest
    @MethodSource("layerFormats")
    void heightsComeBack(String format) throws IOException {
        var row = new Sample("x", 1L, 1, true, List.of(Line.ofXyz(-30, 40, 5.25, -29, 41, -6)));
        Path file = write(format, Sample.LINES.withZ(), List.of(row), ReferenceSystem.crs84());

        assertThat(read(file).get(0).get("WKT")).isEqualTo("LINESTRING Z (-30 40 5.25,-29 41 -6)");
    }

    @ParameterizedTest
    @MethodSource("layerFormats")
    void manyRowsAreFoundByPlaceAsOftenAsTheyAreThere(String format) throws IOException {
        List<Sample> rows = Sample.many(5000, 7).toList();
        Path file = write(format, Sample.LINES, rows, ReferenceSystem.crs84());
        // GDAL counts null shapes of a Shapefile as being in any window.
        boolean countsNullShapes = format.equals("shp");
        long expected = rows.stream()
                .filter(row -> row.lines().isEmpty()
                        ? countsNullShapes
                        : isMet(row.lines().get(0)))
                .count();

        String answer = ExternalTool.named("ogrinfo")
                .run("-so", "-al", "-spat", "-29.6", "40.3", "-29.5", "40.4", file.toString());

        assertThat(expected).isPositive();
        assertThat(answer).contains("Feature Count: " + expected + "\n");
    }

    @Test
    void aShapefileCutsLongTextBetweenCharacters() throws IOException {
        String text = "x" + "\u20AC".repeat(100) + "y".repeat(2000);
        Path file = write("shp", Sample.LINES, List.of(Sample.of(text, 0, 0, 1, 1)), ReferenceSystem.crs84());

        // 1 byte and 84 characters of 3 bytes are 253 bytes; one more would pass 254.
        assertThat(read(file).get(0).get("label")).isEqualTo("x" + "\u20AC".repeat(84));
    }

    static Stream<String> layerFormats() {
        return Stream.of("gpkg", "shp", "geojson");
    }

    static Stream<Arguments> formatsAndKinds() {
        return layerFormats()
                .flatMap(format -> Stream.of(
                                Sample.LINES, Sample.POINTS, Sample.MULTILINES, Sample.POLYGONS, Sample.MULTIPOLYGONS)
                        .map(table -> Arguments.of(format, table)));
    }

    static Stream<Arguments> formatsAndSystems() {
        return Stream.of("gpkg", "shp")
                .flatMap(format -> Stream.of("EPSG:32626", "EPSG:3857").map(system -> Arguments.of(format, system)));
    }

    private Path write(String format, Table<Sample> table, List<Sample> rows, ReferenceSystem system) {
        Path file = folder.resolve(table.name() + "." + format);
        var options = new LayerOptions(system, Sample.WRITTEN);
        if (format.equals("gpkg")) {
            try (var gpkg = new GeoPackageWriter(file, options);
                    var layer = gpkg.layer(table)) {
                rows.forEach(layer::write);
            }
            return file;
        }
        try (RowWriter<Sample> writer =
                format.equals("shp") ? new ShapefileWriter<>(file, table, options) : new GeoJsonWriter<>(file, table)) {
            rows.forEach(writer::write);
        }
        return file;
    }

    private static List<CSVRecord> read(Path file, String... more) throws IOException {
        String[] arguments = Stream.concat(
                        Stream.of(more),
                        Stream.of("-f", "CSV", "/vsistdout/", file.toString(), "-lco", "GEOMETRY=AS_WKT"))
                .toArray(String[]::new);
        String csv = ExternalTool.named("ogr2ogr").run((Object[]) arguments);
        try (var parser = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new StringReader(csv))) {
            return parser.getRecords();
        }
    }

    private static void assertCells(CSVRecord back, Sample row, String format) {
        assertThat(back.get("label")).isEqualTo(row.label());
        assertThat(back.get("count"))
                .isEqualTo(row.count() == null ? "" : row.count().toString());
        if (Double.isNaN(row.lengthM())) {
            assertThat(back.get("length_m")).isEmpty();
        } else {
            assertThat(Double.parseDouble(back.get("length_m"))).isEqualTo(Decimals.round(row.lengthM(), 3));
        }
        String yes = format.equals("shp") ? "T" : "1";
        String no = format.equals("shp") ? "F" : "0";
        assertThat(back.get("flooded")).isEqualTo(row.flooded() == null ? "" : row.flooded() ? yes : no);
    }

    private static void assertShape(CSVRecord back, Shape expected) throws ParseException {
        String wkt = back.get("WKT");
        if (expected.isEmpty()) {
            assertThat(wkt).isEmpty();
            return;
        }
        Geometry read = new WKTReader().read(wkt);
        assertThat(read.getNumPoints()).isEqualTo(expected.size());
        assertThat(read.isValid()).isTrue();
        var ordered = wkt.contains("POLYGON") ? null : read.getCoordinates();
        for (int vertex = 0; ordered != null && vertex < expected.size(); vertex++) {
            assertThat(ordered[vertex].x).isCloseTo(expected.x(vertex), within(2e-9));
            assertThat(ordered[vertex].y).isCloseTo(expected.y(vertex), within(2e-9));
        }
        if (ordered == null) {
            // Outer square of one degree less a triangle of 0.2 by 0.2 degrees; a further square is 0.1 by 0.1.
            double further = 0.01 * (expected.polygons() - 1);
            assertThat(read.getNumGeometries()).isEqualTo(expected.polygons());
            assertThat(read.getArea()).isCloseTo(1 - 0.02 + further, within(1e-9));
        }
    }

    private static boolean isMet(Line line) {
        var window = new RectangleLineIntersector(new Envelope(-29.6, -29.5, 40.3, 40.4));
        for (int i = 0; i < line.size() - 1; i++) {
            if (window.intersects(new Coordinate(line.x(i), line.y(i)), new Coordinate(line.x(i + 1), line.y(i + 1)))) {
                return true;
            }
        }
        return false;
    }
}
