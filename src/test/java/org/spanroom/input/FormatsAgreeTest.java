package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.StringJoiner;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.testing.ExternalTool;

/** Files that GDAL's ogr2ogr writes: the same data in every format is the same layer. */
class FormatsAgreeTest {
    private static final List<String> FIELDS = List.of("name", "whole", "real", "day");

    @TempDir
    private Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"Point", "MultiPoint", "LineString", "MultiLineString", "Polygon", "MultiPolygon"})
    void sameDataInEveryFormatIsTheSameLayer(String type) throws IOException {
        for (boolean heights : new boolean[] {false, true}) {
            Path json = Files.writeString(folder.resolve("a.geojson"), collection(type, heights, 60));
            List<String> geometries = ReadLayer.of(json).geometries();
            List<List<Object>> values =
                    ReadLayer.of(json, FIELDS.toArray(new String[0])).values();
            assertThat(geometries).hasSize(60);

            var others = new ArrayList<>(List.of(
                    convert(json, "GPKG", "b.gpkg"),
                    convert(json, "ESRI Shapefile", "c.shp", "-lco", "ENCODING=UTF-8"),
                    convert(json, "ESRI Shapefile", "d.shp", "-lco", "ENCODING=ISO-8859-1")));
            if (!type.contains("Polygon")) { // ogr2ogr turns rings the other way in sequences
                others.add(convert(json, "GeoJSONSeq", "e.geojsonl", "-lco", "COORDINATE_PRECISION=10"));
                others.add(
                        convert(json, "GeoJSONSeq", "f.geojsons", "-lco", "RS=YES", "-lco", "COORDINATE_PRECISION=10"));
            }
            for (Path other : others) {
                ReadLayer layer = ReadLayer.of(other, FIELDS.toArray(new String[0]));
                assertThat(layer.findings().all()).as(other.toString()).isEmpty();
                assertThat(layer.geometries()).as(other.toString()).isEqualTo(geometries);
                assertThat(layer.values()).as(other.toString()).isEqualTo(values);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"EPSG:2263, 2263", "EPSG:32633, 32633", "EPSG:4326, 4326", "EPSG:3857, 3857"})
    void referenceSystemIsFoundInEveryFormat(String code, String number) throws IOException {
        Path json = Files.writeString(folder.resolve("a.geojson"), collection("Point", false, 3));

        assertThat(crs(convert(json, "GPKG", "b.gpkg", "-a_srs", code))).isEqualTo(code);
        assertThat(crs(convert(json, "GeoJSON", "c.geojson", "-a_srs", code)))
                .isEqualTo(code.equals("EPSG:4326") ? "OGC:CRS84" : "EPSG:" + number);
        assertThat(crs(convert(json, "ESRI Shapefile", "d.shp", "-a_srs", code)))
                .matches("(PROJCS|GEOGCS)\\[.*\\]");
    }

    @Test
    void geometriesOfOtherKindsAreToldApartInAGeoPackage() throws IOException {
        Path csv = Files.writeString(folder.resolve("a.csv"), """
                WKT,n
                "CIRCULARSTRING (0 0, 1 1, 2 0)",1
                "COMPOUNDCURVE ((0 0, 1 1), CIRCULARSTRING (1 1, 2 2, 3 1))",2
                "CURVEPOLYGON (CIRCULARSTRING (0 0, 1 1, 2 0, 1 -1, 0 0))",3
                "LINESTRING M (0 0 5, 1 1 6)",4
                "LINESTRING ZM (0 0 3 5, 1 1 4 6)",5
                "GEOMETRYCOLLECTION (POINT (1 2), LINESTRING (3 4, 5 6))",6
                "POINT EMPTY",7
                "TIN (((0 0 0, 0 0 1, 0 1 0, 0 0 0)))",8
                """);
        Path gpkg = convert(csv, "GPKG", "b.gpkg", "-nlt", "GEOMETRY", "-a_srs", "EPSG:4326");

        ReadLayer layer = ReadLayer.of(gpkg);

        assertThat(layer.findings().all()).isEmpty();
        assertThat(layer.geometries())
                .containsExactly(
                        "OTHER",
                        "OTHER",
                        "OTHER",
                        "LINES [0.0, 0.0, 1.0, 1.0]",
                        "LINES Z [0.0, 0.0, 3.0, 1.0, 1.0, 4.0]",
                        "OTHER",
                        "NONE",
                        "OTHER");
        assertThat(layer.features())
                .extracting(SourceFeature::geometryType)
                .startsWith("CircularString", "CompoundCurve", "CurvePolygon", "LineStringM", "LineStringZM");
    }

    private Path convert(Path from, String format, String name, String... options) {
        Path to = folder.resolve(name);
        Object[] arguments = new Object[options.length + 5];
        arguments[0] = "-overwrite";
        arguments[1] = "-f";
        arguments[2] = format;
        arguments[3] = to;
        arguments[4] = from;
        System.arraycopy(options, 0, arguments, 5, options.length);
        deleteQuietly(to, format);
        ExternalTool.named("ogr2ogr").run(arguments);
        return to;
    }

    private static void deleteQuietly(Path to, String format) {
        if (!format.equals("ESRI Shapefile")) {
            to.toFile().delete();
        }
    }

    private static String crs(Path file) {
        return ReadLayer.of(file).header().crsDefinition().orElse("none");
    }

    /** Features with fixed seeds; outer rings run clockwise, as shapefiles have them, so that no ring must be turned. */
    private static String collection(String type, boolean heights, int count) {
        var random = new Random(17);
        var features = new StringJoiner(",\n", "{\"type\":\"FeatureCollection\",\"features\":[\n", "\n]}\n");
        for (int i = 0; i < count; i++) {
            boolean bare = i % 7 == 3;
            features.add("{\"type\":\"Feature\",\"properties\":{\"name\":" + (bare ? "null" : "\"Straße " + i + "\"")
                    + ",\"whole\":" + (bare ? "null" : String.valueOf(i - 10))
                    + ",\"real\":" + (bare ? "null" : String.valueOf(i + 0.25))
                    + ",\"day\":" + (bare ? "null" : String.format(Locale.ROOT, "\"2024-02-%02d\"", 1 + i % 28))
                    + "},\"geometry\":" + geometry(type, random, heights) + "}");
        }
        return features.toString();
    }

    private static String geometry(String type, Random random, boolean heights) {
        double x = random.nextInt(100);
        double y = random.nextInt(50);
        String simple = type.replace("Multi", "");
        String first = coordinates(simple, random, x, y, heights);
        String second = coordinates(simple, random, x + 20, y, heights);
        return "{\"type\":\"" + type + "\",\"coordinates\":"
                + (type.equals(simple) ? first : "[" + first + "," + second + "]") + "}";
    }

    private static String coordinates(String type, Random random, double x, double y, boolean heights) {
        return switch (type) {
            case "Point" -> position(x + random.nextInt(1024) / 1024.0, y, random, heights);
            case "LineString" ->
                "["
                        + position(x, y, random, heights)
                        + ","
                        + position(x + random.nextInt(1024) / 1024.0, y + 1, random, heights)
                        + ","
                        + position(x, y + random.nextInt(1024) / 1024.0, random, heights)
                        + "]";
            default -> "[" + ring(x, y, 8, true, heights) + "," + ring(x + 1, y + 1, 2, false, heights) + "]";
        };
    }

    /** At one height, because ogr2ogr turns holes of uneven rings clockwise, which makes outer rings of them. */
    private static String ring(double x, double y, double size, boolean clockwise, boolean heights) {
        String start = position(x, y, 7.5, heights);
        String a = position(x, y + size, 7.5, heights);
        String b = position(x + size, y + size, 7.5, heights);
        String c = position(x + size, y, 7.5, heights);
        return clockwise
                ? "[" + String.join(",", start, a, b, c, start) + "]"
                : "[" + String.join(",", start, c, b, a, start) + "]";
    }

    private static String position(double x, double y, Random random, boolean heights) {
        return position(x, y, random.nextInt(1000) / 8.0, heights);
    }

    private static String position(double x, double y, double height, boolean heights) {
        return "[" + x + "," + y + (heights ? "," + height : "") + "]";
    }
}
