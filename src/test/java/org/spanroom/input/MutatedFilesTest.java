package org.spanroom.input;

import static org.junit.jupiter.api.Assertions.assertTimeout;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Valid files, changed at random with a seed: cut off, bytes turned, stretches repeated or filled, words and tokens replaced by
 * hostile ones. Whatever comes of it is read, rejected feature by feature, or refused in one line; and each feature met is
 * accounted for, by the layer and by the routes or vaults that are made of it.
 */
class MutatedFilesTest {
    /** Set the system property spanroom.mutations higher for a long hunt. */
    private static final int CASES = Integer.getInteger("spanroom.mutations", 150);

    private static final Duration LONGEST = Duration.ofSeconds(20);
    private static final String FEATURE = """
            {"type":"Feature","id":NUMBER,"properties":{"name":"Straße","n":1.5,"t":[true]},\
            "geometry":{"type":"MultiLineString","coordinates":[[[1,2,3],[4.5,-6e1,7]],[[1,2,3],[4,5,6]]]}}""";

    @TempDir
    private Path folder;

    static IntStream seeds() {
        return IntStream.range(0, CASES);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void changedGeoJsonNeverCrashes(int seed) throws IOException {
        String separator = List.of(",", "\n", "\u001e").get(seed % 3);
        String features = IntStream.rangeClosed(1, 5)
                .mapToObj(i -> (seed % 3 == 2 ? separator : "")
                        + FEATURE.replace("NUMBER", Integer.toString(i))
                        + (seed % 3 == 0 && i < 5 ? "," : "\n"))
                .reduce("", String::concat);
        String text = seed % 3 == 0
                ? "{\"type\":\"FeatureCollection\",\"crs\":null,\"features\":[" + features + "]}"
                : features;
        byte[] bytes = text.getBytes(seed % 5 == 0 ? StandardCharsets.UTF_16LE : StandardCharsets.UTF_8);

        endsWell(Files.write(folder.resolve("a.geojson"), mutated(bytes, new Random(seed))));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void changedShapefileNeverCrashes(int seed) throws IOException {
        var random = new Random(seed);
        double[][] rings = {{0, 0, 0, 9, 9, 9, 0, 0}, {1, 2, 2, 3, 1, 3, 1, 2}};
        int type = List.of(13, 15, 18).get(seed % 3);
        var shapes = new ShapefileBytes(type);
        for (int i = 0; i < 4; i++) {
            shapes.add(
                    type == 18
                            ? ShapefileBytes.multiPoint(type, rings[0], 1, 2, 3, 4)
                            : ShapefileBytes.parts(type, rings, 1, 2, 3, 4, 5, 6, 7, 8));
        }
        byte[] dbf = ShapefileBytes.dbf(
                0x57,
                List.of("A C 9 0", "B N 9 2", "C D 8 0", "D I 4 0", "E T 8 0"),
                ShapefileBytes.row("ä", "1.5", "20240101", "abcd", "abcdefgh"),
                ShapefileBytes.row("x", "", "", "", ""));
        int which = random.nextInt(4);
        Files.write(folder.resolve("a.shp"), which % 2 == 0 ? mutated(shapes.shp(), random) : shapes.shp());
        Files.write(folder.resolve("a.dbf"), which == 1 || which == 2 ? mutated(dbf, random) : dbf);
        if (seed % 4 != 0) {
            Files.write(folder.resolve("a.shx"), which == 3 ? mutated(shapes.shx(), random) : shapes.shx());
        }

        endsWell(folder.resolve("a.shp"));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void changedGeoPackageNeverCrashes(int seed) throws IOException, SQLException {
        Path file = folder.resolve("a.gpkg");
        try (var geoPackage = new SmallGeoPackage(file)) {
            geoPackage.run("PRAGMA page_size = 512");
            geoPackage.run("VACUUM");
            geoPackage.pointLayer("points", 4326, 40);
        }

        endsWell(Files.write(file, mutated(Files.readAllBytes(file), new Random(seed))));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void changedContentsNeverCrash(int seed) {
        String table = """
                duct,item,kind,inside,outside_diameter,sdr,wall,mass,in_service
                R1,a,innerduct,,40,11,,,
                R1,b,cable,a,"12,5",,,0.1,live
                R2,,cable,,1/2 in,,,0.1 lb/ft,no
                """;

        assertTimeout(
                LONGEST,
                () -> FuzzedFile.readContents(
                        FileMutator.mutated(table.getBytes(StandardCharsets.UTF_8), new Random(seed))));
    }

    /** Zones, with what they have and routes have not: rings, holes, several polygons, days. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void changedZonesNeverCrash(int seed) throws IOException, SQLException {
        var random = new Random(seed);
        Path file;
        if (seed % 3 == 0) {
            file = folder.resolve("a.gpkg");
            HardZones.geoPackage(
                    file,
                    4326,
                    HardZones.polygonBlob(3, 2),
                    HardZones.polygonBlob(1003, 3),
                    HardZones.polygonBlob(3, 2));
            Files.write(file, mutated(Files.readAllBytes(file), random));
        } else {
            file = Files.write(
                    folder.resolve("a.geojson"), mutated(FuzzSeeds.ZONES.getBytes(StandardCharsets.UTF_8), random));
        }

        endsWell(file);
    }

    private static void endsWell(Path file) {
        assertTimeout(LONGEST, () -> FuzzedFile.read(file));
    }

    private static byte[] mutated(byte[] bytes, Random random) {
        return FileMutator.mutated(bytes, random);
    }
}
