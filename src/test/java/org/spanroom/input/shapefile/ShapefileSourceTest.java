package org.spanroom.input.shapefile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;
import static org.spanroom.input.ShapefileBytes.multiPoint;
import static org.spanroom.input.ShapefileBytes.nullShape;
import static org.spanroom.input.ShapefileBytes.parts;
import static org.spanroom.input.ShapefileBytes.point;
import static org.spanroom.input.ShapefileBytes.row;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.InputException;
import org.spanroom.input.ReadLayer;
import org.spanroom.input.ShapefileBytes;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.input.layer.SourceGeometry;

/** Layout and shape types: ESRI Shapefile Technical Description, ESRI White Paper, July 1998. */
class ShapefileSourceTest {
    private static final double[][] LINE = {{1, 2, 3, 4, 5, 6}};
    private static final double[][] TWO_LINES = {{1, 2, 3, 4}, {5, 6, 7, 8}};

    @TempDir
    private Path folder;

    static Stream<Arguments> shapeTypes() {
        return Stream.of(
                Arguments.of(1, point(1, 1, 2), "POINTS [1.0, 2.0]", "Point"),
                Arguments.of(11, point(11, 1, 2, 3, 4), "POINTS Z [1.0, 2.0, 3.0]", "PointZ"),
                Arguments.of(21, point(21, 1, 2, 4), "POINTS [1.0, 2.0]", "PointM"),
                Arguments.of(8, multiPoint(8, new double[] {1, 2, 3, 4}), "POINTS [1.0, 2.0] [3.0, 4.0]", "MultiPoint"),
                Arguments.of(
                        18,
                        multiPoint(18, new double[] {1, 2, 3, 4}, 5, 6),
                        "POINTS Z [1.0, 2.0, 5.0] [3.0, 4.0, 6.0]",
                        "MultiPointZ"),
                Arguments.of(
                        28,
                        multiPoint(28, new double[] {1, 2, 3, 4}, 5, 6),
                        "POINTS [1.0, 2.0] [3.0, 4.0]",
                        "MultiPointM"),
                Arguments.of(3, parts(3, LINE), "LINES [1.0, 2.0, 3.0, 4.0, 5.0, 6.0]", "PolyLine"),
                Arguments.of(3, parts(3, TWO_LINES), "LINES [1.0, 2.0, 3.0, 4.0] [5.0, 6.0, 7.0, 8.0]", "PolyLine"),
                Arguments.of(
                        13,
                        parts(13, TWO_LINES, 10, 11, 12, 13),
                        "LINES Z [1.0, 2.0, 10.0, 3.0, 4.0, 11.0] [5.0, 6.0, 12.0, 7.0, 8.0, 13.0]",
                        "PolyLineZ"),
                Arguments.of(
                        13,
                        parts(13, LINE, 10, 11, 12, 7, 8, 9),
                        "LINES Z [1.0, 2.0, 10.0, 3.0, 4.0, 11.0, 5.0, 6.0, 12.0]",
                        "PolyLineZ"),
                Arguments.of(23, parts(23, LINE, 7, 8, 9), "LINES [1.0, 2.0, 3.0, 4.0, 5.0, 6.0]", "PolyLineM"),
                Arguments.of(
                        15,
                        parts(15, new double[][] {{0, 0, 0, 1, 1, 1, 0, 0}}, 5, 6, 7, 5),
                        "POLYGONS Z +[0.0, 0.0, 5.0, 0.0, 1.0, 6.0, 1.0, 1.0, 7.0, 0.0, 0.0, 5.0]",
                        "PolygonZ"),
                Arguments.of(31, new byte[] {31, 0, 0, 0, 9, 9}, "OTHER", "MultiPatch"),
                Arguments.of(3, nullShape(), "NONE", "null"),
                Arguments.of(3, parts(3, new double[0][]), "NONE", "PolyLine"));
    }

    @ParameterizedTest(name = "type {0}: {2}")
    @MethodSource("shapeTypes")
    void everyShapeTypeIsRead(int type, byte[] content, String geometry, String name) throws IOException {
        Path file = new ShapefileBytes(type).add(content).write(folder, "a");

        ReadLayer layer = ReadLayer.of(file);

        assertThat(layer.geometries()).containsExactly(geometry);
        assertThat(layer.features()).extracting(SourceFeature::geometryType).containsExactly(name);
    }

    @Test
    void heightsThatAreNotThereAreReportedAndTheShapeIsFlat() throws IOException {
        Path file =
                new ShapefileBytes(13).add(parts(13, LINE)).add(point(11, 1, 2)).write(folder, "a");

        ReadLayer layer = ReadLayer.of(file);

        assertThat(layer.geometries()).containsExactly("LINES [1.0, 2.0, 3.0, 4.0, 5.0, 6.0]", "POINTS [1.0, 2.0]");
        assertThat(layer.details()).contains("shapes should have heights, but have none (2 features, first number 1)");
    }

    @Test
    void holesFollowTheRingAroundThemWhateverTheirOrder() throws IOException {
        double[] holeInSmall = {11, 11, 12, 11, 12, 12, 11, 11}; // runs against the clock
        double[] large = {0, 0, 0, 9, 9, 9, 9, 0, 0, 0};
        double[] small = {10, 10, 10, 14, 14, 14, 14, 10, 10, 10};
        double[] holeInLarge = {0, 0, 5, 5, 0, 5, 0, 0}; // touches the ring around it
        double[] island = {10.5, 13, 10.5, 13.5, 11, 13.5, 10.5, 13};
        double[] astray = {50, 50, 51, 50, 51, 51, 50, 50};
        Path file = new ShapefileBytes(5)
                .add(parts(5, new double[][] {holeInSmall, large, small, holeInLarge, island, astray}))
                .write(folder, "a");

        SourceGeometry geometry = ReadLayer.of(file).features().get(0).geometry();

        assertThat(geometry.parts()).containsExactly(large, holeInLarge, small, holeInSmall, island, astray);
        assertThat(geometry.startsPolygon()).containsExactly(true, false, true, false, true, true);
    }

    @Test
    void rowsGoWithShapesAndDeletedOnesAreLeftOut() throws IOException {
        Path file = new ShapefileBytes(1)
                .add(point(1, 1, 1))
                .add(point(1, 2, 2))
                .add(nullShape())
                .write(folder, "a");
        byte[] dbf = ShapefileBytes.dbf(3, List.of("ID C 5 0", "N N 5 0"), row("x", "1"), row("y", "2"), row("z", ""));
        dbf[33 + 64 + 11] = '*'; // the mark of the second row
        Files.write(folder.resolve("a.DBF"), dbf);

        ReadLayer layer = ReadLayer.of(file, "N", "none", "ID");

        assertThat(layer.header().fields()).containsExactly("ID", "N");
        assertThat(layer.header().featureCount()).isEqualTo(3);
        assertThat(layer.values()).containsExactly(Arrays.asList(1L, null, "x"), Arrays.asList(null, null, "z"));
        assertThat(layer.geometries()).containsExactly("POINTS [1.0, 1.0]", "NONE");
        assertThat(layer.details())
                .containsExactly("features are marked as deleted; they were skipped (1 feature, number 2)");
    }

    @Test
    void tableShorterOrLongerThanTheShapesIsReportedAndNothingIsLost() throws IOException {
        Path file =
                new ShapefileBytes(1).add(point(1, 1, 1)).add(point(1, 2, 2)).write(folder, "a");

        Files.write(folder.resolve("a.dbf"), ShapefileBytes.dbf(3, List.of("N N 5 0"), row("1")));
        ReadLayer shorter = ReadLayer.of(file, "N");
        Files.write(folder.resolve("a.dbf"), ShapefileBytes.dbf(3, List.of("N N 5 0"), row("1"), row("2"), row("3")));
        ReadLayer longer = ReadLayer.of(file, "N");

        assertThat(shorter.values()).containsExactly(Arrays.asList(1L), Arrays.asList((Object) null));
        assertThat(shorter.details()).containsExactly("the .shp has 2 shapes, but the .dbf has 1 row");
        assertThat(longer.values()).containsExactly(List.of(1L), List.of(2L), List.of(3L));
        assertThat(longer.geometries()).endsWith("NONE");
        assertThat(longer.details()).containsExactly("the .dbf has 3 rows, but the .shp has 2 shapes");
    }

    @Test
    void missingPartsAreReportedAndTheRestIsRead() throws IOException {
        Path file = Files.write(
                folder.resolve("a.shp"),
                new ShapefileBytes(3)
                        .add(parts(3, LINE))
                        .add(nullShape())
                        .add(parts(3, TWO_LINES))
                        .shp());

        ReadLayer layer = ReadLayer.of(file, "N");

        assertThat(layer.met()).isEqualTo(3);
        assertThat(layer.features()).hasSize(3);
        assertThat(layer.header().crsDefinition()).isEmpty();
        assertThat(layer.details())
                .containsExactly(
                        "its .dbf is missing; its features have no attributes",
                        "its .shx is missing; the shapes were read in sequence");
    }

    @Test
    void systemAndEncodingAreFoundWhateverTheCaseOfTheEndings() throws IOException {
        new ShapefileBytes(1).add(point(1, 1, 1)).write(folder, "a");
        Files.move(folder.resolve("a.shp"), folder.resolve("a.SHP"));
        Files.write(folder.resolve("a.Dbf"), ShapefileBytes.dbf(0x57, List.of("T C 5 0"), new byte[][] {
            {(byte) 0xE4, (byte) 0xF6}
        }));
        Files.writeString(folder.resolve("a.CPG"), "ISO 8859-7\n");
        Files.writeString(folder.resolve("a.Prj"), "\uFEFFPROJCS[\"x\"]\n");

        ReadLayer layer = ReadLayer.of(folder.resolve("a.SHP"), "T");

        assertThat(layer.header().crsDefinition()).contains("PROJCS[\"x\"]");
        assertThat(layer.values()).containsExactly(List.of("δφ"));
        assertThat(layer.findings().all()).isEmpty();
        assertThat(ReadLayer.of(folder.resolve("a.Dbf"), "T").values()).containsExactly(List.of("δφ"));
    }

    /** Where names of parts differ in case only, those written as the given one are its own. */
    @Test
    void partsOfTheSameCaseGoTogether() throws IOException {
        new ShapefileBytes(1).add(point(1, 1, 1)).write(folder, "a");
        assumeThat(folder.resolve("a.SHP"))
                .as("a file where case does not matter")
                .doesNotExist();
        Files.copy(folder.resolve("a.shp"), folder.resolve("a.SHP"));
        Files.write(folder.resolve("a.dbf"), ShapefileBytes.dbf(3, List.of("T C 5 0"), row("small")));
        Files.write(folder.resolve("a.DBF"), ShapefileBytes.dbf(3, List.of("T C 5 0"), row("large")));

        assertThat(ReadLayer.of(folder.resolve("a.shp"), "T").values()).containsExactly(List.of("small"));
        assertThat(ReadLayer.of(folder.resolve("a.SHP"), "T").values()).containsExactly(List.of("large"));
    }

    @Test
    void textsThatAreNotInTheStatedEncodingAreReported() throws IOException {
        Path file = new ShapefileBytes(1)
                .add(point(1, 1, 1))
                .add(point(1, 2, 2))
                .add(point(1, 3, 3))
                .write(folder, "a");
        byte[] windows = {'S', 't', 'r', 'a', (byte) 0xDF, 'e'};
        Files.write(
                folder.resolve("a.dbf"),
                ShapefileBytes.dbf(
                        0, List.of("T C 6 0"), row("plain"), new byte[][] {windows}, new byte[][] {windows}));
        Files.writeString(folder.resolve("a.cpg"), "UTF-8");

        ReadLayer layer = ReadLayer.of(file, "T");

        assertThat(layer.values()).containsExactly(List.of("plain"), List.of("Stra\uFFFDe"), List.of("Stra\uFFFDe"));
        assertThat(layer.details())
                .containsExactly(
                        "texts of the field \"T\" are not valid in the encoding UTF-8 of the .dbf, and characters "
                                + "were lost; state the right one in the .cpg (2 features, first number 2)");
        Files.writeString(folder.resolve("a.cpg"), "windows-1252");
        assertThat(ReadLayer.of(file, "T").values()).contains(List.of("Straße"));
        assertThat(ReadLayer.of(file, "T").details()).isEmpty();
    }

    @Test
    void indexLeadsPastDeadRecords() throws IOException {
        var bytes =
                new ShapefileBytes(1).add(point(1, 1, 1)).add(point(1, 9, 9)).add(point(1, 3, 3));
        Path file = bytes.write(folder, "a");
        byte[] shx = bytes.shx();
        byte[] withoutTheSecond = Arrays.copyOf(shx, 116);
        System.arraycopy(shx, 116, withoutTheSecond, 108, 8);
        Files.write(folder.resolve("a.shx"), withoutTheSecond);
        Files.write(folder.resolve("a.dbf"), ShapefileBytes.dbf(3, List.of("N N 5 0"), row("1"), row("3")));

        assertThat(ReadLayer.of(file).geometries()).containsExactly("POINTS [1.0, 1.0]", "POINTS [3.0, 3.0]");

        Files.write(folder.resolve("a.dbf"), ShapefileBytes.dbf(3, List.of("N N 5 0"), row("1"), row("2"), row("3")));
        ReadLayer contradicted = ReadLayer.of(file);
        assertThat(contradicted.met()).isEqualTo(3);
        assertThat(contradicted.details())
                .containsExactly("the index has 2 records, and the .shp has 3; the index was not used");
    }

    @Test
    void recordsThatLieAreRejectedOneByOneWhereTheIndexLeadsOn() throws IOException {
        byte[] manyParts = parts(3, LINE);
        little(manyParts).putInt(36, Integer.MAX_VALUE);
        byte[] manyVertices = parts(3, LINE);
        little(manyVertices).putInt(40, 500_000_000);
        byte[] backwards = parts(3, TWO_LINES);
        little(backwards).putInt(48, -7);
        byte[] notNumber = parts(3, LINE);
        little(notNumber).putDouble(48, Double.NaN);
        Path file = new ShapefileBytes(3)
                .add(manyParts)
                .add(manyVertices)
                .add(backwards)
                .add(notNumber)
                .add(point(99, 1))
                .add(new byte[2])
                .add(parts(3, LINE))
                .write(folder, "a");

        ReadLayer layer = ReadLayer.of(file);

        assertThat(layer.met()).isEqualTo(7);
        assertThat(layer.rejected()).isEqualTo(6);
        assertThat(layer.codes()).containsOnlyOnce(FindingCode.BAD_COORDINATE);
        assertThat(layer.features()).extracting(SourceFeature::number).containsExactly(7L);
    }

    @Test
    void fileCutOffIsNeverAShorterLayerWithoutAWord() throws IOException {
        var bytes = new ShapefileBytes(3).add(parts(3, LINE)).add(parts(3, TWO_LINES));
        byte[] whole = bytes.shp();
        for (int length = 4; length < whole.length; length++) {
            Path alone = Files.write(folder.resolve("alone.shp"), Arrays.copyOf(whole, length));
            Path indexed = bytes.write(folder, "indexed");
            Files.write(indexed, Arrays.copyOf(whole, length));

            if (length < 100) {
                assertThatThrownBy(() -> ReadLayer.of(alone)).isInstanceOf(InputException.class);
            } else {
                assertThat(ReadLayer.of(alone).details()).anyMatch(detail -> detail.contains("it seems truncated"));
                assertThat(ReadLayer.of(indexed).met()).isEqualTo(2);
            }
        }
    }

    @Test
    void lengthThatLiesWithoutAnIndexEndsTheReading() throws IOException {
        byte[] shp = new ShapefileBytes(3)
                .add(parts(3, LINE))
                .add(parts(3, LINE))
                .add(parts(3, LINE))
                .shp();
        Path file = folder.resolve("a.shp");
        for (int words : new int[] {0, 10, 60, 1_000, Integer.MAX_VALUE, -1}) {
            Files.write(file, ByteBuffer.wrap(shp.clone()).putInt(104, words).array());

            assertThatThrownBy(() -> ReadLayer.of(file))
                    .as("length of %d words", words)
                    .isInstanceOf(InputException.class)
                    .hasMessageContaining(".shx");
        }
    }

    @Test
    void indexThatNamesOneRecordManyTimesIsRefused() throws IOException {
        var bytes = new ShapefileBytes(3);
        for (int i = 0; i < 50; i++) {
            bytes.add(i == 0 ? parts(3, new double[][] {new double[400]}) : nullShape());
        }
        Path file = bytes.write(folder, "a");
        ByteBuffer shx = ByteBuffer.wrap(bytes.shx());
        for (int i = 0; i < 50; i++) {
            shx.putInt(100 + 8 * i, 50);
        }
        Files.write(folder.resolve("a.shx"), shx.array());

        // Its records follow one another, so that the index is not needed.
        assertThat(ReadLayer.of(file).met()).isEqualTo(50);
        assertThat(ReadLayer.of(file).details()).anyMatch(detail -> detail.startsWith("the index places record 2"));

        Files.write(file, new byte[] {1, 2, 3}, StandardOpenOption.APPEND);
        assertThatThrownBy(() -> ReadLayer.of(file))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("same records");
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 99, 112, 1_000_003})
    void damagedIndexIsNotBelieved(int bytes) throws IOException {
        Path file = new ShapefileBytes(1).add(point(1, 1, 1)).write(folder, "a");
        byte[] shx = new byte[bytes];
        new Random(bytes).nextBytes(shx);
        if (bytes > 100) {
            ByteBuffer.wrap(shx).putInt(0, 9994);
        }
        Files.write(folder.resolve("a.shx"), shx);

        ReadLayer layer = ReadLayer.of(file);

        assertThat(layer.met()).isEqualTo(1);
        assertThat(layer.findings().all()).hasSizeGreaterThan(1);
    }

    @Test
    void wrongByteOrderIsNamed() throws IOException {
        byte[] shp = new ShapefileBytes(1).shp();
        Path file = Files.write(
                folder.resolve("a.shp"),
                ByteBuffer.wrap(shp)
                        .order(ByteOrder.LITTLE_ENDIAN)
                        .putInt(0, 9994)
                        .array());

        assertThatThrownBy(() -> ReadLayer.of(file))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("byte order");
    }

    static LongStream seeds() {
        return LongStream.range(0, 100);
    }

    /** What is true of any star-shaped rings on a grid: each hole ends up behind the only ring around it. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void holesFindTheirRingInAnyOrder(long seed) throws IOException {
        var random = new Random(seed);
        int cells = 1 + random.nextInt(12);
        var rings = new java.util.ArrayList<double[]>();
        for (int cell = 0; cell < cells; cell++) {
            rings.add(star(random, 10 * cell, 3.1, 4.9, true));
            for (int hole = random.nextInt(3); hole > 0; hole--) {
                rings.add(star(random, 10 * cell, 1, 2.4, false));
            }
        }
        java.util.Collections.shuffle(rings, random);
        Path file = new ShapefileBytes(5)
                .add(parts(5, rings.toArray(new double[0][])))
                .write(folder, "a");

        SourceGeometry geometry = ReadLayer.of(file).features().get(0).geometry();

        assertThat(geometry.parts()).hasSameSizeAs(rings);
        double centerOfOuter = Double.NaN;
        for (int i = 0; i < geometry.parts().size(); i++) {
            double center = 10 * Math.round(geometry.parts().get(i)[0] / 10);
            centerOfOuter = geometry.startsPolygon().get(i) ? center : centerOfOuter;
            assertThat(center).isEqualTo(centerOfOuter);
        }
        assertThat(geometry.startsPolygon().stream().filter(starts -> starts)).hasSize(cells);
    }

    private static double[] star(Random random, double center, double nearest, double farthest, boolean clockwise) {
        int corners = 5 + random.nextInt(20);
        double[] ring = new double[2 * corners + 2];
        for (int i = 0; i < corners; i++) {
            double angle = 2 * Math.PI * i / corners * (clockwise ? -1 : 1);
            double radius = nearest + (farthest - nearest) * random.nextDouble();
            ring[2 * i] = center + radius * Math.cos(angle);
            ring[2 * i + 1] = radius * Math.sin(angle);
        }
        ring[2 * corners] = ring[0];
        ring[2 * corners + 1] = ring[1];
        return ring;
    }

    private static ByteBuffer little(byte[] bytes) {
        return ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }
}
