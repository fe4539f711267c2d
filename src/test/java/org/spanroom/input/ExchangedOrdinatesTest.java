package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.config.ConfigReader;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.input.layer.LayerFormat;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.input.layer.SourceGeometry;
import org.spanroom.input.layer.SourceGeometry.Kind;
import org.spanroom.model.Line;
import org.spanroom.testing.OpenData;

/**
 * Latitude given first where both ordinates would pass as either: noticed by the other layers, by the output's system and by recorded
 * lengths, and never where all is well.
 */
class ExchangedOrdinatesTest {
    private static final List<String> FILES = List.of("routes", "vaults", "zones");
    private static final String SEEMS = "seems to have latitude or northing first. Change its axis_order in the config";

    @TempDir
    Path folder;

    private final FindingLog findings = new FindingLog();

    /** A town as a layer of routes, vaults or zones, with its ordinates exchanged or not. */
    private static FakeLayer town(String role, double x, double y, String crs, boolean exchanged) {
        var layer = new FakeLayer(crs, "id");
        var random = new Random(5);
        double step = Math.abs(x) > 1000 ? 100 : 0.001;
        for (int i = 0; i < 30; i++) {
            double west = x + step * 50 * random.nextDouble();
            double south = y + step * 50 * random.nextDouble();
            double[] xy = {west, south, west + step, south, west + step, south + step, west, south};
            for (int at = 0; exchanged && at < xy.length; at += 2) {
                double swap = xy[at];
                xy[at] = xy[at + 1];
                xy[at + 1] = swap;
            }
            switch (role) {
                case "routes" -> layer.line(xy, "R" + i);
                case "vaults" -> layer.point(xy[0], xy[1], "V" + i);
                default ->
                    layer.geometry(new SourceGeometry(Kind.POLYGONS, List.of(xy), false, List.of(true)), "Z" + i);
            }
        }
        return layer;
    }

    /** Reads layers by their roles and returns what is said about exchanged ordinates. */
    private List<Finding> read(Map<String, FakeLayer> layers, String more) throws IOException {
        var yaml = new StringBuilder("inputs:\n");
        for (String role : FILES) {
            if (layers.containsKey(role)) {
                Path file = Files.writeString(folder.resolve(role + ".geojson"), "{}");
                yaml.append("  ").append(role).append(": {file: ").append(file).append("}\n");
            }
        }
        var config = ConfigReader.read(Files.writeString(folder.resolve("c.yaml"), yaml + more));
        new InputReader(config, findings, (path, name, log) -> {
                    String role = LayerFormat.stem(path);
                    return layers.get(role).named(role + ".geojson");
                })
                .read();
        return findings.all().stream()
                .filter(finding -> finding.code() == FindingCode.LAYER_ISSUE)
                .filter(finding -> finding.detail().contains("swapped"))
                .toList();
    }

    private static Map<String, FakeLayer> routesAndVaults(double x, double y, boolean routes, boolean vaults) {
        return new TreeMap<>(Map.of(
                "routes", town("routes", x, y, "OGC:CRS84", routes),
                "vaults", town("vaults", x, y, "OGC:CRS84", vaults)));
    }

    @ParameterizedTest(name = "longitude {0}, latitude {1}")
    @CsvSource({"14.25, 40.85", "36.8, -1.3", "23.7, 38", "-58.4, -34.6"})
    void oneLayerOfTwoIsToldThatLiesWhereTheOtherWouldExchanged(double lon, double lat) throws IOException {
        assertThat(read(routesAndVaults(lon, lat, false, true), ""))
                .singleElement()
                .satisfies(finding -> {
                    assertThat(finding.source()).isEqualTo("vaults.geojson");
                    assertThat(finding.detail())
                            .contains("routes.geojson")
                            .contains("swapped")
                            .contains("one of the two");
                });
    }

    /** With and without heights, lines, points and rings, before the reference system is looked at. */
    @Test
    void layerThatIsSaidToHaveNorthingFirstIsReadAsIfItHadNot() throws IOException {
        String heights = "[[40.85,14.25,7.5],[40.86,14.27,8.5]]";
        Path routes = Files.writeString(
                folder.resolve("r.geojson"), "{\"type\":\"LineString\",\"coordinates\":" + heights + "}");
        Path vaults =
                Files.writeString(folder.resolve("v.geojson"), "{\"type\":\"Point\",\"coordinates\":[40.85,14.25]}");
        Path zones = Files.writeString(
                folder.resolve("z.geojson"),
                "{\"type\":\"Feature\",\"properties\":{\"kind\":\"cut_ban\"},\"geometry\":{\"type\":\"Polygon\","
                        + "\"coordinates\":[[[40.8,14.2],[40.8,14.3],[40.9,14.3],[40.9,14.2],[40.8,14.2]]]}}");
        String north = ", axis_order: north_first";
        Path yaml = Files.writeString(
                folder.resolve("c.yaml"),
                "inputs:\n  routes: {file: '" + routes + "'" + north + "}\n  vaults: {file: '" + vaults + "'" + north
                        + "}\n  zones: {file: '" + zones + "'" + north + ", fields: {zone_kind: kind}}\n");

        InputData read = new InputReader(ConfigReader.read(yaml), findings).read();

        assertThat(read.routes()).singleElement().satisfies(route -> {
            assertThat(route.lonLat().x(1)).isEqualTo(14.27);
            assertThat(route.lonLat().y(1)).isEqualTo(40.86);
            assertThat(route.lonLat().z(1)).isEqualTo(8.5);
        });
        assertThat(read.vaults()).singleElement().satisfies(vault -> {
            assertThat(vault.lonDeg()).isEqualTo(14.25);
            assertThat(vault.latDeg()).isEqualTo(40.85);
        });
        assertThat(read.zones()).singleElement().satisfies(zone -> {
            Line shell = zone.outlines().get(0).shell();
            assertThat(IntStream.range(0, shell.size()).mapToObj(shell::x)).containsOnly(14.2, 14.3);
            assertThat(IntStream.range(0, shell.size()).mapToObj(shell::y)).containsOnly(40.8, 40.9);
        });
    }

    @Test
    void aThirdLayerTellsWhichOfTheTwoItIs() throws IOException {
        Map<String, FakeLayer> layers = routesAndVaults(14.25, 40.85, true, false);
        layers.put("zones", town("zones", 14.25, 40.85, "OGC:CRS84", false));

        assertThat(read(layers, "")).singleElement().satisfies(finding -> {
            assertThat(finding.source()).isEqualTo("routes.geojson");
            assertThat(finding.detail()).contains("this layer " + SEEMS);
        });
    }

    @Test
    void aLayerInAProjectedSystemTellsThatBothOthersAreExchanged() throws IOException {
        Map<String, FakeLayer> layers = routesAndVaults(14.25, 40.85, true, true);
        layers.put("zones", town("zones", 436_000, 4_522_000, "EPSG:32633", false));

        assertThat(read(layers, ""))
                .extracting(Finding::source)
                .containsExactlyInAnyOrder("routes.geojson", "vaults.geojson");
    }

    @Test
    void theOutputsSystemTellsThatAllAreExchanged() throws IOException {
        assertThat(read(routesAndVaults(14.25, 40.85, true, true), "output: {crs: 'EPSG:32633'}\n"))
                .hasSize(2)
                .allSatisfy(finding -> assertThat(finding.detail())
                        .contains("the output's", "UTM zone 33N", "with the two ordinates swapped", SEEMS));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({"EPSG:4269, 37.7, -80.2", "EPSG:4258, 60.2, 24.9", "EPSG:32633, 4522000, 436000"})
    void aSystemWithAnAreaTellsByItself(String crs, double x, double y) throws IOException {
        assertThat(read(Map.of("routes", town("routes", x, y, crs, false)), ""))
                .singleElement()
                .satisfies(finding -> assertThat(finding.detail())
                        .containsAnyOf(
                                "the two ordinates seem to be swapped",
                                "latitude seem to be swapped",
                                "longitude and latitude may be swapped"));
    }

    static IntStream seeds() {
        return IntStream.range(0, 40);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void layersOfOneTownRaiseNoAlarmWhereverItIs(int seed) throws IOException {
        var random = new Random(seed);
        double lon = 340 * random.nextDouble() - 170;
        double lat = 130 * random.nextDouble() - 65;
        Map<String, FakeLayer> layers = routesAndVaults(lon, lat, false, false);
        layers.put("zones", town("zones", lon + 0.2, lat - 0.2, "OGC:CRS84", false));

        assertThat(read(layers, "")).isEmpty();
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void layersOfTwoTownsRaiseNoAlarm(int seed) throws IOException {
        var random = new Random(seed);
        Map<String, FakeLayer> layers =
                routesAndVaults(30 * random.nextDouble(), 35 + 25 * random.nextDouble(), false, false);
        layers.put(
                "vaults",
                town("vaults", 45 * random.nextDouble() - 10, 35 + 25 * random.nextDouble(), "OGC:CRS84", false));

        assertThat(read(layers, "")).isEmpty();
    }

    /** Lines of a real town at its place, and every owner's own lengths, which were calculated in a projected system. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({"barrie, SHAPE_Length", "toronto, MEASUREDLENGTH", "victoria, SHAPE_Length", "abbotsford, Shape__Length"
    })
    void recordedLengthsOfRealMainsTellOnlyWhatIsExchanged(String town, String field) {
        var asTheyAre = new LengthAgreement();
        var exchanged = new LengthAgreement();
        Path file = OpenData.at("city-mains/" + town + "/mains.geojson");
        try (LayerSource source = LayerSources.open(file, Optional.empty(), findings)) {
            source.read(List.of(field), feature -> {
                if (feature.geometry().kind() == Kind.LINES
                        && feature.geometry().parts().size() == 1
                        && feature.values().get(0) instanceof Number length) {
                    double[] xy = flat(feature.geometry());
                    asTheyAre.see(Line.wrap(xy.clone(), false), length.doubleValue());
                    for (int at = 0; at < xy.length; at += 2) {
                        double lonDeg = xy[at];
                        xy[at] = xy[at + 1];
                        // Beyond 90 degrees it would be reported at once; the tangent plane there is as good a wrong
                        // one as
                        // any.
                        xy[at + 1] = lonDeg < -90 ? lonDeg + 100 : lonDeg;
                    }
                    exchanged.see(Line.wrap(xy, false), length.doubleValue());
                }
            });
        }

        assertThat(asTheyAre.find()).isEmpty();
        assertThat(exchanged.find()).isPresent();
    }

    private static double[] flat(SourceGeometry geometry) {
        double[] part = geometry.parts().get(0);
        int dimension = geometry.hasZ() ? 3 : 2;
        double[] xy = new double[part.length / dimension * 2];
        for (int from = 0, to = 0; from < part.length; from += dimension, to += 2) {
            xy[to] = part[from];
            xy[to + 1] = part[from + 1];
        }
        return xy;
    }

    @Test
    void recordedLengthsTellOnALayerAlone() throws IOException {
        double metersPerDeg = Math.toRadians(6_371_008.8);
        var layer = new FakeLayer("OGC:CRS84", "id", "length_m");
        for (int i = 0; i < 20; i++) {
            double lat = 40.85 + 0.001 * i;
            double lon = 14.25 + 0.002 * (i % 5);
            double east = i % 2 == 0 ? 0.002 : 0;
            double north = 0.002 - east;
            double lengthM = metersPerDeg * Math.hypot(east * Math.cos(Math.toRadians(lat)), north);
            layer.line(new double[] {lat, lon, lat + north, lon + east}, "R" + i, lengthM);
        }

        String fields = "  routes:\n    file: " + folder.resolve("routes.geojson") + "\n    fields: {route: id,"
                + " recorded_length: length_m}\n";
        Files.writeString(folder.resolve("routes.geojson"), "{}");
        Path yaml = Files.writeString(folder.resolve("d.yaml"), "inputs:\n" + fields);
        new InputReader(ConfigReader.read(yaml), findings, (path, name, log) -> layer).read();

        assertThat(findings.all())
                .filteredOn(finding -> finding.code() == FindingCode.LAYER_ISSUE)
                .singleElement()
                .satisfies(finding -> assertThat(finding.detail())
                        .isEqualTo(
                                "most recorded lengths agree with the lines only with longitude and latitude swapped:"
                                        + " the layer seems to have latitude first. Change its axis_order in the config, or export it with"
                                        + " longitude or easting first"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"abbotsford", "toronto", "victoria"})
    void realTownsRaiseNoAlarm(String town) throws IOException {
        for (String of : List.of("", "sanitary_")) {
            Path mains = OpenData.at("city-mains/" + town + "/" + of + "mains.geojson");
            Path manholes = mains.resolveSibling(of + "manholes.geojson");
            if (!Files.exists(manholes)) {
                continue;
            }
            Path yaml = Files.writeString(
                    folder.resolve("c.yaml"),
                    "inputs: {routes: {file: " + mains.toRealPath() + "}, vaults: {file: " + manholes.toRealPath()
                            + "}}\n");
            new InputReader(ConfigReader.read(yaml), findings).read();
        }

        assertThat(findings.all()).noneMatch(finding -> finding.detail().contains("swapped"));
    }

    @Test
    void theSampleIsSpreadOverTheWholeFile() {
        var suspicion = new OrdinateSuspicion(ReferenceSystem.crs84());
        for (int i = 0; i < 100_000; i++) {
            suspicion.see(i / 1000.0, 40);
        }

        Spread spread = suspicion.spread(false).orElseThrow();
        assertThat(spread.westDeg()).isBetween(4.5, 5.5);
        assertThat(spread.eastDeg()).isBetween(94.5, 95.5);
    }

    @Test
    void strayPlacesDoNotWidenTheSpread() {
        var places = new ArrayList<Double>();
        for (int i = 0; i < 40; i++) {
            places.addAll(List.of(i == 0 ? 0.0 : 14.0 + i * 0.01, i == 1 ? -80.0 : 40.0));
        }
        places.addAll(List.of(Double.NaN, Double.NaN));

        Spread spread = Spread.of(
                        places.stream().mapToDouble(Double::doubleValue).toArray())
                .orElseThrow();

        assertThat(spread.westDeg()).isGreaterThan(14);
        assertThat(spread.southDeg()).isEqualTo(40);
        assertThat(spread.gapDeg(new Spread(17, 42, 18, 43))).isBetween(2.5, 3.0);
        assertThat(spread.gapDeg(new Spread(10, 39, 20, 41))).isZero();
    }
}
