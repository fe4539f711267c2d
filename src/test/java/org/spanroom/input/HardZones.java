package org.spanroom.input;

import static org.spanroom.input.HardCase.zones;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Hard cases in layers of permit zones, in all formats. */
@SuppressWarnings("ByteBufferBackingArray") // every buffer here is allocated here
final class HardZones {
    private static final String SQUARE = "[[-30,40],[-29.99,40],[-29.99,40.01],[-30,40.01],[-30,40]]";
    private static final String HOLE = "[[-29.996,40.004],[-29.994,40.004],[-29.994,40.006],[-29.996,40.004]]";
    private static final String NO_AREA = "zone_without_area: no ring of the zone encloses an area";
    private static final String REPAIRED = "zone_outline_invalid: the outline crosses or overlaps itself";
    private static final double[] RING = {-30, 40, -30, 40.01, -29.99, 40.01, -29.99, 40, -30, 40};

    private HardZones() {}

    static List<HardCase> cases() {
        return Stream.of(rings(), types(), coordinates(), attributes(), files(), shapes(), geoPackages())
                .flatMap(List::stream)
                .toList();
    }

    /** A zone with the id, kind, name and last day of a good one. */
    private static String zone(int id, String geometry) {
        return zone(id, "\"kind\":\"rail\",\"title\":\"Yard\",\"until\":\"2199-03-31\"", geometry);
    }

    /** Every mapped field is there, if only as null: a layer without one is refused. */
    private static String zone(int id, String properties, String geometry) {
        String others = Stream.of("kind", "title", "from", "until")
                .filter(field -> !properties.contains("\"" + field + "\":"))
                .map(field -> ",\"" + field + "\":null")
                .collect(Collectors.joining());
        return zoneAsGiven(id, properties + others, geometry);
    }

    private static String zoneAsGiven(int id, String properties, String geometry) {
        return "{\"type\":\"Feature\",\"id\":" + id + ",\"properties\":{\"zone\":\"Z" + id + "\"," + properties
                + "},\"geometry\":" + geometry + "}";
    }

    static String polygon(String... rings) {
        return "{\"type\":\"Polygon\",\"coordinates\":[" + String.join(",", rings) + "]}";
    }

    private static String multiPolygon(String... polygons) {
        return "{\"type\":\"MultiPolygon\",\"coordinates\":[" + String.join(",", polygons) + "]}";
    }

    private static HardCase json(String name, String... features) {
        return zones(name, HardJson.text(HardJson.collection(features)));
    }

    /** One zone of these rings. */
    private static HardCase rings(String name, String... rings) {
        return json(name, zone(1, polygon(rings)));
    }

    private static List<HardCase> rings() {
        return List.of(
                rings("square with a hole", SQUARE, HOLE).reads(1, 0),
                rings("ring that crosses itself", "[[-30,40],[-29.99,40.01],[-29.99,40],[-30,40.01],[-30,40]]")
                        .reads(1, 0, REPAIRED),
                rings("ring that is not closed", "[[-30,40],[-29.99,40],[-29.99,40.01]]")
                        .reads(1, 0, "zone_outline_invalid: a ring was not closed"),
                rings("ring of two points", "[[-30,40],[-29.99,40]]")
                        .reads(0, 1, "degenerate_part: fewer than three", "empty_geometry: "),
                rings("ring of two points, closed", "[[-30,40],[-29.99,40],[-30,40]]")
                        .reads(0, 1, NO_AREA),
                rings("ring of one point, again and again", "[[-30,40],[-30,40],[-30,40],[-30,40]]")
                        .reads(0, 1, NO_AREA),
                rings("ring on one line", "[[-30,40],[-29.99,40.01],[-29.98,40.02],[-30,40]]")
                        .reads(0, 1, NO_AREA),
                rings("ring there and back", "[[-30,40],[-29.99,40],[-29.99,40.01],[-29.99,40],[-30,40]]")
                        .reads(0, 1, NO_AREA),
                rings("spike", "[[-30,40],[-29.99,40],[-29.5,40],[-29.99,40],[-29.99,40.01],[-30,40]]")
                        .reads(1, 0, REPAIRED),
                rings("hole outside", SQUARE, "[[-29.9,40],[-29.8,40],[-29.8,40.1],[-29.9,40]]")
                        .reads(1, 0, REPAIRED),
                rings("hole that is the whole", SQUARE, SQUARE).reads(0, 1, NO_AREA),
                rings("hole across the edge", SQUARE, "[[-29.995,40.005],[-29.9,40.005],[-29.9,40.1],[-29.995,40.005]]")
                        .reads(1, 0, REPAIRED),
                rings("holes that overlap", SQUARE, HOLE, HOLE).reads(1, 0, REPAIRED),
                rings("hole of two points", SQUARE, "[[-29.996,40.004],[-29.994,40.004]]")
                        .reads(1, 0, "degenerate_part: fewer than three"),
                rings("outer ring of two points, and a hole", "[[-30,40],[-29.99,40]]", HOLE)
                        .reads(0, 1, "degenerate_part: fewer than three"),
                rings("no rings").reads(0, 1, "empty_geometry: "),
                rings("empty ring", "[]").reads(0, 1, "empty_geometry: "),
                json("polygons that overlap", zone(1, multiPolygon("[" + SQUARE + "]", "[" + SQUARE + "]")))
                        .reads(1, 0, REPAIRED),
                json("no polygons", zone(1, multiPolygon())).reads(0, 1, "empty_geometry: "),
                json("ring that crosses itself everywhere", zone(1, HardJson.star(2_000)))
                        .reads(1, 0, "zone_outline_invalid: its convex hull was used"),
                json(
                                "a hundred of them",
                                IntStream.range(0, 100)
                                        .mapToObj(i -> zone(i, HardJson.star(300)))
                                        .toArray(String[]::new))
                        .reads(100, 0, REPAIRED),
                rings("two hundred thousand vertices", circle(200_000)).reads(1, 0),
                rings(
                                "twenty thousand holes",
                                Stream.concat(Stream.of(SQUARE), manyHoles(20_000))
                                        .toArray(String[]::new))
                        .reads(1, 0));
    }

    private static List<HardCase> types() {
        return List.of(
                json("null", zone(1, "null"), "{\"type\":\"Feature\",\"properties\":null,\"geometry\":null}")
                        .reads(0, 2, "empty_geometry: the feature has no geometry"),
                json(
                                "points and lines where polygons should be",
                                zone(1, "{\"type\":\"Point\",\"coordinates\":[-30,40]}"),
                                zone(2, "{\"type\":\"MultiPoint\",\"coordinates\":[[-30,40],[-30,41]]}"),
                                zone(3, "{\"type\":\"LineString\",\"coordinates\":" + SQUARE + "}"),
                                zone(4, "{\"type\":\"MultiLineString\",\"coordinates\":[" + SQUARE + "]}"),
                                zone(5, polygon(SQUARE)))
                        .reads(
                                1,
                                4,
                                "wrong_geometry_type: of type point, but this layer needs polygons",
                                "wrong_geometry_type: of type multilinestring, but this layer needs polygons"),
                json("nested collections", zone(1, nested(3)), zone(2, nested(40)))
                        .reads(1, 1, "unreadable_feature: nested more than 16 deep"),
                json(
                                "collection of several kinds",
                                zone(
                                        1,
                                        "{\"type\":\"GeometryCollection\",\"geometries\":[" + polygon(SQUARE)
                                                + ",{\"type\":\"Point\",\"coordinates\":[1,2]}]}"))
                        .reads(0, 1, "wrong_geometry_type: mixes kinds"),
                json("collection of nothing", zone(1, "{\"type\":\"GeometryCollection\",\"geometries\":[]}"))
                        .reads(0, 1, "empty_geometry: "),
                json("type that is none", zone(1, "{\"type\":\"CurvePolygon\",\"coordinates\":[" + SQUARE + "]}"))
                        .reads(0, 1, "unreadable_feature: type \"CurvePolygon\" is not a GeoJSON type"),
                json("coordinates of a line", zone(1, "{\"type\":\"Polygon\",\"coordinates\":" + SQUARE + "}"))
                        .reads(0, 1, "unreadable_feature: "),
                json("heights", zone(1, polygon(SQUARE.replace("]", ",5]").replace("],5]", "]]"))))
                        .reads(1, 0),
                json("heights on some vertices", zone(1, polygon(SQUARE.replaceFirst("40]", "40,5]"))))
                        .reads(1, 0, "layer_issue: some vertices have no height"));
    }

    private static List<HardCase> coordinates() {
        return List.of(
                json("NaN", zone(1, polygon(SQUARE.replaceFirst("-30", "NaN"))), zone(2, polygon(SQUARE)))
                        .reads(1, 1, "bad_coordinate: vertex 1 is NaN"),
                rings("infinite", SQUARE.replace("40.01", "1e999")).reads(0, 1, "bad_coordinate: Infinity"),
                rings("text for a number", SQUARE.replaceFirst("40", "\"40\"")).reads(0, 1, "bad_coordinate: the text"),
                rings("beyond the system", SQUARE.replace("40.01", "95"))
                        .reads(0, 1, "bad_coordinate: the zone extends beyond the reference system"),
                rings("huge numbers", SQUARE.replace("40.01", "1e300"), HOLE.replace("40.004", "-1e300"))
                        .reads(0, 1, "bad_coordinate: the zone extends beyond the reference system"),
                zones(
                                "huge numbers in a projected system",
                                HardJson.text(HardJson.collection(
                                                zone(1, polygon(SQUARE.replace("40.01", "1e300"))),
                                                zone(2, polygon(SQUARE.replace("40.01", "1.7e308"))),
                                                zone(3, polygon("[[0,0],[-1e308,1e308],[1e308,1e308],[1e308,-1e308]]")))
                                        .replaceFirst("\\{", "{" + HardJson.CRS_33N + ",")))
                        .reads(0, 3, "bad_coordinate: the zone extends beyond the reference system"),
                rings("tiny numbers", "[[0,0],[1e-320,0],[1e-320,1e-320],[0,0]]")
                        .reads(0, 1, NO_AREA),
                rings("the whole world", "[[-180,-90],[180,-90],[180,90],[-180,90],[-180,-90]]")
                        .reads(0, 1, "zone_too_wide: extends over more than ten degrees"),
                rings("as high as a country", SQUARE.replace("40.01", "51"))
                        .reads(0, 1, "zone_too_wide: extends over more than ten degrees"),
                rings("across the date line", "[[179.99,10],[-179.99,10],[-179.99,10.01],[179.99,10.01],[179.99,10]]")
                        .reads(1, 0),
                rings("beyond the date line", "[[179.99,10],[180.01,10],[180.01,10.01],[179.99,10.01],[179.99,10]]")
                        .reads(1, 0),
                rings(
                                "across the date line to and fro, with a hole beyond it",
                                "[[179.98,10],[-179.98,10],[-179.98,10.04],[179.99,10.03],[-179.99,10.02],[179.98,10.01],[179.98,10]]",
                                "[[-179.99,10.004],[-179.989,10.004],[-179.989,10.005],[-179.99,10.004]]")
                        .reads(1, 0),
                json(
                                "cut at the date line",
                                zone(
                                        1,
                                        multiPolygon(
                                                "[[[179.99,10],[180,10],[180,10.01],[179.99,10.01],[179.99,10]]]",
                                                "[[[-180,10],[-179.99,10],[-179.99,10.01],[-180,10.01],[-180,10]]]")))
                        .reads(1, 0),
                rings("latitude first", "[[40,-130],[40.01,-130],[40.01,-130.01],[40,-130]]")
                        .reads(0, 1, "layer_issue: longitude and latitude seem to be swapped"));
    }

    private static List<HardCase> attributes() {
        String square = polygon(SQUARE);
        return List.of(
                json("ids that occur again", zone(1, square), zone(1, square))
                        .reads(2, 0, "duplicate_id: an earlier zone has the id Z1"),
                json("unknown kind", zone(1, "\"kind\":\"x" + "y".repeat(100_000) + "\"", square))
                        .reads(1, 0, "zone_kind_unknown: is neither a kind in permit.kinds"),
                json("kinds of odd types", zone(1, "\"kind\":[1]", square), zone(2, "\"kind\":5", square))
                        .reads(2, 0, "zone_kind_unknown: '5' is neither a kind"),
                json("no kind", zone(1, "\"kind\":null", square), zone(2, "\"title\":\"\"", square))
                        .reads(2, 0),
                json("no fields at all", zoneAsGiven(1, "\"x\":1", square).replace("\"zone\"", "\"y\""))
                        .isRefused(
                                "it has no field 'from'",
                                "'kind'",
                                "'title'",
                                "'until'",
                                "'zone'",
                                "inputs.zones.fields"),
                json(
                                "a field of another name",
                                zone(1, "\"kid\":\"rail\"", square).replace(",\"kind\":null", ""))
                        .isRefused("it has no field 'kind' (mapped to zone_kind); did you mean 'kid'?"),
                json(
                                "wrong dates",
                                zone(1, "\"until\":\"soon\"", square),
                                zone(2, "\"until\":\"2027-02-30\"", square),
                                zone(3, "\"until\":\"99999999999-01-01\"", square),
                                zone(4, "\"until\":20270331", square),
                                zone(5, "\"until\":true", square),
                                zone(6, "\"until\":{\"day\":1}", square))
                        .reads(
                                6,
                                0,
                                "unusable_value: 'soon'",
                                "unusable_value: '2027-02-30'",
                                "unusable_value: '99999999999-01-01'"),
                json(
                                "wrong first days",
                                zone(1, "\"from\":\"soon\"", square),
                                zone(2, "\"from\":20270331", square),
                                zone(3, "\"from\":\"2199-03-31\",\"until\":\"2199-03-30\"", square),
                                zone(4, "\"from\":\"9999-12-31\"", square))
                        .reads(
                                4,
                                0,
                                "unusable_value: 'soon'",
                                "zone_days_reversed: its first day is 2199-03-31, its last 2199-03-30",
                                "zone_to_come: its first day is 9999-12-31"),
                json("day long gone", zone(1, "\"kind\":\"rail\",\"until\":\"0001-01-01\"", square))
                        .reads(1, 0, "zone_expired: its last day was 0001-01-01"),
                json("properties that are none", zone(1, square).replaceFirst("\\{\"zone.*?}", "[7]"))
                        .reads(0, 1, "unreadable_feature: \"properties\" is a list"));
    }

    private static List<HardCase> files() {
        String good = HardJson.collection(zone(1, polygon(SQUARE)), zone(2, polygon(SQUARE)));
        String utm = HardJson.collection(
                zone(1, polygon("[[500000,5538000],[500100,5538000],[500100,5538100],[500000,5538000]]")));
        return List.of(
                zones("nothing there", folder -> folder.resolve("zones.geojson"))
                        .isRefused("there is no such file"),
                zones("truncated", HardJson.text(good.substring(0, good.length() - 90)))
                        .isRefused("line 1, column", "in or after feature 2", "export it again"),
                zones("empty collection", HardJson.text(HardJson.collection())).reads(0, 0),
                zones("old crs member", HardJson.text(utm.replaceFirst("\\{", "{" + HardJson.CRS_33N + ",")))
                        .reads(1, 0),
                zones(
                                "old crs member after",
                                HardJson.text(utm.substring(0, utm.length() - 1) + "," + HardJson.CRS_33N + "}"))
                        .reads(1, 0),
                zones("crs that is null", HardJson.text(utm.replaceFirst("\\{", "{\"crs\":null,")))
                        .isRefused("does not state its reference system", "inputs.zones.crs"),
                zones("lengths for degrees", HardJson.text(utm)).reads(0, 1, "layer_issue: too large for degrees"));
    }

    private static HardCase shape(String name, int type, byte[]... contents) {
        return zones(name, folder -> {
            var shapes = new ShapefileBytes(type);
            Arrays.stream(contents).forEach(shapes::add);
            return written(folder, shapes, contents.length, HardShapes.DEGREES);
        });
    }

    private static Path written(Path folder, ShapefileBytes shapes, int rows, String prj) throws java.io.IOException {
        byte[] dbf = ShapefileBytes.dbf(
                0x03,
                List.of("zone C 8 0", "kind C 8 0", "until D 8 0", "title C 8 0", "from D 8 0"),
                IntStream.rangeClosed(1, rows)
                        .mapToObj(i -> ShapefileBytes.row("Z" + i, "rail", "21990331", "", ""))
                        .toArray(byte[][][]::new));
        Files.write(folder.resolve("zones.dbf"), dbf);
        if (!prj.isEmpty()) {
            Files.writeString(folder.resolve("zones.prj"), prj);
        }
        return shapes.write(folder, "zones");
    }

    private static List<HardCase> shapes() {
        double[][] ring = {RING};
        double[][] hole = {RING, {-29.996, 40.004, -29.994, 40.004, -29.994, 40.006, -29.996, 40.004}};
        double[][] bowTie = {{-30, 40, -29.99, 40.01, -29.99, 40, -30, 40.01, -30, 40}};
        double[][] flat = {{-30, 40, -29.99, 40, -30, 40}};
        double[][] two = {{-30, 40, -29.99, 40}};
        double[][] broken = {{-30, 40, Double.NaN, 40.01, -29.99, Double.NEGATIVE_INFINITY, -30, 40}};
        double[] heights = {1, 2, 3, 4, 5, 1, 2, 3, 4, 5};
        return List.of(
                shape("Polygon", 5, ShapefileBytes.parts(5, ring), ShapefileBytes.parts(5, hole))
                        .reads(2, 0),
                shape("PolygonZ", 15, ShapefileBytes.parts(15, ring, heights)).reads(1, 0),
                shape("PolygonM", 25, ShapefileBytes.parts(25, ring, 1, 2, 3, 4, 5))
                        .reads(1, 0),
                shape("MultiPatch", 31, ShapefileBytes.parts(31, ring))
                        .reads(0, 1, "wrong_geometry_type: of type multipatch, but this layer needs polygons"),
                shape("PolyLine", 3, ShapefileBytes.parts(3, ring))
                        .reads(0, 1, "wrong_geometry_type: but this layer needs polygons"),
                shape("null shape", 5, ShapefileBytes.nullShape(), ShapefileBytes.parts(5, ring))
                        .reads(1, 1, "empty_geometry: "),
                shape("ring that crosses itself", 5, ShapefileBytes.parts(5, bowTie))
                        .reads(1, 0, REPAIRED),
                shape("ring without area", 5, ShapefileBytes.parts(5, flat)).reads(0, 1, NO_AREA),
                shape("ring of two points", 5, ShapefileBytes.parts(5, two))
                        .reads(0, 1, "degenerate_part: fewer than three"),
                shape("NaN and infinite", 5, ShapefileBytes.parts(5, broken)).reads(0, 1, "bad_coordinate: vertex 2"),
                zones(
                                "no .prj",
                                folder -> written(
                                        folder, new ShapefileBytes(5).add(ShapefileBytes.parts(5, ring)), 1, ""))
                        .isRefused("does not state its reference system", "inputs.zones.crs"),
                zones("truncated", folder -> {
                            var shapes = new ShapefileBytes(5)
                                    .add(ShapefileBytes.parts(5, ring))
                                    .add(ShapefileBytes.parts(5, ring));
                            Path file = written(folder, shapes, 2, HardShapes.DEGREES);
                            return HardGeoPackages.cut(file, shapes.shp().length - 40);
                        })
                        .reads(1, 1, "layer_issue: it seems truncated", "unreadable_feature: its record claims"),
                zones("header cut off", folder -> Files.write(folder.resolve("zones.shp"), new byte[] {0, 0, 39, 10}))
                        .isRefused("shorter than a shapefile's header"));
    }

    private static HardCase geometry(String name, byte[] geometry) {
        return zones(name, folder -> geoPackage(folder.resolve("zones.gpkg"), 4326, geometry));
    }

    /** A layer of a zone for each geometry. */
    static Path geoPackage(Path file, int srsId, byte[]... geometries) throws SQLException {
        try (var geoPackage = new SmallGeoPackage(file)) {
            geoPackage.run("PRAGMA page_size = 512");
            geoPackage.run("VACUUM");
            geoPackage.register("zones", srsId);
            geoPackage.run("CREATE TABLE zones (fid INTEGER PRIMARY KEY, geom BLOB, zone TEXT, kind TEXT, until DATE,"
                    + " title TEXT, \"from\" DATE)");
            for (int i = 0; i < geometries.length; i++) {
                geoPackage.insert("zones", i + 1, geometries[i], "Z" + i, "rail", "2199-03-31", null, null);
            }
        }
        return file;
    }

    /** A polygon of one ring, of a type with this many ordinates a vertex, in well-known binary (OGC 06-103r4, 8.2). */
    static byte[] polygonBlob(int type, int ordinates) {
        ByteBuffer blob = HardGeoPackages.header(0).put((byte) 0).putInt(type).putInt(1);
        blob.putInt(RING.length / 2);
        for (int i = 0; i < RING.length; i += 2) {
            blob.putDouble(RING[i]).putDouble(RING[i + 1]);
            for (int more = 2; more < ordinates; more++) {
                blob.putDouble(i);
            }
        }
        return HardGeoPackages.bytes(blob);
    }

    private static byte[] members(int type, byte[]... geometries) {
        ByteBuffer blob = ByteBuffer.allocate(13 + 400 * geometries.length)
                .put(new byte[] {'G', 'P', 0, 0, 0, 0, 0, 0, 0})
                .putInt(type)
                .putInt(geometries.length);
        for (byte[] geometry : geometries) {
            blob.put(geometry, 8, geometry.length - 8);
        }
        return HardGeoPackages.bytes(blob);
    }

    private static List<HardCase> geoPackages() {
        byte[] polygon = polygonBlob(3, 2);
        String straight = "; export it with its curves converted to straight segments";
        return List.of(
                geometry("Polygon", polygon).reads(1, 0),
                geometry("Polygon Z", polygonBlob(1003, 3)).reads(1, 0),
                geometry("Polygon M", polygonBlob(2003, 3)).reads(1, 0),
                geometry("Polygon ZM", polygonBlob(3003, 4)).reads(1, 0),
                geometry("MultiPolygon", members(6, polygon)).reads(1, 0),
                geometry("collection of a polygon", members(7, members(7, polygon)))
                        .reads(1, 0),
                geometry("CurvePolygon", polygonBlob(10, 2))
                        .reads(
                                0,
                                1,
                                "wrong_geometry_type: of type curvepolygon, but this layer needs polygons" + straight),
                geometry("CurvePolygon Z", polygonBlob(1010, 3))
                        .reads(0, 1, "wrong_geometry_type: of type curvepolygon"),
                geometry("MultiSurface", members(12, polygon))
                        .reads(
                                0,
                                1,
                                "wrong_geometry_type: of type multisurface, but this layer needs polygons" + straight),
                geometry("PolyhedralSurface", members(15, polygon)).reads(0, 1, "wrong_geometry_type: "),
                geometry("line", HardGeoPackages.line())
                        .reads(0, 1, "wrong_geometry_type: of type linestring, but this layer needs polygons"),
                geometry("cut off", Arrays.copyOf(polygon, polygon.length - 8)).reads(0, 1, "unreadable_feature: "),
                geometry(
                                "rings that lie",
                                HardGeoPackages.bytes(HardGeoPackages.header(0)
                                        .put((byte) 0)
                                        .putInt(3)
                                        .putInt(Integer.MAX_VALUE)))
                        .reads(0, 1, "unreadable_feature: claims 2,147,483,647 members"),
                zones("system undefined", folder -> geoPackage(folder.resolve("zones.gpkg"), -1, polygon))
                        .isRefused("does not state its reference system", "inputs.zones.crs"),
                zones(
                                "truncated",
                                folder -> HardGeoPackages.cut(
                                        geoPackage(folder.resolve("zones.gpkg"), 4326, polygon), 2_000))
                        .isRefused("zones.gpkg: ", "export it again"),
                zones(
                                "magic alone",
                                folder -> Files.write(
                                        folder.resolve("zones.gpkg"),
                                        "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII)))
                        .isRefused("zones.gpkg: "));
    }

    private static String nested(int depth) {
        return "{\"type\":\"GeometryCollection\",\"geometries\":[".repeat(depth) + polygon(SQUARE) + "]}".repeat(depth);
    }

    private static String circle(int vertices) {
        return IntStream.rangeClosed(0, vertices)
                .mapToObj(i -> {
                    double angle = 2 * Math.PI * (i % vertices) / vertices;
                    return String.format(Locale.ROOT, "[%.12f,%.12f]", -30 + Math.cos(angle), 40 + Math.sin(angle));
                })
                .collect(Collectors.joining(",", "[", "]"));
    }

    /** Triangles side by side within the square. */
    private static Stream<String> manyHoles(int count) {
        int side = (int) Math.ceil(Math.sqrt(count));
        double step = 0.0098 / side;
        return IntStream.range(0, count).mapToObj(i -> {
            double x = -29.9999 + step * (i % side);
            int row = i / side;
            double y = 40.0001 + step * row;
            double x2 = x + step / 2;
            double y2 = y + step / 2;
            return String.format(
                    Locale.ROOT, "[[%.9f,%.9f],[%.9f,%.9f],[%.9f,%.9f],[%.9f,%.9f]]", x, y, x2, y, x2, y2, x, y);
        });
    }
}
