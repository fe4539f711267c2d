package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertTimeout;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.InputException;
import org.spanroom.testing.OpenData;

/** What is wrong in GeoJSON ends as a finding for the feature, or in one line for the file. */
class GeoJsonFaultsTest {
    private static final Duration LONGEST = Duration.ofSeconds(30);
    private static final String GOOD =
            "{\"type\":\"Feature\",\"geometry\":{\"type\":\"Point\",\"coordinates\":[1,2]},\"properties\":{\"n\":5}}";

    @TempDir
    private Path folder;

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{'type':'Point','coordinates':[1]}|UNREADABLE_FEATURE|one number only",
                "{'type':'Point','coordinates':['1',2]}|BAD_COORDINATE|the text \"1\"",
                "{'type':'Point','coordinates':[1,null]}|BAD_COORDINATE|null",
                "{'type':'Point','coordinates':[NaN,2]}|BAD_COORDINATE|NaN",
                "{'type':'Point','coordinates':[1,-Infinity]}|BAD_COORDINATE|-Infinity",
                "{'type':'LineString','coordinates':[[1,2],[1e400,2]]}|BAD_COORDINATE|vertex 2 is Infinity",
                "{'type':'Point','coordinates':{'x':1}}|UNREADABLE_FEATURE|is an object",
                "{'type':'Point','coordinates':[[1,2]]}|UNREADABLE_FEATURE|not nested as those of a Point",
                "{'type':'LineString','coordinates':[1,2]}|UNREADABLE_FEATURE|not nested as those of a LineString",
                "{'type':'LineString','coordinates':[[1,2],[]]}|UNREADABLE_FEATURE|not nested",
                "{'type':'LineString','coordinates':[[1,2],3]}|UNREADABLE_FEATURE|a number where a position",
                "{'type':'LineString','coordinates':[[1,2],[[3,4]]]}|UNREADABLE_FEATURE|several depths",
                "{'type':'LineString','coordinates':[[1,[2,3]]]}|UNREADABLE_FEATURE|a list where a number",
                "{'type':'LineString','coordinates':[[[[[[1,2]]]]]]}|UNREADABLE_FEATURE|more than 4 deep",
                "{'type':'point','coordinates':[1,2]}|UNREADABLE_FEATURE|\"point\" is not a GeoJSON type",
                "{'type':7,'coordinates':[1,2]}|UNREADABLE_FEATURE|a \"type\" is a number",
                "{'coordinates':[1,2]}|UNREADABLE_FEATURE|no \"type\"",
                "{'type':'Point'}|UNREADABLE_FEATURE|no \"coordinates\"",
                "{'type':'GeometryCollection','coordinates':[1,2]}|UNREADABLE_FEATURE|no \"geometries\"",
                "{'type':'Point','type':'LineString','coordinates':[1,2]}|UNREADABLE_FEATURE|two types",
                "{'type':'Point','coordinates':[1,2],'coordinates':[3,4]}|UNREADABLE_FEATURE|occurs twice",
                "[1,2]|UNREADABLE_FEATURE|a geometry is a list",
                "true|UNREADABLE_FEATURE|a geometry is true or false"
            })
    void damagedGeometryRejectsItsFeatureOnly(String geometry, FindingCode code, String words) throws IOException {
        String damaged = "{\"properties\":{\"n\":4},\"geometry\":" + geometry.replace('\'', '"')
                + ",\"later\":{\"a\":[{}]},\"type\":\"Feature\"}";

        ReadLayer layer = read("{\"type\":\"FeatureCollection\",\"features\":[" + damaged + "," + GOOD + "]}", "n");

        assertThat(layer.met()).isEqualTo(2);
        assertThat(layer.values()).containsExactly(List.of(5L));
        assertThat(layer.codes()).containsExactly(code);
        assertThat(layer.details().get(0)).contains(words);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "null",
                "[]",
                "7",
                "{}",
                "{\"type\":\"Point\",\"coordinates\":[1,2]}",
                "{\"type\":\"Feature\",\"geometry\":null,\"properties\":[1,[2]]}",
                "{\"type\":\"Feature\",\"geometry\":null,\"geometry\":null}",
                "{\"type\":\"Feature\",\"properties\":null,\"properties\":{}}"
            })
    void whatIsNoFeatureIsRejectedAndCounted(String feature) throws IOException {
        ReadLayer layer = read("{\"type\":\"FeatureCollection\",\"features\":[" + feature + "," + GOOD + "]}");

        assertThat(layer.met()).isEqualTo(2);
        assertThat(layer.features()).hasSize(1);
        assertThat(layer.codes()).containsExactly(FindingCode.UNREADABLE_FEATURE);
    }

    @Test
    void partsTooShortAreLeftOutWithAFinding() throws IOException {
        ReadLayer lines = read("{\"type\":\"MultiLineString\",\"coordinates\":[[[1,2]],[],[[3,4],[5,6]]]}");
        ReadLayer rings = read("{\"type\":\"MultiPolygon\",\"coordinates\":[[[[0,0],[9,0]],[[1,1],[2,1],[1,2],[1,1]]],"
                + "[[[0,0],[1,0],[1,1],[0,0]]]]}");

        assertThat(lines.geometries()).containsExactly("LINES [3.0, 4.0, 5.0, 6.0]");
        assertThat(lines.codes()).containsExactly(FindingCode.DEGENERATE_PART);
        assertThat(rings.geometries()).containsExactly("POLYGONS +[0.0, 0.0, 1.0, 0.0, 1.0, 1.0, 0.0, 0.0]");
        assertThat(rings.codes()).containsExactly(FindingCode.DEGENERATE_PART);
    }

    @Test
    void propertyGivenTwiceCountsLastAndIsReportedOnceForTheLayer() throws IOException {
        String twice = GOOD.replace("\"n\":5", "\"n\":5,\"n\":6");

        ReadLayer layer = read("{\"type\":\"FeatureCollection\",\"features\":[" + twice + "," + twice + "]}", "n");

        assertThat(layer.values()).containsExactly(List.of(6L), List.of(6L));
        assertThat(layer.details())
                .containsExactly("the property \"n\" occurs twice in one feature; the last one was used (2 features,"
                        + " first number 1)");
    }

    @Test
    void brokenJsonEndsTheReadingAtItsPlace() throws IOException {
        Path file = write("{\"type\":\"FeatureCollection\",\"features\":[\n" + (GOOD + ",\n").repeat(200)
                + GOOD.replace(":[1,2]", ":[1 2]") + "]}");

        assertThatThrownBy(() -> ReadLayer.of(file))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("layer.geojson")
                .hasMessageContaining("line 202, column ")
                .hasMessageContaining("feature 201")
                .hasMessageNotContaining("\n");
    }

    @Test
    void fileCutOffAnywhereIsNeverAShorterLayer() throws IOException {
        String whole = "{\"type\":\"FeatureCollection\",\"features\":[" + GOOD + "," + GOOD + "]}";
        for (int length = 1; length < whole.length(); length++) {
            Path file = write(whole.substring(0, length));
            assertThatThrownBy(() -> ReadLayer.of(file)).as("%d bytes", length).isInstanceOf(InputException.class);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{}",
                "{\"type\":\"Topology\",\"objects\":{}}",
                "{\"type\":\"FeatureCollection\"}",
                "{\"type\":\"FeatureCollection\",\"features\":{}}",
                "{\"features\":[],\"type\":\"Feature\"}",
                "{\"features\":[]}",
                "[{\"type\":\"Feature\",\"geometry\":null,\"properties\":{}}]",
                "[]",
                "   \n ",
                "{\"type\":\"FeatureCollection\",\"features\":[]} trailing",
                "{\"type\":\"FeatureCollection\",\"features\":[] /* comment */}"
            })
    void whatIsNoGeoJsonIsRefusedInOneLine(String text) throws IOException {
        Path file = write(text);

        assertThatThrownBy(() -> ReadLayer.of(file))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("layer.geojson: ")
                .hasMessageNotContaining("\n");
    }

    @Test
    void deepNestingCostsNoStack() throws IOException {
        String deep = "[".repeat(10_000) + "]".repeat(10_000);
        String collections = "{\"type\":\"GeometryCollection\",\"geometries\":[".repeat(1_000) + "]}".repeat(1_000);
        String feature =
                "{\"type\":\"Feature\",\"properties\":{\"n\":" + deep + "},\"x\":" + deep + ",\"geometry\":%s}";

        ReadLayer layer = assertTimeout(
                LONGEST,
                () -> read(
                        "{\"type\":\"FeatureCollection\",\"features\":["
                                + String.format(feature, "null") + ","
                                + String.format(feature, "{\"type\":\"Point\",\"coordinates\":" + deep + "}") + ","
                                + String.format(feature, collections) + "," + GOOD + "]}",
                        "n"));

        assertThat(layer.met()).isEqualTo(4);
        assertThat(layer.rejected()).isEqualTo(2);
        assertThat(layer.values()).hasSize(2).endsWith(List.of(5L));
        Path bottomless = write("{\"x\":" + "[".repeat(100_000));
        assertThatThrownBy(() -> ReadLayer.of(bottomless)).isInstanceOf(InputException.class);
    }

    @Test
    void longLinesTextsAndPropertyListsArePassedOver() throws IOException {
        Path file = folder.resolve("layer.geojson");
        try (BufferedWriter writer = Files.newBufferedWriter(file)) {
            writer.write(
                    "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"geometry\":null,\"properties\":{");
            for (int i = 0; i < 1_000_000; i++) {
                writer.write("\"p" + i + "\":" + i + ",");
            }
            writer.write("\"long\":\"" + "x".repeat(30_000_000) + "\"}}," + GOOD + "]}");
        }

        ReadLayer layer = assertTimeout(LONGEST, () -> ReadLayer.of(file, "n", "p999999"));

        assertThat(layer.met()).isEqualTo(2);
        assertThat(layer.values().get(0)).containsExactly(null, 999_999L);
        assertThatThrownBy(() -> ReadLayer.of(file, "long")).isInstanceOf(InputException.class);
    }

    /** mapbox/geojsonhint (ISC): every file of its folder "good" is whole. */
    @Test
    void goodFilesOfAPublicLinterAreReadWithoutFindings() {
        assertThat(OpenData.filesBelow("odd-files/geojsonhint/good", ".geojson"))
                .hasSizeGreaterThan(10)
                .allSatisfy(file -> {
                    ReadLayer layer = ReadLayer.withAllFields(file);
                    assertThat(layer.findings().all()).isEmpty();
                    assertThat(layer.met()).isPositive();
                });
    }

    private ReadLayer read(String text, String... wanted) throws IOException {
        return ReadLayer.of(write(text), wanted);
    }

    private Path write(String text) throws IOException {
        return Files.writeString(folder.resolve("layer.geojson"), text);
    }
}
