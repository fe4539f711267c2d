package org.spanroom.input.geojson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.InputException;
import org.spanroom.input.LayerSources;
import org.spanroom.input.ReadLayer;
import org.spanroom.input.layer.LayerInfo;
import org.spanroom.input.layer.SourceFeature;

class GeoJsonSourceTest {
    private static final String POINT_FEATURE = """
            {"type":"Feature","id":"a","properties":{"n":1},"geometry":{"type":"Point","coordinates":[1,2]}}""";

    @TempDir
    private Path folder;

    /** RFC 7946 section 1.5, whole. */
    @Test
    void featureCollectionOfTheStandardIsRead() throws IOException {
        ReadLayer layer = read("""
                {
                    "type": "FeatureCollection",
                    "features": [{
                        "type": "Feature",
                        "geometry": {"type": "Point", "coordinates": [102.0, 0.5]},
                        "properties": {"prop0": "value0"}
                    }, {
                        "type": "Feature",
                        "geometry": {
                            "type": "LineString",
                            "coordinates": [[102.0, 0.0], [103.0, 1.0], [104.0, 0.0], [105.0, 1.0]]
                        },
                        "properties": {"prop0": "value0", "prop1": 0.0}
                    }, {
                        "type": "Feature",
                        "geometry": {
                            "type": "Polygon",
                            "coordinates": [
                                [[100.0, 0.0], [101.0, 0.0], [101.0, 1.0], [100.0, 1.0], [100.0, 0.0]]
                            ]
                        },
                        "properties": {"prop0": "value0", "prop1": {"this": "that"}}
                    }]
                }""", "prop0", "prop1");

        assertThat(layer.findings().all()).isEmpty();
        assertThat(layer.header().fields()).containsExactly("prop0", "prop1", "prop1.this");
        assertThat(layer.header().crsDefinition()).contains("OGC:CRS84");
        assertThat(layer.values())
                .containsExactly(
                        Arrays.asList("value0", null), Arrays.asList("value0", 0.0), Arrays.asList("value0", null));
        assertThat(layer.geometries())
                .containsExactly(
                        "POINTS [102.0, 0.5]",
                        "LINES [102.0, 0.0, 103.0, 1.0, 104.0, 0.0, 105.0, 1.0]",
                        "POLYGONS +[100.0, 0.0, 101.0, 0.0, 101.0, 1.0, 100.0, 1.0, 100.0, 0.0]");
    }

    /** RFC 7946 appendix A, examples A.1 to A.7. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Point|[100.0, 0.0]|POINTS [100.0, 0.0]",
                "LineString|[[100.0, 0.0], [101.0, 1.0]]|LINES [100.0, 0.0, 101.0, 1.0]",
                "Polygon|[[[100.0, 0.0], [101.0, 0.0], [101.0, 1.0], [100.0, 1.0], [100.0, 0.0]]]"
                        + "|POLYGONS +[100.0, 0.0, 101.0, 0.0, 101.0, 1.0, 100.0, 1.0, 100.0, 0.0]",
                "Polygon|[[[100.0, 0.0], [101.0, 0.0], [101.0, 1.0], [100.0, 1.0], [100.0, 0.0]],"
                        + " [[100.8, 0.8], [100.8, 0.2], [100.2, 0.2], [100.2, 0.8], [100.8, 0.8]]]"
                        + "|POLYGONS +[100.0, 0.0, 101.0, 0.0, 101.0, 1.0, 100.0, 1.0, 100.0, 0.0]"
                        + " [100.8, 0.8, 100.8, 0.2, 100.2, 0.2, 100.2, 0.8, 100.8, 0.8]",
                "MultiPoint|[[100.0, 0.0], [101.0, 1.0]]|POINTS [100.0, 0.0] [101.0, 1.0]",
                "MultiLineString|[[[100.0, 0.0], [101.0, 1.0]], [[102.0, 2.0], [103.0, 3.0]]]"
                        + "|LINES [100.0, 0.0, 101.0, 1.0] [102.0, 2.0, 103.0, 3.0]",
                "MultiPolygon|[[[[102.0, 2.0], [103.0, 2.0], [103.0, 3.0], [102.0, 3.0], [102.0, 2.0]]],"
                        + " [[[100.0, 0.0], [101.0, 0.0], [101.0, 1.0], [100.0, 1.0], [100.0, 0.0]],"
                        + " [[100.2, 0.2], [100.2, 0.8], [100.8, 0.8], [100.8, 0.2], [100.2, 0.2]]]]"
                        + "|POLYGONS +[102.0, 2.0, 103.0, 2.0, 103.0, 3.0, 102.0, 3.0, 102.0, 2.0]"
                        + " +[100.0, 0.0, 101.0, 0.0, 101.0, 1.0, 100.0, 1.0, 100.0, 0.0]"
                        + " [100.2, 0.2, 100.2, 0.8, 100.8, 0.8, 100.8, 0.2, 100.2, 0.2]"
            })
    void geometriesOfTheStandardAreReadWhereverTheirTypeStands(String type, String coordinates, String expected)
            throws IOException {
        for (String members : List.of(
                "\"type\": \"" + type + "\", \"coordinates\": " + coordinates,
                "\"coordinates\": " + coordinates + ", \"type\": \"" + type + "\"")) {
            assertThat(read("{" + members + "}").geometries()).containsExactly(expected);
            assertThat(read("{\"geometry\": {" + members + "}, \"type\": \"Feature\", \"properties\": null}")
                            .geometries())
                    .containsExactly(expected);
        }
    }

    /** RFC 7946 appendix A.7; a collection of one kind is of our own making. */
    @Test
    void collectionOfOneKindCountsAsThatKindAndAMixedOneAsOther() throws IOException {
        String point = "{\"type\": \"Point\", \"coordinates\": [100.0, 0.0]}";
        String line = "{\"type\": \"LineString\", \"coordinates\": [[101.0, 0.0], [102.0, 1.0]]}";
        String polygon = "{\"type\": \"Polygon\", \"coordinates\": [[[0, 0], [1, 0], [1, 1], [0, 0]]]}";

        assertThat(read(collection(point, line)).geometries()).containsExactly("OTHER");
        assertThat(read(collection(line, collection(line, "{\"coordinates\":[],\"type\":\"Point\"}")))
                        .geometries())
                .containsExactly("LINES [101.0, 0.0, 102.0, 1.0] [101.0, 0.0, 102.0, 1.0]");
        assertThat(read(collection(polygon, polygon)).geometries())
                .containsExactly(
                        "POLYGONS +[0.0, 0.0, 1.0, 0.0, 1.0, 1.0, 0.0, 0.0] +[0.0, 0.0, 1.0, 0.0, 1.0, 1.0, 0.0, 0.0]");
        assertThat(read(collection()).geometries()).containsExactly("NONE");
    }

    @Test
    void heightsAreKeptWhereEveryVertexHasOneAndFurtherNumbersAreDropped() throws IOException {
        assertThat(read("{\"type\":\"LineString\",\"coordinates\":[[1,2,3,9],[4,5,6]]}")
                        .geometries())
                .containsExactly("LINES Z [1.0, 2.0, 3.0, 4.0, 5.0, 6.0]");

        ReadLayer mixed = read("{\"type\":\"LineString\",\"coordinates\":[[1,2,3],[4,5]]}");
        assertThat(mixed.geometries()).containsExactly("LINES [1.0, 2.0, 4.0, 5.0]");
        assertThat(mixed.details())
                .containsExactly("some vertices have no height; the heights were ignored (1 feature, number 1)");
    }

    /** A real city's export: a fourth ordinate of null. RFC 7946 section 3.1.1 lets a reader ignore what follows the third. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "3,null",
                "3,9",
                "3,\"m\"",
                "3,{}",
                "3,{\"m\":[1,[2]]}",
                "3,[]",
                "3,[[1,2],[3]]",
                "3,true",
                "3,NaN",
                "3,1e999",
                "3,null,null,null",
                "3,\"\",{\"a\":null},[5],6"
            })
    void whatFollowsTheThirdOrdinateIsPassedOver(String tail) throws IOException {
        for (String head : List.of("1,2,", "-1.5,2e0,")) {
            ReadLayer layer = read("{\"type\":\"LineString\",\"coordinates\":[[" + head + tail + "],[4,5,6,null],["
                    + head + tail + "]]}");

            assertThat(layer.findings().all()).isEmpty();
            double x = Double.parseDouble(head.substring(0, head.indexOf(',')));
            assertThat(layer.geometries())
                    .containsExactly("LINES Z [" + x + ", 2.0, 3.0, 4.0, 5.0, 6.0, " + x + ", 2.0, 3.0]");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"null", "null,0", "\"5\"", "\"\",1", "{\"z\":5}", "true"})
    void aThirdOrdinateThatIsNoNumberCostsTheHeightAndNotTheFeature(String tail) throws IOException {
        String vertex = "," + tail + "]";
        ReadLayer none = read("{\"type\":\"LineString\",\"coordinates\":[[1,2" + vertex + ",[4,5" + vertex + "]}");
        ReadLayer some = read("{\"type\":\"LineString\",\"coordinates\":[[1,2" + vertex + ",[4,5,6]]}");
        ReadLayer point = read("{\"type\":\"Point\",\"coordinates\":[1,2" + vertex + "}");

        assertThat(none.geometries()).containsExactly("LINES [1.0, 2.0, 4.0, 5.0]");
        assertThat(some.geometries()).containsExactly("LINES [1.0, 2.0, 4.0, 5.0]");
        assertThat(point.geometries()).containsExactly("POINTS [1.0, 2.0]");
        assertThat(some.details()).anySatisfy(text -> assertThat(text).contains("some vertices have no height"));
        assertThat(none.details().toString().contains("a height is not a number; it was ignored"))
                .isEqualTo(!tail.startsWith("null"));
    }

    @Test
    void valuesInsideObjectsAndListsAreFieldsByTheirPaths() throws IOException {
        ReadLayer layer = read(
                """
                {"type":"Feature","geometry":null,"properties":{
                 "id":"S1","start":{"id":"N1","phase":null,"at":{"x":1.5}},"end":null,"uses":["dark",null,"lit",3,0.5],"one":[7],
                 "none":[],"networks":[{"id":"A","tags":["p","q"]},{"name":"B"},{"id":"C","tags":["r"]}],"dotted.name":true,
                 "empty":{},"mixed":[1,{"x":2},[3,[4]]]}}""",
                "start.id",
                "start.phase",
                "start.at.x",
                "start",
                "end",
                "end.id",
                "uses",
                "one",
                "none",
                "networks.id",
                "networks.name",
                "networks.tags",
                "dotted.name",
                "mixed",
                "mixed.x");

        assertThat(layer.values().get(0))
                .containsExactly(
                        "N1",
                        null,
                        1.5,
                        null,
                        null,
                        null,
                        "dark, lit, 3, 0.5",
                        7L,
                        null,
                        "A, C",
                        "B",
                        "p, q, r",
                        true,
                        "1, 3, 4",
                        2L);
        assertThat(layer.header().fields())
                .containsExactly(
                        "id",
                        "start.id",
                        "start.phase",
                        "start.at.x",
                        "end",
                        "uses",
                        "one",
                        "none",
                        "networks.id",
                        "networks.tags",
                        "networks.name",
                        "dotted.name",
                        "empty",
                        "mixed",
                        "mixed.x");
        assertThat(layer.findings().all()).isEmpty();
    }

    /** The next feature starts empty, whatever the one before left; a second occurrence is reported, not joined. */
    @Test
    void valuesOfOneFeatureNeverReachTheNext() throws IOException {
        ReadLayer layer = read(
                "{\"type\":\"FeatureCollection\",\"features\":["
                        + Stream.of(
                                        "{\"a\":[1,2]}",
                                        "{}",
                                        "{\"a\":[3]}",
                                        "{\"a\":{\"b\":4,\"b\":5}}",
                                        "{\"a\":[6,7],\"a\":8}")
                                .map(properties ->
                                        "{\"type\":\"Feature\",\"geometry\":null,\"properties\":" + properties + "}")
                                .collect(Collectors.joining(","))
                        + "]}",
                "a",
                "a.b");

        assertThat(layer.values())
                .containsExactly(
                        Arrays.asList("1, 2", null),
                        Arrays.asList(null, null),
                        Arrays.asList(3L, null),
                        Arrays.asList(null, 5L),
                        Arrays.asList(8L, null));
        assertThat(layer.details())
                .containsExactly(
                        "the property \"a\" occurs twice in one feature; the last one was used (1 feature, number 5)",
                        "the property \"a.b\" occurs twice in one feature; the last one was used (1 feature, number 4)");
    }

    @Test
    void membersComeInAnyOrderAndForeignOnesArePassedOver() throws IOException {
        ReadLayer layer = read("""
                {"x": [1, {"features": []}], "features": [
                  {"properties": {"deep": {"a": [1, {"b": 2}]}, "v": true}, "foreign": {"geometry": 1, "id": 2},
                   "geometry": {"coordinates": [1, 2], "crs": null, "type": "Point"}, "id": 7, "type": "Feature"}
                 ], "y": "z", "type": "FeatureCollection"}""", "v", "deep", "missing", "v");

        assertThat(layer.findings().all()).isEmpty();
        assertThat(layer.header().fields()).containsExactly("deep.a", "deep.a.b", "v");
        assertThat(layer.features().get(0).fileId()).isEqualTo("7");
        assertThat(layer.values()).containsExactly(Arrays.asList(true, null, null, true));
    }

    @Test
    void valuesKeepTheirTypes() throws IOException {
        ReadLayer layer = read("""
                {"type":"Feature","geometry":null,"properties":{
                 "s":"\\u00e9\\n","i":-9007199254740993,"d":1.5e-3,"t":true,"f":false,"n":null,
                 "big":123456789012345678901234567890,"nan":NaN,"huge":1e999}}""", "s", "i", "d", "t", "f", "n", "big", "nan", "huge");

        assertThat(layer.values().get(0))
                .containsExactly(
                        "é\n", -9007199254740993L, 0.0015, true, false, null, 1.2345678901234568e29, "NaN", "1e999");
        assertThat(layer.geometries()).containsExactly("NONE");
    }

    static Stream<Arguments> sequences() {
        String other = POINT_FEATURE.replace("\"a\"", "\"b\"");
        return Stream.of(
                Arguments.of("newline-delimited", POINT_FEATURE + "\n" + other + "\n"),
                Arguments.of("Windows line ends, blank lines, no last one", POINT_FEATURE + "\r\n\r\n" + other),
                Arguments.of("RFC 8142 section 2", "\u001e" + POINT_FEATURE + "\n\u001e" + other + "\n"),
                Arguments.of(
                        "RFC 8142, text over several lines",
                        "\u001e" + POINT_FEATURE.replace(",", ",\n") + "\n\u001e" + other),
                Arguments.of("one after another", POINT_FEATURE + other),
                Arguments.of("a collection a line", collectionOf(POINT_FEATURE) + "\n" + collectionOf(other)));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("sequences")
    void sequencesOfTextsAreOneLayer(String name, String text) throws IOException {
        ReadLayer layer = read(text, "n");

        assertThat(layer.features()).extracting(SourceFeature::fileId).containsExactly("a", "b");
        assertThat(layer.features()).extracting(SourceFeature::number).containsExactly(1L, 2L);
        assertThat(layer.findings().all()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "\u001e"})
    void brokenTextOfASequenceIsRejectedByItself(String separator) throws IOException {
        String text = IntStream.rangeClosed(1, 150)
                .mapToObj(i -> separator + (i == 120 ? POINT_FEATURE.substring(0, 50) : POINT_FEATURE) + "\n")
                .collect(Collectors.joining());

        ReadLayer layer = read(text);

        assertThat(layer.met()).isEqualTo(150);
        assertThat(layer.features())
                .hasSize(149)
                .extracting(SourceFeature::number)
                .doesNotContain(120L);
        assertThat(layer.codes()).containsExactly(FindingCode.UNREADABLE_FEATURE);
        assertThat(layer.details().get(0)).contains("feature 120", separator.isEmpty() ? "line 120" : "record 120");
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-8", "UTF-16LE", "UTF-16BE", "UTF-32LE", "UTF-32BE"})
    void unicodeEncodingsAreReadWithAndWithoutMark(String name) throws IOException {
        String text = collectionOf(POINT_FEATURE.replace("\"a\"", "\"Ström 管 \uD83D\uDE80\""));
        for (String mark : List.of("\uFEFF", "")) {
            Path file = Files.write(folder.resolve("a.geojson"), (mark + text).getBytes(Charset.forName(name)));

            assertThat(ReadLayer.of(file).features())
                    .extracting(SourceFeature::fileId)
                    .containsExactly("Ström 管 \uD83D\uDE80");
        }
    }

    @Test
    void textThatIsNotInUnicodeIsRefused() throws IOException {
        Path latin = Files.write(
                folder.resolve("a.json"),
                collectionOf(POINT_FEATURE.replace("\"a\"", "\"Str\u00F6m\"")).getBytes(StandardCharsets.ISO_8859_1));
        Path halfPair = Files.write(
                folder.resolve("b.json"),
                collectionOf(POINT_FEATURE.replace("\"a\"", "\"\uD83D\"")).getBytes(StandardCharsets.UTF_16BE));
        byte[] lone = new String(Files.readAllBytes(halfPair), StandardCharsets.ISO_8859_1)
                .replace("\u00FF\u00FD", "\u00D8=")
                .getBytes(StandardCharsets.ISO_8859_1);
        Files.write(halfPair, lone);

        assertThatThrownBy(() -> ReadLayer.of(latin))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("UTF-8");
        assertThatThrownBy(() -> ReadLayer.of(halfPair))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("UTF-8");
    }

    /** Names as in the GeoJSON specification of 2008, section 3, and OGC 09-048r3 for the URN and URL forms. */
    @ParameterizedTest
    @CsvSource({
        "urn:ogc:def:crs:EPSG::27700, EPSG:27700",
        "urn:ogc:def:crs:EPSG:6.9:4326, EPSG:4326",
        "EPSG:2263, EPSG:2263",
        "epsg:2263, EPSG:2263",
        "http://www.opengis.net/def/crs/EPSG/0/3857, EPSG:3857",
        "http://www.opengis.net/gml/srs/epsg.xml#4326, EPSG:4326",
        "urn:ogc:def:crs:OGC:1.3:CRS84, OGC:CRS84",
        "OGC:CRS84, OGC:CRS84",
        "http://www.opengis.net/def/crs/OGC/1.3/CRS84, OGC:CRS84",
        "my own system, my own system"
    })
    void oldReferenceSystemMemberIsHonoured(String name, String expected) throws IOException {
        String crs = "\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"" + name + "\"}}";

        assertThat(read("{" + crs + ",\"type\":\"FeatureCollection\",\"features\":[]}")
                        .header()
                        .crsDefinition())
                .contains(expected);
    }

    @Test
    void referenceSystemIsFoundAfterTheFeaturesToo() throws IOException {
        String many = Stream.generate(() -> POINT_FEATURE).limit(2_000).collect(Collectors.joining(","));
        String crs = "\"crs\": {\"type\": \"name\", \"properties\": {\"name\": \"EPSG:2263\"}}";
        String decoy = POINT_FEATURE.replace("\"n\":1", "\"crs\": {\"properties\": {\"name\": \"EPSG:1\"}}");

        ReadLayer stated = read("{\"features\":[" + many + "]," + crs + ",\"type\":\"FeatureCollection\"}\n");
        ReadLayer unstated = read("{\"type\":\"FeatureCollection\",\"features\":[" + many + "," + decoy + "]}\n");

        assertThat(stated.header().crsDefinition()).contains("EPSG:2263");
        assertThat(stated.features()).hasSize(2_000);
        assertThat(unstated.header().crsDefinition()).contains("OGC:CRS84");
    }

    @Test
    void nullAndLinkedReferenceSystemsCountAsUnknown() throws IOException {
        for (String crs : List.of("null", "{\"type\":\"link\",\"properties\":{\"href\":\"http://example.org/\"}}")) {
            assertThat(read("{\"crs\":" + crs + ",\"type\":\"FeatureCollection\",\"features\":[]}")
                            .header()
                            .crsDefinition())
                    .isEmpty();
        }
    }

    @Test
    void featureOfAnotherReferenceSystemIsRejected() throws IOException {
        String stray = POINT_FEATURE.replace(
                "\"id\"", "\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"EPSG:2263\"}},\"id\"");

        assertThat(read(collectionOf(stray)).details())
                .containsExactly("feature 1 of the layer: it states a reference system other than that of the layer");
    }

    @Test
    void listNamesTheOneLayerItsTypesAndItsCount() throws IOException {
        String line = "{\"type\":\"Feature\",\"geometry\":{\"type\":\"LineString\",\"coordinates\":[[1,2],[3,4]]}}";
        Path file = Files.writeString(folder.resolve("city mains.geojson"), collectionOf(POINT_FEATURE + "," + line));

        assertThat(LayerSources.list(file)).containsExactly(new LayerInfo("city mains", "LineString, Point", 2));
    }

    private ReadLayer read(String text, String... wanted) throws IOException {
        return ReadLayer.of(Files.writeString(folder.resolve("layer.geojson"), text), wanted);
    }

    private static String collection(String... geometries) {
        return "{\"type\": \"GeometryCollection\", \"geometries\": [" + String.join(",", geometries) + "]}";
    }

    private static String collectionOf(String features) {
        return "{\"type\":\"FeatureCollection\",\"features\":[" + features + "]}";
    }
}
