package org.spanroom.input;

import static org.spanroom.input.HardCase.routes;
import static org.spanroom.input.HardCase.vaults;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Hard cases in Shapefiles. */
public final class HardShapes {
    public static final String DEGREES = "GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\",SPHEROID[\"WGS_1984\",6378137.0,"
            + "298.257223563]],PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]]";
    private static final double[][] LINE = {{-30, 40, -30, 40.001}};
    private static final double[][] RING = {{-30, 40, -30, 40.001, -29.999, 40.001, -30, 40}};

    private HardShapes() {}

    /** The bytes of each file of a shapefile; empty ones are not written. */
    private static final class Parts {
        private byte[] shp;
        private byte[] shx;
        private byte[] dbf;
        private byte[] prj = DEGREES.getBytes(StandardCharsets.UTF_8);
        private byte[] cpg = {};
        private byte[] dbt = {};

        private Parts(ShapefileBytes shapes, int rows) {
            shp = shapes.shp();
            shx = shapes.shx();
            dbf = ShapefileBytes.dbf(
                    0x03,
                    List.of("route C 8 0", "vault C 8 0"),
                    IntStream.rangeClosed(1, rows)
                            .mapToObj(i -> ShapefileBytes.row("R" + i, "V" + i))
                            .toArray(byte[][][]::new));
        }

        private Path write(Path folder) throws IOException {
            var parts = List.of(shx, dbf, prj, cpg, dbt);
            var endings = List.of("shx", "dbf", "prj", "cpg", "dbt");
            for (int i = 0; i < parts.size(); i++) {
                if (parts.get(i).length > 0) {
                    Files.write(folder.resolve("layer." + endings.get(i)), parts.get(i));
                }
            }
            return Files.write(folder.resolve("layer.shp"), shp);
        }
    }

    /** A change to the files of a shapefile. */
    private interface Change {
        void to(Parts parts);
    }

    static List<HardCase> cases() {
        return Stream.of(types(), parts(), headers(), records(), tables())
                .flatMap(List::stream)
                .toList();
    }

    private static ShapefileBytes lines(int count) {
        var shapes = new ShapefileBytes(3);
        for (int i = 0; i < count; i++) {
            shapes.add(ShapefileBytes.parts(3, LINE));
        }
        return shapes;
    }

    /** Three lines with three rows, changed. */
    private static HardCase three(String name, Change change) {
        return routes(name, folder -> {
            var parts = new Parts(lines(3), 3);
            change.to(parts);
            return parts.write(folder);
        });
    }

    private static HardCase shape(String name, String role, int type, byte[] content) {
        HardCase.Maker maker = folder -> new Parts(new ShapefileBytes(type).add(content), 1).write(folder);
        return role.equals("routes") ? routes(name, maker) : vaults(name, maker);
    }

    private static List<HardCase> types() {
        double[] xy = {-30, 40, -30, 40.001};
        return List.of(
                shape("PolyLine", "routes", 3, ShapefileBytes.parts(3, LINE)).reads(1, 0),
                shape("PolyLineZ", "routes", 13, ShapefileBytes.parts(13, LINE, 1, 2, 3, 4))
                        .reads(1, 0),
                shape("PolyLineZ without measures", "routes", 13, ShapefileBytes.parts(13, LINE, 1, 2))
                        .reads(1, 0),
                shape("PolyLineZ without heights", "routes", 13, ShapefileBytes.parts(13, LINE))
                        .reads(1, 0, "layer_issue: shapes should have heights"),
                shape(
                                "PolyLineZ with NaN heights",
                                "routes",
                                13,
                                ShapefileBytes.parts(13, LINE, Double.NaN, Double.NaN, 0, 0))
                        .reads(1, 0),
                shape("PolyLineM", "routes", 23, ShapefileBytes.parts(23, LINE, -1e39, Double.NaN))
                        .reads(1, 0),
                shape("Point", "vaults", 1, ShapefileBytes.point(1, -30, 40)).reads(1, 0),
                shape("PointZ", "vaults", 11, ShapefileBytes.point(11, -30, 40, 5, 0))
                        .reads(1, 0),
                shape("PointM", "vaults", 21, ShapefileBytes.point(21, -30, 40, 7))
                        .reads(1, 0),
                shape("MultiPoint", "vaults", 8, ShapefileBytes.multiPoint(8, xy))
                        .reads(1, 0),
                shape("MultiPointZ", "vaults", 18, ShapefileBytes.multiPoint(18, xy, 1, 2, 3, 4))
                        .reads(1, 0),
                shape("MultiPointM", "vaults", 28, ShapefileBytes.multiPoint(28, xy, 1, 2))
                        .reads(1, 0),
                shape("Polygon", "vaults", 5, ShapefileBytes.parts(5, RING)).reads(1, 0),
                shape("PolygonZ", "vaults", 15, ShapefileBytes.parts(15, RING, 1, 2, 3, 4))
                        .reads(1, 0),
                shape("PolygonM", "vaults", 25, ShapefileBytes.parts(25, RING, 1, 2, 3, 4))
                        .reads(1, 0),
                shape("MultiPatch", "vaults", 31, ShapefileBytes.parts(31, RING))
                        .reads(0, 1, "wrong_geometry_type: of type multipatch"),
                shape("unknown type", "routes", 3, ShapefileBytes.parts(77, LINE))
                        .reads(0, 1, "unreadable_feature: its shape type is 77"),
                shape("null shape", "routes", 3, ShapefileBytes.nullShape()).reads(0, 1, "empty_geometry: "),
                shape("type other than the file's", "routes", 3, ShapefileBytes.parts(23, LINE, 1, 2))
                        .reads(1, 0, "layer_issue: a type other than the file's"),
                shape("no parts", "routes", 3, ShapefileBytes.parts(3, new double[][] {}))
                        .reads(0, 1, "empty_geometry: "),
                shape("NaN", "routes", 3, ShapefileBytes.parts(3, new double[][] {{Double.NaN, 40, -30, 40}}))
                        .reads(0, 1, "bad_coordinate: vertex 1 is NaN"),
                shape("infinite", "vaults", 1, ShapefileBytes.point(1, Double.POSITIVE_INFINITY, 40))
                        .reads(0, 1, "bad_coordinate: vertex 1 is Infinity"),
                shape("more rings than can be sorted out", "vaults", 5, ShapefileBytes.parts(5, rings(30_000)))
                        .reads(0, 1, "unreadable_feature: too many to be sorted"));
    }

    private static List<HardCase> parts() {
        return List.of(
                three("no .shx", parts -> parts.shx = new byte[0]).reads(3, 0, "layer_issue: its .shx is missing"),
                three("no .dbf", parts -> parts.dbf = new byte[0])
                        .isRefused("no field 'route'", "is its .dbf missing?"),
                three("no .prj", parts -> parts.prj = new byte[0])
                        .isRefused("does not state its reference system", "--crs EPSG:code"),
                three("no .shx and no .dbf", parts -> {
                            parts.shx = new byte[0];
                            parts.dbf = new byte[0];
                        })
                        .isRefused("no field 'route'", "is its .dbf missing?"),
                three(".prj of nothing", parts -> parts.prj = " \n".getBytes(StandardCharsets.UTF_8))
                        .isRefused("does not state its reference system"),
                three(
                                ".prj that is no definition",
                                parts -> parts.prj = "here and there".getBytes(StandardCharsets.UTF_8))
                        .isRefused("its reference system cannot be used", "--crs EPSG:code"),
                three(
                                ".prj nested without end",
                                parts -> parts.prj = "PROJCS[".repeat(13_000).getBytes(StandardCharsets.UTF_8))
                        .isRefused("its reference system cannot be used", "--crs EPSG:code"),
                three(".prj of two megabytes", parts -> parts.prj = new byte[2_000_000])
                        .isRefused("does not state its reference system"),
                three("unknown code page", parts -> {
                            parts.cpg = "KLINGON-8".getBytes(StandardCharsets.UTF_8);
                            parts.dbf[33 + 64 + 1] = (byte) 0xE9;
                        })
                        .reads(3, 0, "layer_issue: the encoding \"KLINGON-8\""),
                three("unknown language byte", parts -> {
                            parts.dbf[29] = (byte) 0xEE;
                            parts.dbf[33 + 64 + 1] = (byte) 0xE9;
                        })
                        .reads(3, 0, "encoding_assumed: "),
                three("index that lists one record twice and one not at all", parts -> {
                            byte[] second = Arrays.copyOfRange(parts.shx, 108, 116);
                            System.arraycopy(second, 0, parts.shx, 116, second.length);
                        })
                        .reads(3, 0, "layer_issue: the index places record 3 at byte"),
                three("index in another order", parts -> {
                            byte[] first = Arrays.copyOfRange(parts.shx, 100, 108);
                            System.arraycopy(parts.shx, 116, parts.shx, 100, first.length);
                            System.arraycopy(first, 0, parts.shx, 116, first.length);
                        })
                        .reads(3, 0, "layer_issue: the index places record 1 at byte"),
                three("index of another file", parts -> parts.shx = lines(1).shx())
                        .reads(3, 0, "layer_issue: the index has 1 record, and the .shp has 3"),
                three("index cut off", parts -> parts.shx = Arrays.copyOf(parts.shx, 50))
                        .reads(3, 0, "layer_issue: the index layer.shx is damaged"),
                three("index too long", parts -> parts.shx = Arrays.copyOf(parts.shx, 100 + 8 * 500))
                        .reads(3, 0, "layer_issue: more than the .shp can hold"),
                three("index beyond the file", parts -> big(parts.shx, 108, 1 << 28))
                        .reads(3, 0, "layer_issue: the index places record 2 at byte 536870912"));
    }

    private static List<HardCase> headers() {
        return List.of(
                three("zero length", parts -> parts.shp = new byte[0]).isRefused("layer.shp: it is empty"),
                three("header cut off", parts -> parts.shp = Arrays.copyOf(parts.shp, 60))
                        .isRefused("shorter than a shapefile's header"),
                three("wrong magic", parts -> parts.shp[3] = 0).isRefused("does not start with a Shapefile header"),
                three(
                                "wrong endian",
                                parts -> ByteBuffer.wrap(parts.shp)
                                        .order(ByteOrder.LITTLE_ENDIAN)
                                        .putInt(9994))
                        .isRefused("wrong byte order", "Export it again"),
                three("length that lies", parts -> big(parts.shp, 24, Integer.MAX_VALUE))
                        .reads(3, 0, "layer_issue: its header says 4,294,967,294; it seems truncated"),
                three("negative length", parts -> big(parts.shp, 24, -1))
                        .reads(3, 0, "layer_issue: its header says -2"),
                three("truncated", parts -> parts.shp = Arrays.copyOf(parts.shp, parts.shp.length - 20))
                        .reads(2, 1, "layer_issue: it seems truncated", "unreadable_feature: its record claims"),
                three("truncated, without an index", parts -> {
                            parts.shp = Arrays.copyOf(parts.shp, parts.shp.length - 20);
                            parts.shx = new byte[0];
                        })
                        .reads(
                                2,
                                1,
                                "layer_issue: it seems truncated",
                                "unreadable_feature: nothing after it can be found"),
                three("compressed", parts -> parts.shp = new byte[] {0x1F, (byte) 0x8B, 8, 0})
                        .isRefused("it is compressed. Unpack it first"));
    }

    private static List<HardCase> records() {
        int second = 100 + 8 + 80;
        return List.of(
                three("record length that lies", parts -> big(parts.shp, second + 4, Integer.MAX_VALUE))
                        .reads(2, 1, "unreadable_feature: its record claims 4,294,967,294 bytes"),
                three("negative record length", parts -> big(parts.shp, second + 4, -4))
                        .reads(2, 1, "unreadable_feature: its record claims -8 bytes"),
                three("record length that lies, without an index", parts -> {
                            big(parts.shp, second + 4, Integer.MAX_VALUE);
                            parts.shx = new byte[0];
                        })
                        .isRefused("record 2 or the one before it is damaged", "Add its .shx"),
                three("record too short for its counts", parts -> big(parts.shp, second + 4, 30))
                        .reads(2, 1, "unreadable_feature: more than its record can hold"),
                three("vertices that lie", parts -> little(parts.shp, second + 8 + 40, 500_000_000))
                        .reads(
                                2,
                                1,
                                "unreadable_feature: it claims 500,000,000 vertices, more than its record can hold"),
                three("parts that lie", parts -> little(parts.shp, second + 8 + 36, Integer.MAX_VALUE))
                        .reads(
                                2,
                                1,
                                "unreadable_feature: it claims 2,147,483,647 parts, more than its record can hold"),
                three("negative vertices", parts -> little(parts.shp, second + 8 + 40, -1))
                        .reads(2, 1, "unreadable_feature: it claims -1 vertices"),
                three("part that begins elsewhere", parts -> little(parts.shp, second + 8 + 44, 9))
                        .reads(2, 1, "unreadable_feature: part 1 begins at vertex 9"),
                routes("one record named again and again", folder -> {
                            var parts = new Parts(lines(200), 200);
                            for (int at = 100; at < parts.shx.length; at += 8) {
                                big(parts.shx, at, 50);
                            }
                            big(parts.shp, 104, (parts.shp.length - 108) / 2);
                            return parts.write(folder);
                        })
                        .isRefused("lists the same records repeatedly"));
    }

    private static List<HardCase> tables() {
        return List.of(
                routes(".dbf shorter than .shp", folder -> new Parts(lines(3), 1).write(folder))
                        .reads(3, 0, "layer_issue: the .shp has 3 shapes, but the .dbf has 1 row"),
                routes(".dbf longer than .shp", folder -> new Parts(lines(1), 3).write(folder))
                        .reads(1, 2, "layer_issue: the .dbf has 3 rows, but the .shp has 1 shape", "empty_geometry: "),
                three("rows that lie", parts -> little(parts.dbf, 4, -1))
                        .reads(3, 0, "layer_issue: the .dbf claims 4,294,967,295 rows, but has 3"),
                three(".dbf cut off", parts -> parts.dbf = Arrays.copyOf(parts.dbf, parts.dbf.length - 10))
                        .reads(3, 0, "layer_issue: the .dbf claims 3 rows, but has 2; it seems truncated"),
                three(".dbf of no length", parts -> parts.dbf = new byte[] {3})
                        .isRefused("layer.dbf: it is shorter than the header of a table", "remove it"),
                three(
                                ".dbf with rows of no length",
                                parts -> ByteBuffer.wrap(parts.dbf).putShort(10, (short) 0))
                        .isRefused("layer.dbf: ", "do not match its size"),
                three(".dbf with fields longer than its rows", parts -> parts.dbf[32 + 16] = (byte) 255)
                        .isRefused("layer.dbf: its fields take", "remove it"),
                three(
                                "truth values of no width",
                                parts -> parts.dbf = ShapefileBytes.dbf(
                                        0x03,
                                        List.of("duct C 8 0", "route L 0 0"),
                                        ShapefileBytes.row("D1", ""),
                                        ShapefileBytes.row("D2", ""),
                                        ShapefileBytes.row("D3", "")))
                        .reads(3, 0, "missing_value: "),
                three("deleted rows", parts -> parts.dbf[parts.dbf.length - 1 - 17] = '*')
                        .reads(2, 0, "layer_issue: marked as deleted"),
                three("memo field without its file", parts -> parts.dbf = memoTable("         1"))
                        .reads(3, 0, "layer_issue: refers to texts"));
    }

    private static byte[] memoTable(String block) {
        return ShapefileBytes.dbf(
                0x03,
                List.of("route M 10 0"),
                ShapefileBytes.row(block),
                ShapefileBytes.row(""),
                ShapefileBytes.row("999999999"));
    }

    private static double[][] rings(int count) {
        var rings = new double[count][];
        for (int i = 0; i < count; i++) {
            double x = i * 1e-6;
            // Half run as outer rings, half as holes, and the boxes of all are in one another.
            rings[i] = i % 2 == 0
                    ? new double[] {-x, -x, -x, x, x, x, -x, -x}
                    : new double[] {-x, -x, x, x, -x, x, -x, -x};
        }
        return rings;
    }

    private static void big(byte[] bytes, int at, int value) {
        ByteBuffer.wrap(bytes).putInt(at, value);
    }

    private static void little(byte[] bytes, int at, int value) {
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).putInt(at, value);
    }
}
