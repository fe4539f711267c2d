package org.spanroom.permit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.FieldMap;
import org.spanroom.config.FieldSource;
import org.spanroom.config.InputConfig;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.input.InputReader;
import org.spanroom.model.Term;
import org.spanroom.model.network.Span;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.permit.Zone;
import org.spanroom.model.permit.ZoneTouch;
import org.spanroom.testing.ExternalTool;

/**
 * Meters inside zones against GEOS, through Debian's python3-shapely: random spans and zones on a projected grid, with holes,
 * overlaps, slivers, polygons that cross themselves, holes that reach outside and multipolygons that overlap themselves. Zones with a
 * tolerance are checked against round buffers of it, of 512 segments a quarter circle: their chords are within 5 micrometers of a circle
 * of 4 m. Stretches of the intersection are merged and sifted again in the script.
 *
 * <p>The zones go the whole way of the program: from a file in their own reference system, repaired, into degrees.
 */
class PermitsInGeosTest {
    private static final int CASES = 40;
    private static final double MILLIMETER_M = 1e-3;
    private static final List<String> KINDS = List.of("cut_ban", "heritage", "rail");

    /** Measures each span in each zone, and in all zones of a kind; repairs shells and takes repaired holes out of them. */
    private static final String SCRIPT = """
            import json, sys
            from shapely.geometry import LineString, Point, Polygon
            from shapely.ops import unary_union
            from shapely.validation import make_valid

            def polygon(rings):
                shell = make_valid(Polygon(rings[0]))
                return shell.difference(unary_union([make_valid(Polygon(r)) for r in rings[1:]]))

            def pieces(span, area):
                common = span.intersection(area)
                lines = getattr(common, 'geoms', [common])
                ends = [sorted(span.project(Point(p)) for p in (l.coords[0], l.coords[-1])) for l in lines if l.length > 0]
                return sorted(ends)

            def counted(span, area, sliver):
                merged = []
                for start, end in pieces(span, area):
                    if merged and start - merged[-1][1] < max(sliver, 1e-6):
                        merged[-1][1] = max(end, merged[-1][1])
                    else:
                        merged.append([start, end])
                return sum(end - start for start, end in merged if end - start >= sliver)

            tolerance, sliver = float(sys.argv[2]), float(sys.argv[3])
            for number, case in enumerate(json.load(open(sys.argv[1]))):
                span = LineString(case['span'])
                by_kind = {}
                for zone in case['zones']:
                    area = unary_union([polygon(rings) for rings in zone['polygons']])
                    if tolerance > 0:
                        area = area.buffer(tolerance, 512)
                    by_kind.setdefault(zone['kind'], []).append(area)
                    print(number, zone['id'], repr(counted(span, area, sliver)))
                for kind, areas in sorted(by_kind.items()) if sliver == 0 else []:
                    print(number, kind, repr(span.intersection(unary_union(areas)).length))
            """;

    @TempDir
    Path folder;

    /** A zone as it is drawn: rings by polygon, not closed. */
    private record Drawn(String id, String kind, List<List<double[]>> polygons) {}

    @ParameterizedTest(name = "tolerance {0} m, sliver {1} m")
    @CsvSource({"0, 0", "0.5, 0", "0.5, 0.5", "4, 0", "4, 3"})
    void metersAgreeWithGeosToAMillimeter(double toleranceM, double sliverM) throws IOException {
        ExternalTool python = ExternalTool.pythonWith("shapely");
        var expected = new TreeMap<String, Double>();
        var spans = new ArrayList<Span>();
        var drawn = new ArrayList<List<Drawn>>();
        var text = new ArrayList<String>();
        for (int number = 0; number < CASES; number++) {
            var random = new Random(1000 + number);
            double[] way = PermitLawsTest.way(random);
            spans.add(GridMap.span(way));
            drawn.add(zones(random, number));
            text.add(json(way, drawn.get(number)));
        }
        Path cases = folder.resolve("cases.json");
        Files.writeString(cases, "[" + String.join(",\n", text) + "]");
        Path script = folder.resolve("measure.py");
        Files.writeString(script, SCRIPT);
        python.run(script, cases, GridMap.gridM(toleranceM), sliverM).lines().forEach(line -> {
            String[] words = line.split(" ", -1);
            expected.put(words[0] + " " + words[1], Double.parseDouble(words[2]));
        });

        var log = new FindingLog();
        List<Zone> zones = read(drawn, log);

        int compared = 0;
        for (int number = 0; number < CASES; number++) {
            String mark = number + "-";
            List<Zone> ofCase =
                    zones.stream().filter(zone -> zone.id().startsWith(mark)).toList();
            Permits permits = GridMap.assessor(ofCase, GridMap.settings("", false, sliverM, toleranceM))
                    .assess(spans.get(number));
            for (Zone zone : ofCase) {
                double foundM = permits.touches().stream()
                        .filter(touch -> touch.zone().id().equals(zone.id()))
                        .mapToDouble(ZoneTouch::lengthM)
                        .sum();
                compared += compare(number + " " + zone.id(), foundM, expected);
            }
            for (String kind : KINDS) {
                if (expected.containsKey(number + " " + kind)) {
                    compared += compare(number + " " + kind, permits.lengthM(kind), expected);
                }
            }
        }
        assertThat(compared).as("comparisons of more than nothing").isGreaterThan(120);
        assertThat(log.countByCode()).containsKey(FindingCode.ZONE_OUTLINE_INVALID);
    }

    private static int compare(String what, double foundM, Map<String, Double> expected) {
        double expectedM = expected.get(what);
        assertThat(foundM).as(what).isCloseTo(expectedM, within(MILLIMETER_M));
        return expectedM > 0 ? 1 : 0;
    }

    private static List<Drawn> zones(Random random, int number) {
        var zones = new ArrayList<Drawn>();
        for (int i = 0; i < 10; i++) {
            double x = PermitLawsTest.between(random, -80, 220);
            double y = PermitLawsTest.between(random, -80, 220);
            String kind = KINDS.get(random.nextInt(KINDS.size()));
            zones.add(new Drawn(number + "-" + i, kind, polygons(random, x, y, i)));
        }
        return zones;
    }

    private static List<List<double[]>> polygons(Random random, double x, double y, int shape) {
        double sizeM = PermitLawsTest.between(random, 20, 150);
        double[] star = PermitLawsTest.star(random, x, y, sizeM, 1);
        return switch (shape) {
            case 0, 1, 2 -> List.of(List.of(star, PermitLawsTest.star(random, x, y, sizeM / 3, 1)));
            case 3 -> List.of(List.of(star, PermitLawsTest.star(random, x + sizeM, y, sizeM / 2, 1)));
            case 4 -> List.of(List.of(star), List.of(PermitLawsTest.star(random, x + sizeM / 2, y, sizeM, 1)));
            case 5 -> List.of(List.of(bowTie(random, x, y, sizeM)));
            case 6 -> List.of(List.of(GridMap.box(x, y, x + PermitLawsTest.between(random, 0.01, 0.6), y + sizeM)));
            case 7 -> List.of(List.of(PermitLawsTest.star(random, x, y, 200, 0.004)));
            default -> List.of(List.of(star));
        };
    }

    private static double[] bowTie(Random random, double x, double y, double sizeM) {
        double lean = PermitLawsTest.between(random, -20, 20);
        return new double[] {x, y, x + sizeM, y + sizeM + lean, x + sizeM, y, x, y + sizeM};
    }

    private List<Zone> read(List<List<Drawn>> drawn, FindingLog log) throws IOException {
        var features = new ArrayList<String>();
        for (Drawn zone : drawn.stream().flatMap(List::stream).toList()) {
            features.add("{\"type\": \"Feature\", \"properties\": {\"id\": \"" + zone.id() + "\", \"kind\": \""
                    + zone.kind() + "\"}, \"geometry\": {\"type\": \"MultiPolygon\", \"coordinates\": "
                    + coordinates(zone) + "}}");
        }
        Path zones = folder.resolve("zones.geojson");
        Files.writeString(
                zones, "{\"type\": \"FeatureCollection\", \"features\": [\n" + String.join(",\n", features) + "]}");
        Path routes = folder.resolve("routes.geojson");
        Files.writeString(routes, "{\"type\": \"FeatureCollection\", \"features\": []}");
        var fields = new FieldMap(Map.of(
                Term.ZONE, new FieldSource("id", Optional.empty()),
                Term.ZONE_KIND, new FieldSource("kind", Optional.empty())));
        InputConfig inputs = InputConfig.NONE
                .withRoutes(LayerConfig.NONE.withFile(routes))
                .withZones(
                        LayerConfig.NONE.withFile(zones).withCrs("EPSG:32626").withFields(fields));
        return new InputReader(ShippedConfig.get().withInputs(inputs), log)
                .read()
                .zones();
    }

    private static String json(double[] way, List<Drawn> zones) {
        var texts = new ArrayList<String>();
        zones.forEach(zone -> texts.add("{\"id\": \"" + zone.id() + "\", \"kind\": \"" + zone.kind()
                + "\", \"polygons\": " + coordinates(zone) + "}"));
        return "{\"span\": " + ring(way, false) + ", \"zones\": [" + String.join(", ", texts) + "]}";
    }

    private static String coordinates(Drawn zone) {
        var polygons = new ArrayList<String>();
        for (List<double[]> rings : zone.polygons()) {
            polygons.add("["
                    + String.join(
                            ", ", rings.stream().map(ring -> ring(ring, true)).toList()) + "]");
        }
        return "[" + String.join(", ", polygons) + "]";
    }

    private static String ring(double[] xy, boolean closed) {
        var points = new ArrayList<String>();
        for (int i = 0; i < xy.length; i += 2) {
            points.add(point(xy, i));
        }
        if (closed) {
            points.add(point(xy, 0));
        }
        return "[" + String.join(", ", points) + "]";
    }

    private static String point(double[] xy, int at) {
        return String.format(Locale.ROOT, "[%.9f, %.9f]", GridMap.EAST_M + xy[at], GridMap.NORTH_M + xy[at + 1]);
    }
}
