package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.network.Route;
import org.spanroom.testing.ExternalTool;
import org.spanroom.testing.OpenData;

/** The readers and the mapping together, on files that GDAL wrote and on public data. */
class InputFormatsTest {
    @TempDir
    Path folder;

    private RunConfig config() throws IOException {
        Path yaml = folder.resolve("c.yaml");
        Files.writeString(yaml, """
                inputs:
                  routes:
                    fields:
                      route: route_id
                      inside_diameter: {field: bore_in, unit: in}
                      innerduct_count: innerducts
                      innerduct_outside_diameter: {field: innerduct_od_in, unit: in}
                      cable_count: cables
                      flooded: flooded
                      recorded_length: {field: length_ft, unit: ft}
                """);
        return ConfigReader.read(yaml);
    }

    private InputData read(Path file, RunConfig config) {
        LayerConfig layer = config.inputs().routes().withFile(file);
        return new InputReader(config.withInputs(config.inputs().withRoutes(layer)), new FindingLog()).read();
    }

    private Path writeGeoJson() throws IOException {
        var random = new Random(11);
        var text = new StringBuilder("{\"type\":\"FeatureCollection\",\"features\":[\n");
        for (int i = 1; i <= 50; i++) {
            String properties = String.format(
                    Locale.ROOT,
                    "\"route_id\":%d,\"bore_in\":%s,\"innerducts\":%d,\"innerduct_od_in\":%.3f,\"cables\":%d,\"flooded\":%s,"
                            + "\"length_ft\":%.1f",
                    i,
                    i % 3 == 0 ? "4" : "3.786",
                    i % 4,
                    1.66,
                    i % 3,
                    i % 5 == 0 ? "null" : "\"no\"",
                    100 + i / 2.0);
            double lon = -140 + random.nextInt(1000) / 1e6;
            double lat = 20 + random.nextInt(1000) / 1e6;
            text.append(String.format(
                    Locale.ROOT,
                    "{\"type\":\"Feature\",\"properties\":{%s},\"geometry\":{\"type\":\"LineString\",\"coordinates\":"
                            + "[[%.6f,%.6f],[%.6f,%.6f]]}}%s\n",
                    properties,
                    lon,
                    lat,
                    lon + 0.001,
                    lat + 0.0005,
                    i == 50 ? "" : ","));
        }
        Path file = folder.resolve("ducts.geojson");
        Files.writeString(file, text + "]}\n");
        return file;
    }

    @Test
    void threeFormatsGiveTheSameRoutes() throws IOException {
        var ogr2ogr = ExternalTool.named("ogr2ogr");
        Path geoJson = writeGeoJson();
        Path shapefile = folder.resolve("ducts.shp");
        Path geoPackage = folder.resolve("ducts.gpkg");
        ogr2ogr.run(shapefile, geoJson);
        ogr2ogr.run(geoPackage, geoJson);

        List<Route> routes = read(geoJson, config()).routes();

        assertThat(routes).hasSize(50);
        assertThat(routes.get(0).id()).isEqualTo("1");
        assertThat(routes.get(3).duct().contents().known()).isTrue();
        assertThat(read(geoPackage, config()).routes()).isEqualTo(routes);
        assertThat(read(shapefile, config()).routes()).isEqualTo(routes);
    }

    /** The same layer in US survey feet, transformed by GDAL: places agree to a tenth of a millimeter. */
    @Test
    void aProjectedLayerGivesTheSamePlaces() throws IOException {
        var ogr2ogr = ExternalTool.named("ogr2ogr");
        Path geoJson = writeGeoJson();
        Path projected = folder.resolve("utm.gpkg");
        ogr2ogr.run("-t_srs", "EPSG:32607", projected, geoJson);

        List<Route> expected = read(geoJson, config()).routes();
        InputData actual = read(projected, config());

        assertThat(actual.crs().epsgCode()).hasValue(32607);
        for (int i = 0; i < expected.size(); i++) {
            assertThat(actual.routes().get(i).lonLat().x(1))
                    .isCloseTo(expected.get(i).lonLat().x(1), within(1e-9));
            assertThat(actual.routes().get(i).lonLat().y(1))
                    .isCloseTo(expected.get(i).lonLat().y(1), within(1e-9));
        }
    }

    /** Public mains of four cities, read as they are; counts as GDAL's ogrinfo gives them. */
    @Test
    void realMainsAreReadWhole() throws IOException {
        var ogrinfo = ExternalTool.named("ogrinfo");
        for (String city : List.of("abbotsford", "barrie", "toronto", "victoria")) {
            Path mains = OpenData.at("city-mains/" + city + "/mains.geojson");

            InputData data = read(mains, ShippedConfig.get());

            long count = ogrinfo.run("-so", "-al", mains)
                    .lines()
                    .filter(line -> line.startsWith("Feature Count: "))
                    .mapToLong(line -> Long.parseLong(line.substring("Feature Count: ".length())))
                    .findFirst()
                    .orElseThrow();
            assertThat(data.records().get(0).featuresRead()).as(city).isEqualTo(count);
            assertThat(data.records().get(0).featuresUsed()).as(city).isGreaterThan(count * 9 / 10);
        }
    }
}
