package org.spanroom.network;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import net.sf.geographiclib.Geodesic;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.Line;
import org.spanroom.model.Term;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.NetworkSettings;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.Vault;

/**
 * A small network drawn as text, in meters east and north of a point in the open ocean.
 *
 * <pre>
 * vault A 0,0                     a point, with z=3 for its elevation
 * vault B 98,-1 102,-1 102,1      an outline
 * route r1 d1 0,0 100,0           a line of duct d1; "-" for a duct that is not recorded; three ordinates give heights
 * route r2 d1 0,0 9,9 from=A to=B length=12.5 material=PVC     (material=PVC? where it was assumed)
 * </pre>
 *
 * Meters become degrees by GeographicLib's geodesics from the origin, so that lengths near it are true.
 */
final class Sketch {
    static final double LON_DEG = -30;
    static final double LAT_DEG = 40;

    final List<Route> routes = new ArrayList<>();
    final List<Vault> vaults = new ArrayList<>();

    static Sketch of(String text) {
        return at(LON_DEG, LAT_DEG, text);
    }

    static Sketch at(double lonDeg, double latDeg, String text) {
        var sketch = new Sketch();
        text.lines()
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .forEach(line -> sketch.draw(line, lonDeg, latDeg));
        return sketch;
    }

    private void draw(String text, double lonDeg, double latDeg) {
        List<String> words = List.of(text.split("\\s+", -1));
        List<double[]> points = new ArrayList<>();
        Map<String, String> options = new TreeMap<>();
        int firstPoint = words.get(0).equals("vault") ? 2 : 3;
        for (String word : words.subList(firstPoint, words.size())) {
            if (word.contains("=")) {
                options.put(word.split("=", -1)[0], word.split("=", -1)[1]);
            } else {
                points.add(point(word, lonDeg, latDeg));
            }
        }
        if (firstPoint == 2) {
            vaults.add(vault(words.get(1), points, options));
        } else {
            routes.add(route(words.get(1), words.get(2), points, options));
        }
    }

    private static double[] point(String word, double lonDeg, double latDeg) {
        String[] ordinates = word.split(",", -1);
        double[] degrees = degrees(lonDeg, latDeg, Double.parseDouble(ordinates[0]), Double.parseDouble(ordinates[1]));
        return ordinates.length == 2
                ? degrees
                : new double[] {degrees[0], degrees[1], Double.parseDouble(ordinates[2])};
    }

    static double[] degrees(double lonDeg, double latDeg, double eastM, double northM) {
        if (eastM == 0 && northM == 0) {
            return new double[] {lonDeg, latDeg};
        }
        double azimuth = Math.toDegrees(Math.atan2(eastM, northM));
        var there = Geodesic.WGS84.Direct(latDeg, lonDeg, azimuth, Math.hypot(eastM, northM));
        return new double[] {there.lon2, there.lat2};
    }

    private Vault vault(String id, List<double[]> points, Map<String, String> options) {
        double lon = points.stream().mapToDouble(p -> p[0]).average().orElseThrow();
        double lat = points.stream().mapToDouble(p -> p[1]).average().orElseThrow();
        List<Line> footprint = new ArrayList<>();
        if (points.size() > 1) {
            points.add(points.get(0));
            footprint.add(line(points));
        } else {
            lon = points.get(0)[0];
            lat = points.get(0)[1];
        }
        return new Vault(vaults.size(), id, lon, lat, footprint, number(options, "z"), "");
    }

    private Route route(String id, String duct, List<double[]> points, Map<String, String> options) {
        return new Route(
                routes.size(),
                id,
                duct(duct.equals("-") ? id : duct, options.getOrDefault("material", "HDPE"), duct.equals("-")),
                line(points),
                number(options, "length"),
                Optional.ofNullable(options.get("from")),
                Optional.ofNullable(options.get("to")),
                "");
    }

    static Duct duct(String id, String material, boolean assumed) {
        Set<Term> missing = EnumSet.noneOf(Term.class);
        if (assumed) {
            missing.add(Term.DUCT);
        }
        if (material.endsWith("?")) {
            missing.add(Term.DUCT_MATERIAL);
        }
        return new Duct(
                id,
                "",
                BoreShape.ROUND,
                100,
                "",
                material.replace("?", ""),
                false,
                Contents.UNKNOWN,
                false,
                Condition.SOUND,
                "",
                "",
                OptionalInt.empty(),
                missing);
    }

    private static OptionalDouble number(Map<String, String> options, String name) {
        return options.containsKey(name)
                ? OptionalDouble.of(Double.parseDouble(options.get(name)))
                : OptionalDouble.empty();
    }

    private static Line line(List<double[]> points) {
        boolean hasZ = points.get(0).length == 3;
        return Line.wrap(
                points.stream().flatMapToDouble(java.util.Arrays::stream).toArray(), hasZ);
    }

    /** What the cutter made of a sketch. */
    record Result(Network network, FindingLog log) {
        /** Returns one line a span: name, length to a centimeter, routes. */
        List<String> spans() {
            return network.spans().stream()
                    .map(span -> String.format(
                            Locale.ROOT, "%s %.2f %s", span.id(), span.lengthM(), String.join("+", span.routeIds())))
                    .toList();
        }

        /** Returns one line a finding: code, feature, and the length taken out of the spans where there is one. */
        List<String> findings() {
            return log.all().stream()
                    .map(finding -> finding.code() + " " + finding.featureId()
                            + (finding.lengthM() == 0 ? "" : String.format(Locale.ROOT, " %.2f", finding.lengthM())))
                    .toList();
        }

        String details() {
            return String.join(
                    "\n", log.all().stream().map(finding -> finding.detail()).toList());
        }
    }

    Result cut() {
        return cut(ShippedConfig.get().network());
    }

    Result cut(NetworkSettings settings) {
        var log = new FindingLog();
        return new Result(new SpanCutter(settings, 1).cut(routes, vaults, log), log);
    }
}
