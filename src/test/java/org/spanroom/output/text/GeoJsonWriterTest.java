package org.spanroom.output.text;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.model.Line;
import org.spanroom.output.Sample;
import org.spanroom.output.table.Table;
import org.spanroom.output.table.Text;

class GeoJsonWriterTest {
    @TempDir
    Path folder;

    @Test
    void eachFeatureHasALineWithEveryMember() throws IOException {
        Path file = write(Sample.LINES, Sample.of("a \"b\"\n", -30, 40, -29.9999999994, 40.12345678951), Sample.EMPTY);

        assertThat(Files.readString(file)).isEqualTo("""
                {"type":"FeatureCollection","name":"routes","features":[
                {"type":"Feature","properties":{"label":"a \\"b\\"\\u000a","count":6,"length_m":12.346,"flooded":true},\
                "geometry":{"type":"LineString","coordinates":[[-30,40],[-29.999999999,40.12345679]]}},
                {"type":"Feature","properties":{"label":null,"count":null,"length_m":null,"flooded":null},"geometry":null}
                ]}
                """);
    }

    @Test
    void aLayerWithoutRowsIsValid() throws IOException {
        JsonNode json = new ObjectMapper().readTree(write(Sample.LINES).toFile());

        assertThat(json.get("features")).isEmpty();
    }

    /** The geometry types of RFC 7946, section 3.1, appendix A. */
    @Test
    void shapesBecomeTheTypesOfTheStandard() throws IOException {
        Sample lines = new Sample("x", 1L, 1, true, List.of(Line.ofXy(0, 0, 1, 1), Line.ofXy(2, 2, 3, 3)));
        Sample rings = new Sample(
                "x", 1L, 1, true, List.of(Line.ofXy(0, 0, 0, 9, 9, 9, 0, 0), Line.ofXy(1, 2, 2, 3, 1, 3, 1, 2)));

        assertThat(geometry(Sample.MULTILINES, lines))
                .isEqualTo("{\"type\":\"MultiLineString\",\"coordinates\":[[[0,0],[1,1]],[[2,2],[3,3]]]}");
        assertThat(geometry(Sample.POINTS, lines)).isEqualTo("{\"type\":\"Point\",\"coordinates\":[0,0]}");
        // Outer ring counter-clockwise, holes clockwise: section 3.1.6.
        assertThat(geometry(Sample.POLYGONS, rings))
                .isEqualTo("{\"type\":\"Polygon\",\"coordinates\":"
                        + "[[[0,0],[9,9],[0,9],[0,0]],[[1,2],[1,3],[2,3],[1,2]]]}");
    }

    @Test
    void heightsAreWrittenIfTheTableKeepsThem() throws IOException {
        Sample row = new Sample("x", 1L, 1, true, List.of(Line.ofXyz(0, 0, 5.00004, 1, 1, -6.5)));

        assertThat(geometry(Sample.LINES.withZ(), row)).contains("[[0,0,5],[1,1,-6.5]]");
        assertThat(geometry(Sample.LINES, row)).contains("[[0,0],[1,1]]");
    }

    @Test
    void hostileTextsComeBackFromAParserWeDidNotWrite() throws IOException {
        String text = "\"\\/\b\f]]></script>\u2028\u0000 \uD83D\uDEA7 \uD83D {\"a\":1}" + "x".repeat(200_000);

        JsonNode json = new ObjectMapper()
                .readTree(write(Sample.LINES, Sample.of(text, 0, 0, 1, 1)).toFile());

        assertThat(json.at("/features/0/properties/label").asText()).isEqualTo(Text.clean(text));
    }

    private String geometry(Table<Sample> table, Sample row) throws IOException {
        JsonNode json = new ObjectMapper().readTree(write(table, row).toFile());
        return json.at("/features/0/geometry").toString();
    }

    private Path write(Table<Sample> table, Sample... rows) throws IOException {
        Path file = folder.resolve("rows.geojson");
        Files.deleteIfExists(file);
        try (var writer = new GeoJsonWriter<>(file, table)) {
            List.of(rows).forEach(writer::write);
        }
        return file;
    }
}
