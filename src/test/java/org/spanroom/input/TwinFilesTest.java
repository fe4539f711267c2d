package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.spanroom.finding.FindingLog;
import org.spanroom.input.layer.LayerFormat;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.testing.OpenData;

/** Shapefiles of every type beside the GeoJSON that another reader made of them: mbostock/shapefile (BSD). */
class TwinFilesTest {
    @TestFactory
    Stream<DynamicTest> shapefileReadsAsItsGeoJsonTwin() {
        List<Path> files = OpenData.filesBelow("odd-files/mbostock_shapefile", ".shp");
        assertThat(files).hasSize(20);
        return files.stream().map(file -> DynamicTest.dynamicTest(LayerFormat.stem(file), () -> readsAsItsTwin(file)));
    }

    private static void readsAsItsTwin(Path shp) {
        Path json = shp.resolveSibling(LayerFormat.stem(shp) + ".json");

        assertThat(ReadLayer.of(shp).geometries()).isEqualTo(ReadLayer.of(json).geometries());
        assertThat(attributes(shp)).isEqualTo(attributes(json));
    }

    /**
     * The values that are there, by name; the twin writes dates without dashes and numbers without their type, and leaves
     * out the column in a table for having one.
     */
    private static List<Map<String, String>> attributes(Path file) {
        List<String> fields;
        try (LayerSource source = LayerSources.open(file, Optional.empty(), new FindingLog())) {
            fields = source.header().fields();
        }
        var all = new ArrayList<Map<String, String>>();
        for (List<Object> values : ReadLayer.of(file, Optional.empty(), fields).values()) {
            var row = new LinkedHashMap<String, String>();
            for (int i = 0; i < fields.size(); i++) {
                if (values.get(i) != null && !fields.equals(List.of("FID"))) {
                    row.put(fields.get(i), text(values.get(i)));
                }
            }
            all.add(row);
        }
        return all;
    }

    private static String text(Object value) {
        if (value instanceof Number number) {
            return Double.toString(number.doubleValue());
        }
        String text = value.toString();
        return text.matches("\\d{4}-\\d\\d-\\d\\d") ? text.replace("-", "") : text;
    }
}
