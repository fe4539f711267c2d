package org.spanroom.input;

import static org.spanroom.input.HardCase.vaults;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Outlines that are no vaults, or hardly: from a manhole's ring to a continent. */
final class HardVaults {
    private static final String TOO_WIDE = "vault_too_wide: the outline extends over ";

    private HardVaults() {}

    static List<HardCase> cases() {
        return List.of(
                vaults("an outline as wide as a continent", file(square(-20, 35, 40)))
                        .reads(0, 1, TOO_WIDE),
                vaults("an outline around the globe", file(square(-180, -80, 160)))
                        .reads(0, 1, TOO_WIDE),
                vaults(
                                "67 park outlines",
                                file(IntStream.range(0, 67)
                                        .mapToObj(park -> square(-30 + 0.05 * park, 40, 0.03))
                                        .collect(Collectors.joining(","))))
                        .reads(0, 67, TOO_WIDE + "3,3"),
                vaults("a chamber under a building", file(square(-30, 40, 0.002)))
                        .reads(1, 0),
                vaults(
                                "two chambers of one vault, an ocean apart",
                                file("{\"type\":\"MultiPolygon\",\"coordinates\":[[" + ring(-30, 40, 0.0001) + "],["
                                        + ring(-60, 40, 0.0001) + "]]}"))
                        .reads(0, 1, TOO_WIDE),
                vaults(
                                "an outline over the antimeridian",
                                file("{\"type\":\"Polygon\",\"coordinates\":[[[179.9999,10],"
                                        + "[-179.9999,10],[-179.9999,10.0002],[179.9999,10.0002],[179.9999,10]]]}"))
                        .reads(1, 0),
                vaults(
                                "an outline at the pole",
                                file("{\"type\":\"Polygon\",\"coordinates\":[[[-180,89.9999],"
                                        + "[-90,89.9999],[0,89.9999],[90,89.9999],[180,89.9999],[-180,89.9999]]]}"))
                        .reads(1, 0),
                vaults("an outline of 200 000 vertices", file(many(200_000))).reads(1, 0));
    }

    private static HardCase.Maker file(String geometries) {
        return folder -> {
            var features = new StringBuilder();
            int id = 0;
            for (String geometry : geometries.split("(?<=\\]\\]\\]\\}),|(?<=\\]\\]\\}),", -1)) {
                features.append(id == 0 ? "" : ",\n")
                        .append("{\"type\":\"Feature\",\"id\":")
                        .append(++id)
                        .append(",\"properties\":{},\"geometry\":")
                        .append(geometry)
                        .append('}');
            }
            Path file = folder.resolve("vaults.geojson");
            return Files.writeString(file, "{\"type\":\"FeatureCollection\",\"features\":[\n" + features + "]}");
        };
    }

    private static String square(double west, double south, double sizeDeg) {
        return "{\"type\":\"Polygon\",\"coordinates\":[" + ring(west, south, sizeDeg) + "]}";
    }

    private static String ring(double west, double south, double sizeDeg) {
        return String.format(
                Locale.ROOT,
                "[[%1$f,%2$f],[%3$f,%2$f],[%3$f,%4$f],[%1$f,%4$f],[%1$f,%2$f]]",
                west,
                south,
                west + sizeDeg,
                south + sizeDeg);
    }

    private static String many(int vertices) {
        return IntStream.rangeClosed(0, vertices)
                .mapToObj(i -> {
                    double angle = 2 * Math.PI * (i % vertices) / vertices;
                    return String.format(
                            Locale.ROOT, "[%.9f,%.9f]", -30 + 1e-3 * Math.cos(angle), 40 + 1e-3 * Math.sin(angle));
                })
                .collect(Collectors.joining(",", "{\"type\":\"Polygon\",\"coordinates\":[[", "]]}"));
    }
}
