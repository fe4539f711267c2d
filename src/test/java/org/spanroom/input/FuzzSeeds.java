package org.spanroom.input;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import org.spanroom.input.shapefile.MemoBytes;

/** Writes small valid files for a coverage-guided fuzzer to begin with, a folder for each reader. */
public final class FuzzSeeds {
    private static final double[][] RINGS = {{0, 0, 0, 9, 9, 9, 0, 0}, {1, 2, 2, 3, 1, 3, 1, 2}};

    /** Two zones with all that zones have. */
    static final String ZONES = HardJson.collection(
            "{\"type\":\"Feature\",\"id\":1,\"properties\":{\"zone\":\"A\",\"kind\":\"rail\",\"until\":\"2199-03-31\"},"
                    + "\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[[[0,0],[9,0],[9,9],[0,9],[0,0]],"
                    + "[[1,1],[2,1],[2,2],[1,1]]]}}",
            "{\"type\":\"Feature\",\"id\":2,\"properties\":{\"zone\":\"B\",\"kind\":\"night\",\"until\":\"20270331\"},"
                    + "\"geometry\":{\"type\":\"MultiPolygon\",\"coordinates\":[[[[179,0],[-179,0],[-179,1],[179,0]]],"
                    + "[[[5,5,1],[6,5,2],[6,6,3],[5,6]]]]}}");

    static final List<String> TARGETS =
            List.of("GeoJsonFuzz", "ShapefileFuzz", "WkbFuzz", "GeoPackageFuzz", "ContentsFuzz", "ZonesFuzz");

    private FuzzSeeds() {}

    public static void main(String[] args) throws IOException, SQLException {
        Path folder = Path.of(args[0]);
        for (String name : TARGETS) {
            Files.createDirectories(folder.resolve(name));
        }
        String feature = HardJson.line(1);
        write(folder, "GeoJsonFuzz/collection", HardJson.collection(feature, HardJson.line(2)));
        write(folder, "GeoJsonFuzz/lines", feature + "\n" + HardJson.line(2) + "\n");
        write(folder, "GeoJsonFuzz/records", "\u001e" + feature + "\n\u001e" + HardJson.line(2) + "\n");
        write(
                folder,
                "GeoJsonFuzz/polygon",
                HardJson.collection(
                        HardJson.feature(
                                1,
                                "{\"type\":\"MultiPolygon\",\"coordinates\":[[[[0,0],[9,0],[9,9],[0,0]],[[1,1],[2,1],[2,2],[1,1]]]]}")));
        write(
                folder,
                "GeoJsonFuzz/crs",
                "{\"type\":\"FeatureCollection\",\"features\":[" + feature
                        + "],\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"urn:ogc:def:crs:OGC:1.3:CRS84\"}}}");
        for (int type : new int[] {13, 15, 18}) {
            Files.write(folder.resolve("ShapefileFuzz/" + type), shapefile(type));
        }
        Files.write(folder.resolve("WkbFuzz/point"), SmallGeoPackage.point(1, 2));
        Files.write(folder.resolve("WkbFuzz/line"), HardGeoPackages.line());
        write(folder, "ZonesFuzz/zones", ZONES);
        write(folder, "ZonesFuzz/crossing", HardJson.collection(HardJson.feature(1, HardJson.star(20))));
        Path geoPackage = folder.resolve("GeoPackageFuzz/points");
        Files.deleteIfExists(geoPackage);
        geoPackage(geoPackage);
        write(
                folder,
                "ContentsFuzz/commas",
                "duct,item,kind,inside,outside_diameter\nR1,a,innerduct,,40\nR1,b,cable,a,\"12,5\"\n");
        write(folder, "ContentsFuzz/tabs", "duct\tkind\twall\nR1\tinnerduct\t1-1/4 in\n");
        FuzzDocumentSeeds.write(folder);
        FuzzCorpus.unpack(folder);
    }

    static byte[] shapefile(int type) {
        var shapes = new ShapefileBytes(type);
        for (int i = 0; i < 3; i++) {
            shapes.add(
                    type == 18
                            ? ShapefileBytes.multiPoint(type, RINGS[0], 1, 2, 3, 4)
                            : ShapefileBytes.parts(type, RINGS, 1, 2, 3, 4, 5, 6, 7, 8));
        }
        MemoBytes memo = MemoBytes.of(MemoBytes.Layout.DBASE_4, "text".getBytes(StandardCharsets.US_ASCII));
        byte[] dbf = ShapefileBytes.dbf(
                0x57,
                List.of("route C 9 0", "n N 9 2", "C D 8 0", "D I 4 0", "E T 8 0", "F Y 8 0", "G L 1 0", "H M 10 0"),
                ShapefileBytes.row("a", "1.5", "20240101", "abcd", "abcdefgh", "abcdefgh", "T", "         1"),
                ShapefileBytes.row("x", "", "", "", "", "", "", ""));
        return FuzzedFile.joined(shapes.shp(), shapes.shx(), dbf, memo.bytes());
    }

    static void geoPackage(Path file) throws SQLException {
        try (var geoPackage = new SmallGeoPackage(file)) {
            geoPackage.run("PRAGMA page_size = 512");
            geoPackage.run("VACUUM");
            geoPackage.pointLayer("points", 4326, 20);
            geoPackage.run("CREATE VIEW some AS SELECT * FROM points WHERE fid > 3");
        }
    }

    private static void write(Path folder, String name, String text) throws IOException {
        Files.write(folder.resolve(name), text.getBytes(StandardCharsets.UTF_8));
    }
}
