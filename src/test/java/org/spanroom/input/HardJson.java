package org.spanroom.input;

import static org.spanroom.input.HardCase.routes;
import static org.spanroom.input.HardCase.vaults;

import java.io.BufferedWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Hard cases in GeoJSON, line-delimited JSON and JSON text sequences. */
final class HardJson {
    /** Set the system property spanroom.hard.megabytes to 200 for the long line that the list of hard input names. */
    static final int MEGABYTES = Integer.getInteger("spanroom.hard.megabytes", 20);

    static final String CRS_33N =
            "\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"urn:ogc:def:crs:EPSG::32633\"}}";

    private HardJson() {}

    static List<HardCase> cases() {
        return Stream.of(texts(), encodings(), coordinates(), sizes(), systems())
                .flatMap(List::stream)
                .toList();
    }

    /** A route of two vertices near a place in the Atlantic, as one line of text. */
    static String line(int id) {
        return line(id, String.format(Locale.ROOT, "[[-30.%d,40],[-30.%d,40.001]]", id, id));
    }

    static String line(int id, String coordinates) {
        return feature(id, "{\"type\":\"LineString\",\"coordinates\":" + coordinates + "}");
    }

    static String feature(int id, String geometry) {
        return "{\"type\":\"Feature\",\"id\":" + id + ",\"properties\":{\"route\":\"R" + id + "\"},\"geometry\":"
                + geometry + "}";
    }

    static String collection(String... features) {
        return "{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",", features) + "]}";
    }

    /** Two features, as a service gives them a page at a time. */
    private static String page(String before, String behind) {
        return "{\"type\":\"FeatureCollection\"," + before + "\"features\":[" + line(1) + "," + line(2) + "]" + behind
                + "}";
    }

    static HardCase.Maker text(String text) {
        return text(text, StandardCharsets.UTF_8);
    }

    static HardCase.Maker text(String text, Charset charset) {
        return folder -> Files.write(folder.resolve("layer.geojson"), text.getBytes(charset));
    }

    private static HardCase.Maker named(String name, String text) {
        return folder -> Files.writeString(folder.resolve(name), text);
    }

    private static List<HardCase> texts() {
        String good = line(2) + "\n" + line(3) + "\n";
        return List.of(
                routes("zero length", text("")).isRefused("layer.geojson: it is empty. Export it again"),
                routes("white space only", text(" \n\t ")).isRefused("only white space"),
                routes("truncated", text(collection(line(1), line(2)).substring(0, 250)))
                        .isRefused("line 1, column", "in or after feature 2", "export it again"),
                routes("wrong magic, nothing known", named("layer.bin", "hello"))
                        .isRefused("neither its first bytes nor its file extension", "Convert it"),
                routes("empty collection", text(collection())).reads(0, 0),
                routes("comment", text("{\"type\":\"FeatureCollection\", // old\n\"features\":[]}"))
                        .isRefused("line 1, column", "a comment, which JSON does not have"),
                routes("comment in a feature", text(collection(line(1), "/* gone */" + line(2))))
                        .isRefused("a comment, which JSON does not have", "feature 2"),
                routes(
                                "duplicate features",
                                text("{\"type\":\"FeatureCollection\",\"features\":[" + line(1) + "],\"features\":["
                                        + line(2) + "]}"))
                        .reads(2, 0, "layer_issue: \"features\" occurs twice"),
                routes(
                                "duplicate geometry",
                                text(collection(line(1).replaceFirst("\"geometry\"", "\"geometry\":null,$0"))))
                        .reads(0, 1, "unreadable_feature: it has two geometries"),
                routes(
                                "duplicate property",
                                text(collection(line(1).replace("\"route\":", "\"route\":\"X\",\"route\":"))))
                        .reads(1, 0, "layer_issue: \"route\" occurs twice"),
                routes("lines with a broken first one", named("a.ndjson", "{\"type\":\"Feature\",,}\n" + good))
                        .reads(2, 1, "unreadable_feature: the JSON is broken at line 1"),
                routes("lines with a first one cut off", named("a.geojsonl", line(1).substring(0, 60) + "\n" + good))
                        .reads(2, 1, "unreadable_feature: the JSON is broken at line 1"),
                routes("lines with a first one that is no object", named("a.jsonl", "null\n" + good))
                        .reads(2, 1, "unreadable_feature: the top-level value is null"),
                routes("lines with a broken last one", text(good + line(4).substring(0, 70)))
                        .reads(2, 1, "unreadable_feature: the JSON is broken at line 3"),
                routes("lines with empty ones and carriage returns", text("\r\n" + good.replace("\n", "\r\n\r\n")))
                        .reads(2, 0),
                routes(
                                "collection, broken, with a feature a line",
                                text("{\n\"type\":\"FeatureCollection\",,\n" + "\"features\":[\n" + line(1) + "\n]}"))
                        .isRefused("line 2, column"),
                routes(
                                "records with a broken one",
                                text("\u001e" + line(1) + "\n\u001e{\"type\":\n\u001e" + line(3) + "\n"))
                        .reads(2, 1, "unreadable_feature: the JSON is broken at record 2"),
                routes("web page", text("<!DOCTYPE html><html></html>"))
                        .isRefused("line 1, column 1", "a web page, KML or GML?"),
                routes("table", text("id,x,y\n1,2,3\n")).isRefused("Unrecognized token 'id')"),
                routes("cut off behind the last feature", text(page("", "").replaceFirst("]}$", "")))
                        .isRefused("the text ends too early; is the file cut off?"),
                routes("error message of a server", text("{\"error\":{\"code\":498,\"message\":\"Invalid token\"}}"))
                        .isRefused("an error message of a server"),
                routes("page of a service, more before", text(page("\"exceededTransferLimit\":true,", "")))
                        .reads(2, 0, "layer_incomplete: exceededTransferLimit is true"),
                routes("page of a service, more behind", text(page("", ",\"exceededTransferLimit\":true")))
                        .reads(2, 0, "layer_incomplete: exceededTransferLimit is true"),
                routes(
                                "page of a service, more in its properties",
                                text(page("", ",\"properties\":{\"a\":[1],\"exceededTransferLimit\":true}")))
                        .reads(2, 0, "layer_incomplete: exceededTransferLimit is true"),
                routes("page of a service by number", text(page("\"numberMatched\":5000,\"numberReturned\":2,", "")))
                        .reads(2, 0, "layer_incomplete: numberMatched is 5000, but it holds 2"),
                routes("the whole of a service", text(page("\"numberMatched\":2,\"exceededTransferLimit\":false,", "")))
                        .reads(2, 0),
                routes("odd numbers of a service", text(page("\"numberMatched\":\"unknown\",", ",\"properties\":3")))
                        .reads(2, 0),
                routes("list outermost", text("[" + line(1) + "]")).isRefused("top-level value is a list", "RFC 7946"),
                routes("other JSON", text("{\"type\":\"Tileset\"}")).isRefused("\"Tileset\" is not a GeoJSON type"),
                routes("TopoJSON", text("{\"type\":\"Topology\",\"objects\":{},\"arcs\":[[[0,0],[1,1]]]}"))
                        .isRefused("it is TopoJSON, not GeoJSON; export it as GeoJSON"),
                routes(
                                "Esri JSON",
                                text(
                                        "{\"displayFieldName\":\"\",\"geometryType\":\"esriGeometryPolyline\",\"spatialReference\":"
                                                + "{\"wkid\":102100},\"features\":[{\"attributes\":{\"A\":1},\"geometry\":{\"paths\":"
                                                + "[[[0,0],[1,1]]]}}]}"))
                        .isRefused("it is Esri JSON, not GeoJSON; export it as GeoJSON"),
                routes("no features in it", text(collection("1", "null", "[]", "{}", "\"x\"")))
                        .reads(0, 5, "unreadable_feature: it is a number, not an object"),
                routes("zeros in the middle", text(collection(line(1), "\0\0\0", line(2))))
                        .isRefused("line 1, column"));
    }

    private static List<HardCase> encodings() {
        String text = collection(line(1).replace("R1", "Stra\u00dfe \u65e5\u672c"));
        var cases = Stream.of("UTF-8", "UTF-16LE", "UTF-16BE", "UTF-32LE", "UTF-32BE")
                .flatMap(name -> Stream.of(
                        routes(name, text(text, Charset.forName(name))).reads(1, 0),
                        routes(name + " with a mark", text("\uFEFF" + text, Charset.forName(name)))
                                .reads(1, 0)))
                .collect(Collectors.toList());
        cases.add(routes(
                        "UTF-16 cut within a character",
                        folder -> Files.write(
                                folder.resolve("layer.geojson"),
                                java.util.Arrays.copyOf(text.getBytes(StandardCharsets.UTF_16LE), 201)))
                .isRefused("layer.geojson: "));
        cases.add(routes(
                        "Windows-1252 in a text",
                        text(collection(line(1).replace("R1", "Stra\u00dfe")), Charset.forName("windows-1252")))
                .isRefused("layer.geojson: "));
        return cases;
    }

    private static List<HardCase> coordinates() {
        return List.of(
                routes("NaN", text(collection(line(1, "[[NaN,40],[-30,40]]"), line(2))))
                        .reads(1, 1, "bad_coordinate: vertex 1 is NaN"),
                routes(
                                "infinite",
                                text(collection(line(1, "[[-30,40],[-Infinity,40]]"), line(2, "[[1e999,40],[1,40]]"))))
                        .reads(
                                0,
                                2,
                                "bad_coordinate: vertex 1 is Infinity, 40",
                                "bad_coordinate: vertex 2 is -Infinity"),
                routes(
                                "text and null for numbers",
                                text(collection(line(1, "[[\"-30\",40],[1,2]]"), line(2, "[[null,1],[2,3]]"))))
                        .reads(0, 2, "bad_coordinate: the text \"-30\"", "bad_coordinate: a coordinate is null"),
                routes("beyond the system", text(collection(line(1, "[[-30,95],[-30,96]]"), line(2), line(3))))
                        .reads(2, 1, "bad_coordinate: extends beyond the reference system"),
                routes(
                                "latitude first",
                                text(collection(
                                        line(1, "[[40,-130],[40,-130.1]]"), line(2, "[[41,-130],[41,-130.1]]"))))
                        .reads(0, 2, "layer_issue: longitude and latitude seem to be swapped"),
                routes("lengths for degrees", text(collection(line(1, "[[500000,5700000],[500100,5700000]]"))))
                        .reads(0, 1, "layer_issue: too large for degrees", "layer_issue: --crs EPSG:code"),
                routes("across the date line", text(collection(line(1, "[[179.9999,10],[-179.9999,10]]"))))
                        .reads(1, 0),
                routes("beyond the date line", text(collection(line(1, "[[179.9999,10],[180.0001,10]]"))))
                        .reads(1, 0),
                routes(
                                "empty geometries",
                                text(collection(
                                        feature(1, "null"),
                                        feature(2, "{\"type\":\"LineString\",\"coordinates\":[]}"),
                                        feature(3, "{\"type\":\"MultiLineString\",\"coordinates\":[[]]}"),
                                        feature(4, "{\"type\":\"GeometryCollection\",\"geometries\":[]}"),
                                        "{\"type\":\"Feature\",\"properties\":null}")))
                        .reads(0, 5, "empty_geometry: the feature has no geometry"),
                routes("line of one vertex", text(collection(line(1, "[[1,2]]"))))
                        .reads(0, 1, "degenerate_part: fewer than two", "empty_geometry: "),
                routes("nested collections", text(collection(feature(1, nested(3)), feature(2, nested(40)))))
                        .reads(1, 1, "unreadable_feature: nested more than 16 deep"),
                routes(
                                "collection of several kinds",
                                text(collection(feature(
                                        1,
                                        "{\"type\":\"GeometryCollection\",\"geometries\":[{\"type\":\"Point\",\"coordinates\":[1,2]},"
                                                + "{\"type\":\"LineString\",\"coordinates\":[[1,2],[3,4]]}]}"))))
                        .reads(0, 1, "wrong_geometry_type: mixes kinds"),
                routes(
                                "points where lines should be",
                                text(collection(feature(1, "{\"type\":\"Point\",\"coordinates\":[1,2]}"))))
                        .reads(0, 1, "wrong_geometry_type: of type point, but this layer needs lines"),
                routes("heights on some vertices", text(collection(line(1, "[[-30,40,5],[-30,40.001]]"))))
                        .reads(1, 0, "layer_issue: some vertices have no height"),
                routes("four ordinates", text(collection(line(1, "[[-30,40,5,9],[-30,40.001,5,9]]"))))
                        .reads(1, 0),
                vaults("outline that crosses itself everywhere", text(collection(feature(1, star(2_000)))))
                        .reads(1, 0, "vault_footprint_invalid: its convex hull was used"),
                vaults(
                                "outline without any area",
                                text(
                                        collection(
                                                feature(
                                                        1,
                                                        "{\"type\":\"Polygon\",\"coordinates\":[[[1,2],[1,2],[1,2],[1,2]]]}"),
                                                feature(
                                                        2,
                                                        "{\"type\":\"Polygon\",\"coordinates\":[[[1,2],[1.003,2.004],[1,2],[1.003,2.004],[1,2]]]}"))))
                        .reads(2, 0, "vault_footprint_invalid: its first vertex was used as a point"),
                vaults(
                                "rings of too few vertices",
                                text(collection(feature(1, "{\"type\":\"Polygon\",\"coordinates\":[[[1,2],[3,4]]]}"))))
                        .reads(0, 1, "degenerate_part: fewer than three", "empty_geometry: "));
    }

    private static List<HardCase> sizes() {
        return List.of(
                routes("one long line", folder -> manyOnOneLine(folder.resolve("layer.geojson")))
                        .reads(MEGABYTES * 1000, 0),
                routes(
                                "nesting of ten thousand",
                                text(collection(
                                        line(1).replace("\"R1\"", "[".repeat(10_000) + "]".repeat(10_000)),
                                        line(2).replaceFirst(
                                                        "\\{",
                                                        "{\"x\":" + "{\"y\":".repeat(10_000) + "1" + "}".repeat(10_000)
                                                                + ","),
                                        feature(
                                                3,
                                                "{\"type\":\"LineString\",\"coordinates\":" + "[".repeat(10_000)
                                                        + "]".repeat(10_000) + "}"))))
                        .reads(2, 1, "unreadable_feature: coordinates are nested more than 4 deep"),
                routes("nesting of a million", text("[".repeat(1_000_000)))
                        .isRefused("line 1, column", "nested too deep"),
                routes("nesting of a million inside", text("{\"a\":" + "[".repeat(1_000_000)))
                        .isRefused("nested too deep"),
                routes(
                                "a million attributes",
                                text(collection(
                                        line(1).replaceFirst("\\{\"route", "{" + attributes(1_000_000) + "\"route"))))
                        .reads(1, 0),
                routes(
                                "attributes whose names have one hash",
                                text(collection(
                                        line(1).replaceFirst("\\{\"route", "{" + collidingAttributes(12) + "\"route"))))
                        .reads(1, 0),
                routes(
                                "number of a million digits",
                                text(collection(line(1, "[[" + "1".repeat(1_000_000) + ",2],[3,4]]"))))
                        .isRefused("line 1, column"),
                routes(
                                "wanted text of eleven million characters",
                                text(collection(line(1).replace("R1", "R".repeat(11_000_000)))))
                        .isRefused("line 1, column"),
                routes(
                                "id of a million characters",
                                text(collection("{\"type\":\"Feature\",\"id\":\"" + "i".repeat(1_000_000)
                                        + "\",\"properties\":{},\"geometry\":{\"type\":\"Line\"}}")))
                        .reads(0, 1, "unreadable_feature: type \"Line\" is not a GeoJSON type"),
                routes("all features broken", folder -> manyBroken(folder.resolve("layer.geojson"), 5_000))
                        .reads(0, 5_000, "unreadable_feature: 4,000 more features of this kind, not listed"));
    }

    private static List<HardCase> systems() {
        String utm = line(1, "[[500000,5538000],[500100,5538000]]");
        String late = "{\"type\":\"FeatureCollection\",\"features\":[" + (utm + ",").repeat(150) + utm + "]," + CRS_33N
                + ",\"more\":\"" + "x".repeat(100_000) + "\"}";
        return List.of(
                routes("old crs member before", text(collection(utm).replaceFirst("\\{", "{" + CRS_33N + ",")))
                        .reads(1, 0),
                routes("old crs member after", text(collection(utm).replaceFirst("]}$", "]," + CRS_33N + "}")))
                        .reads(1, 0),
                routes("old crs member after, far from the end", text(late)).reads(151, 0, "duplicate_id: "),
                routes("crs that is null", text(collection(utm).replaceFirst("\\{", "{\"crs\":null,")))
                        .isRefused("does not state its reference system", "--crs EPSG:code"),
                routes(
                                "unknown crs",
                                text(collection(utm)
                                        .replaceFirst(
                                                "\\{",
                                                "{\"crs\":{\"type\":\"name\"," + "\"properties\":{\"name\":\""
                                                        + "epsg ".repeat(200_000) + "\"}},")))
                        .isRefused("its reference system cannot be used", "--crs EPSG:code"),
                routes(
                                "two crs members that differ",
                                text(collection(utm)
                                        .replaceFirst("\\{", "{" + CRS_33N + ",")
                                        .replaceFirst("]}$", "]," + CRS_33N.replace("32633", "32634") + "}")))
                        .isRefused("two members \"crs\" that differ"),
                routes(
                                "easting and northing exchanged",
                                text(collection(line(1, "[[5538000,500000],[5538100,500000]]"))
                                        .replaceFirst("\\{", "{" + CRS_33N + ",")))
                        .reads(
                                0,
                                1,
                                "bad_coordinate: extends beyond the reference system",
                                "layer_issue: the two ordinates seem to be swapped"),
                routes(
                                "another system's numbers",
                                text(collection(line(1, "[[1500000,5500000],[1500100,5500000]]"))
                                        .replaceFirst("\\{", "{" + CRS_33N + ",")))
                        .reads(1, 0, "layer_issue: it may be another system; give it with --crs EPSG:code"));
    }

    private static String nested(int depth) {
        return "{\"type\":\"GeometryCollection\",\"geometries\":[".repeat(depth)
                + "{\"type\":\"LineString\",\"coordinates\":[[1,2],[3,4]]}" + "]}".repeat(depth);
    }

    /** Every edge of it crosses every other one. */
    static String star(int vertices) {
        String ring = IntStream.rangeClosed(0, vertices)
                .mapToObj(i -> {
                    double angle = 2 * Math.PI * (i % vertices) * (vertices / 2 - 1) / vertices;
                    return String.format(Locale.ROOT, "[%.9f,%.9f]", 0.001 * Math.cos(angle), 0.001 * Math.sin(angle));
                })
                .collect(Collectors.joining(","));
        return "{\"type\":\"Polygon\",\"coordinates\":[[" + ring + "]]}";
    }

    private static String attributes(int count) {
        var text = new StringBuilder();
        for (int i = 0; i < count; i++) {
            text.append("\"a").append(i).append("\":1,");
        }
        return text.toString();
    }

    /** Names whose characters add up to the same under the factor 31 or 33, which simple hashes use. */
    private static String collidingAttributes(int pairs) {
        return IntStream.range(0, 1 << pairs)
                .mapToObj(bits -> IntStream.range(0, pairs)
                        .mapToObj(i -> (bits >> i & 1) == 0 ? "Aa" : "BB")
                        .collect(Collectors.joining("", "\"", "\":1,")))
                .collect(Collectors.joining());
    }

    /** Features of about a kilobyte, without a line break. */
    private static Path manyOnOneLine(Path file) throws java.io.IOException {
        String filler = "x".repeat(850);
        try (BufferedWriter writer = Files.newBufferedWriter(file)) {
            writer.write("{\"type\":\"FeatureCollection\",\"features\":[");
            for (int i = 0; i < MEGABYTES * 1000; i++) {
                writer.write((i == 0 ? "" : ",")
                        + line(7).replace("R7", "R" + i).replace("\"id\"", "\"more\":\"" + filler + "\",\"id\""));
            }
            writer.write("]}");
        }
        return file;
    }

    private static Path manyBroken(Path file, int count) throws java.io.IOException {
        String broken = feature(1, "{\"type\":\"LineString\"}");
        return Files.writeString(
                file, collection(java.util.Collections.nCopies(count, broken).toArray(String[]::new)));
    }
}
