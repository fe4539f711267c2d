package org.spanroom.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.finding.InputException;
import org.spanroom.model.Line;
import org.spanroom.model.network.Street;
import org.spanroom.output.geopackage.GeoPackageWriter;
import org.spanroom.output.shapefile.ShapefileWriter;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.output.table.RowWriter;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;
import org.spanroom.output.text.GeoJsonWriter;

class StreetReaderTest {
    private static final List<Axis> AXES = List.of(
            new Axis("Tern Lane", Line.ofXy(-127.5, 38.9, -127.49, 38.91)),
            new Axis("", Line.ofXy(-127.48, 38.9, -127.48, 38.91)),
            new Axis("Kelp Street", Line.ofXy(-127.47, 38.9, -127.47, 38.91, -127.46, 38.92)),
            new Axis("Tern Lane", Line.ofXy(-127.49, 38.91, -127.485, 38.915)));

    @TempDir
    Path folder;

    /** A line with a name. */
    private record Axis(String name, Line lonLat) {}

    @Test
    void linesOfOneNameAreOneStreet() {
        List<Street> streets = StreetReader.read(geoJson("name"), Optional.empty());

        assertEquals(List.of("Kelp Street", "Tern Lane", ""), names(streets));
        assertEquals(
                List.of(AXES.get(0).lonLat(), AXES.get(3).lonLat()),
                streets.get(1).lonLat());
        assertEquals(List.of(AXES.get(1).lonLat()), streets.get(2).lonLat());
    }

    @Test
    void streetsFarFromAllSpansAreNamed() {
        List<Street> streets = StreetReader.read(geoJson("name"), Optional.empty());
        Path file = Path.of("streets.geojson");

        assertTrue(StreetPlaces.farWords(file, streets, spans(-127.5, 38.94)).isEmpty());
        assertTrue(StreetPlaces.farWords(file, streets, spans(232.5, 38.94)).isEmpty());
        assertTrue(
                StreetPlaces.farWords(file, streets, List.of(Optional.empty())).isEmpty());
        assertEquals(
                Optional.of("No street of streets.geojson is within about 5 km of the spans, so no map shows them;"
                        + " check the layer's reference system and the order of its axes."),
                StreetPlaces.farWords(file, streets, spans(38.9, -127.5 + 180)));
    }

    private static List<Optional<Line>> spans(double lonDeg, double latDeg) {
        return List.of(Optional.empty(), Optional.of(Line.ofXy(lonDeg, latDeg, lonDeg, latDeg + 0.01)));
    }

    @Test
    void everyFormatAndSystemGivesTheSameStreets() {
        Path shapefile = folder.resolve("streets.shp");
        write(new ShapefileWriter<>(shapefile, table("name"), in("EPSG:2226")));
        Path geoPackage = folder.resolve("streets.gpkg");
        try (var file = new GeoPackageWriter(geoPackage, in("EPSG:32609"))) {
            write(file.layer(table("name")));
        }
        List<Street> plain = StreetReader.read(geoJson("name"), Optional.empty());

        for (Path file : List.of(shapefile, geoPackage)) {
            List<Street> streets = StreetReader.read(file, Optional.of("name"));
            assertEquals(names(plain), names(streets));
            for (int i = 0; i < plain.size(); i++) {
                assertNear(plain.get(i).lonLat(), streets.get(i).lonLat());
            }
        }
    }

    private static void assertNear(List<Line> expected, List<Line> found) {
        assertEquals(expected.size(), found.size());
        for (int i = 0; i < expected.size(); i++) {
            assertEquals(expected.get(i).size(), found.get(i).size());
            for (int vertex = 0; vertex < expected.get(i).size(); vertex++) {
                assertEquals(expected.get(i).x(vertex), found.get(i).x(vertex), 1e-7);
                assertEquals(expected.get(i).y(vertex), found.get(i).y(vertex), 1e-7);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"NAME", "Street", "st_name", "FULLNAME", "StreetName", "road_name", "STR_NAME"})
    void usualNamesOfTheFieldAreFound(String field) throws IOException {
        Path file = geoJson("called");
        Files.writeString(file, Files.readString(file).replace("\"called\"", "\"" + field + "\""));

        assertEquals(
                "Kelp Street", StreetReader.read(file, Optional.empty()).get(0).name());
    }

    @Test
    void aFieldOfAnotherNameHasToBeGiven() {
        Path file = geoJson("called");

        assertEquals(List.of(""), names(StreetReader.read(file, Optional.empty())));
        assertEquals(
                "Kelp Street",
                StreetReader.read(file, Optional.of("CALLED")).get(0).name());
        InputException wrong = assertThrows(InputException.class, () -> StreetReader.read(file, Optional.of("caled")));
        assertTrue(wrong.getMessage().contains("no field 'caled'"), wrong.getMessage());
        assertTrue(wrong.getMessage().contains("The nearest are: called"), wrong.getMessage());
    }

    @Test
    void otherGeometriesRefuseTheFile() throws IOException {
        Path file = folder.resolve("areas.geojson");
        Files.writeString(file, """
                {"type":"FeatureCollection","features":[{"type":"Feature","properties":{"name":"Market"},"geometry":
                {"type":"Polygon","coordinates":[[[-127.5,38.9],[-127.4,38.9],[-127.4,39],[-127.5,38.9]]]}}]}
                """);

        InputException refused = assertThrows(InputException.class, () -> StreetReader.read(file, Optional.empty()));

        assertTrue(refused.getMessage().contains("areas.geojson: feature 1 is of type Polygon"), refused.getMessage());
        assertTrue(refused.getMessage().contains("Name a layer of center lines"), refused.getMessage());
    }

    @Test
    void metersWithoutAReferenceSystemAreSuspected() throws IOException {
        Path file = geoJson("name");
        Files.writeString(
                file, Files.readString(file).replaceAll("\\[-127\\.(\\d+), ?38\\.(\\d+)", "[6300$1, 43000$2"));

        InputException refused = assertThrows(InputException.class, () -> StreetReader.read(file, Optional.empty()));

        assertTrue(refused.getMessage().contains("the layer may be in a projected system"), refused.getMessage());
    }

    @Test
    void aFileWithoutAnyLineIsRefused() throws IOException {
        Path file = folder.resolve("none.geojson");
        Files.writeString(file, "{\"type\":\"FeatureCollection\",\"features\":[]}");

        InputException refused = assertThrows(InputException.class, () -> StreetReader.read(file, Optional.empty()));

        assertTrue(refused.getMessage().contains("it has no line that can be used"), refused.getMessage());
    }

    @Test
    void aFileWithoutItsReferenceSystemIsRefused() throws IOException {
        Path file = folder.resolve("streets.shp");
        write(new ShapefileWriter<>(file, table("name"), in("EPSG:2226")));
        Files.delete(folder.resolve("streets.prj"));

        InputException refused = assertThrows(InputException.class, () -> StreetReader.read(file, Optional.empty()));

        assertTrue(refused.getMessage().contains("does not state its reference system"), refused.getMessage());
    }

    @Test
    void streetsOfTheDemoCityHaveNamesOfTheirOwn() {
        List<Street> streets = StreetReader.read(Path.of("sample-gis", "streets.geojson"), Optional.empty());

        assertTrue(streets.size() > 70, streets.size() + " streets");
        for (Street street : streets) {
            assertTrue(!street.name().isEmpty());
            assertEquals(1, street.lonLat().size(), street.name());
        }
    }

    private static List<String> names(List<Street> streets) {
        return streets.stream().map(Street::name).toList();
    }

    private Path geoJson(String field) {
        Path file = folder.resolve("streets.geojson");
        write(new GeoJsonWriter<>(file, table(field)));
        return file;
    }

    private static void write(RowWriter<Axis> writer) {
        try (writer) {
            AXES.forEach(writer::write);
        }
    }

    private static LayerOptions in(String crs) {
        return new LayerOptions(ReferenceSystem.parse(crs), Instant.parse("2026-01-01T00:00:00Z"));
    }

    private static Table<Axis> table(String field) {
        return Table.layer(
                "streets",
                "center lines",
                GeometryKind.LINE,
                axis -> Shape.line(axis.lonLat()),
                List.of(
                        Column.text("width", "width", "how wide", axis -> "narrow"),
                        Column.text(field, field, "name", Axis::name)));
    }
}
