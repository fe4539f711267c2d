package org.spanroom.sample;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import net.sf.geographiclib.Geodesic;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBReader;

/** A written city, read back with libraries that share nothing with its writer: Jackson, Commons CSV, JTS, GeographicLib. */
record CityOnDisk(
        List<Route> routes,
        Map<String, Vault> vaults,
        List<CSVRecord> contents,
        List<CSVRecord> faults,
        List<Zone> zones,
        int vaultCount) {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final double LON = -127.5;
    private static final double LAT = 38.9;
    private static final double M_PER_LAT_DEG = Geodesic.WGS84.Inverse(LAT - 0.5, LON, LAT + 0.5, LON).s12;
    private static final double M_PER_LON_DEG = Geodesic.WGS84.Inverse(LAT, LON - 0.5, LAT, LON + 0.5).s12;

    /** A feature of ducts.geojson; parts in meters about the middle of the city, and their geodesic length. */
    record Route(JsonNode fields, List<List<Coordinate>> parts, double geodesicM) {
        String text(String field) {
            return fields.path(field).isNull() ? "" : fields.path(field).asText();
        }

        double number(String field) {
            return fields.path(field).asDouble();
        }

        Coordinate first() {
            return parts.get(0).get(0);
        }

        Coordinate last() {
            List<Coordinate> part = parts.get(parts.size() - 1);
            return part.get(part.size() - 1);
        }

        Geometry shape() {
            return FACTORY.createMultiLineString(parts.stream()
                    .map(part -> FACTORY.createLineString(part.toArray(Coordinate[]::new)))
                    .toArray(LineString[]::new));
        }
    }

    /** A feature of vaults.geojson. */
    record Vault(String id, Optional<Coordinate> place, JsonNode fields) {
        /** Returns a field as text; empty where nothing is recorded. */
        String text(String field) {
            return fields.path(field).isNull() ? "" : fields.path(field).asText();
        }
    }

    /** A feature of zones.gpkg; its outline in feet. */
    record Zone(String id, String type, String starts, String until, Polygon outline) {}

    static CityOnDisk read(Path folder) {
        try {
            List<Route> routes = routes(folder.resolve("ducts.geojson"));
            Map<String, Vault> vaults = new LinkedHashMap<>();
            JsonNode vaultFeatures = features(folder.resolve("vaults.geojson"));
            for (JsonNode feature : vaultFeatures) {
                JsonNode place = feature.path("geometry").path("coordinates");
                String id = feature.path("properties").path("vault_id").asText();
                Optional<Coordinate> at = place.isMissingNode() ? Optional.empty() : Optional.of(meters(place));
                vaults.put(id, new Vault(id, at, feature.path("properties")));
            }
            return new CityOnDisk(
                    routes,
                    vaults,
                    csv(folder.resolve("contents.csv")),
                    csv(folder.resolve("known-faults.csv")),
                    zones(folder.resolve("zones.gpkg")),
                    vaultFeatures.size());
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** The geometries are WKB behind a header of 8 bytes and an envelope, whose size the flags give (OGC 12-128r18, 2.1.3). */
    private static List<Zone> zones(Path geoPackage) {
        List<Zone> zones = new ArrayList<>();
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + geoPackage);
                var statement = connection.createStatement();
                var rows = statement.executeQuery(
                        "SELECT zone_id, zone_type, until, geom, starts FROM zones ORDER BY fid")) {
            while (rows.next()) {
                byte[] blob = rows.getBytes(4);
                int skip = 8 + new int[] {0, 32, 48, 48, 64}[(blob[3] >> 1) & 7];
                Geometry outline = new WKBReader(FACTORY).read(Arrays.copyOfRange(blob, skip, blob.length));
                String starts = Objects.requireNonNullElse(rows.getString(5), "");
                String until = Objects.requireNonNullElse(rows.getString(3), "");
                zones.add(new Zone(rows.getString(1), rows.getString(2), starts, until, (Polygon) outline));
            }
        } catch (SQLException | ParseException e) {
            throw new AssertionError(e);
        }
        return zones;
    }

    /** Reads a routes layer alone. */
    static List<Route> routes(Path geoJson) throws IOException {
        List<Route> routes = new ArrayList<>();
        for (JsonNode feature : features(geoJson)) {
            routes.add(route(feature));
        }
        return routes;
    }

    /** Reads the outlines of polygons as closed lines. */
    static List<Route> outlines(Path geoJson) throws IOException {
        List<Route> outlines = new ArrayList<>();
        for (JsonNode feature : features(geoJson)) {
            List<List<Coordinate>> rings = new ArrayList<>();
            feature.path("geometry").path("coordinates").forEach(ring -> rings.add(part(ring)));
            outlines.add(new Route(feature.path("properties"), rings, 0));
        }
        return outlines;
    }

    List<Route> routesOf(String duct) {
        return routes.stream()
                .filter(route -> route.text("duct_id").equals(duct))
                .toList();
    }

    List<CSVRecord> rowsOf(String duct) {
        return contents.stream().filter(row -> row.get("duct").equals(duct)).toList();
    }

    List<CSVRecord> faultsOf(Fault fault) {
        return faults.stream()
                .filter(row -> row.get("fault").equals(fault.key()))
                .toList();
    }

    private static JsonNode features(Path file) throws IOException {
        return new ObjectMapper().readTree(file.toFile()).path("features");
    }

    private static List<CSVRecord> csv(Path file) throws IOException {
        var format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (var parser = format.parse(Files.newBufferedReader(file, StandardCharsets.UTF_8))) {
            return parser.getRecords();
        }
    }

    private static Route route(JsonNode feature) {
        JsonNode geometry = feature.path("geometry");
        List<List<Coordinate>> parts = new ArrayList<>();
        double geodesicM = 0;
        JsonNode coordinates = geometry.path("coordinates");
        if (geometry.path("type").asText().equals("LineString")) {
            parts.add(part(coordinates));
            geodesicM += geodesicM(coordinates);
        } else {
            for (JsonNode line : coordinates) {
                parts.add(part(line));
                geodesicM += geodesicM(line);
            }
        }
        return new Route(feature.path("properties"), parts, geodesicM);
    }

    private static List<Coordinate> part(JsonNode line) {
        List<Coordinate> part = new ArrayList<>();
        line.forEach(position -> part.add(meters(position)));
        return part;
    }

    private static double geodesicM(JsonNode line) {
        double total = 0;
        for (int i = 1; i < line.size(); i++) {
            JsonNode a = line.get(i - 1);
            JsonNode b = line.get(i);
            double planeM = Geodesic.WGS84.Inverse(
                            a.get(1).asDouble(),
                            a.get(0).asDouble(),
                            b.get(1).asDouble(),
                            b.get(0).asDouble())
                    .s12;
            double riseM = a.size() > 2 ? b.get(2).asDouble() - a.get(2).asDouble() : 0;
            total += Math.hypot(planeM, riseM);
        }
        return total;
    }

    private static Coordinate meters(JsonNode position) {
        return meters(position.get(0).asDouble(), position.get(1).asDouble());
    }

    /** Returns a place in meters about the middle of the city. */
    static Coordinate meters(double lonDeg, double latDeg) {
        return new Coordinate((lonDeg - LON) * M_PER_LON_DEG, (latDeg - LAT) * M_PER_LAT_DEG);
    }
}
