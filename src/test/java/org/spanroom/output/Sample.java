package org.spanroom.output;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.spanroom.model.Line;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/** Rows and tables for the tests of formats. The place is open ocean. */
public record Sample(String label, Long count, double lengthM, Boolean flooded, List<Line> lines) {
    public static final Instant WRITTEN = Instant.parse("2026-05-04T03:02:01.987Z");

    /** One row with every kind of cell empty. */
    public static final Sample EMPTY = new Sample("", null, Double.NaN, null, List.of());

    public static final List<Column<Sample>> COLUMNS = List.of(
            Column.text("label", "label", "What the row is called.", Sample::label),
            Column.integer("count", "count", "How many.", Sample::count),
            Column.real("length_m", "length_m", 3, "How long.", Sample::lengthM),
            Column.flag("flooded", "flooded", "Whether under water.", Sample::flooded));

    public static final Table<Sample> LINES =
            Table.layer("routes", "Lines of the test.", GeometryKind.LINE, row -> Shape.lines(row.lines()), COLUMNS);

    public static final Table<Sample> MULTILINES = Table.layer(
            "parts", "Lines of several parts.", GeometryKind.MULTILINE, row -> Shape.lines(row.lines()), COLUMNS);

    public static final Table<Sample> POLYGONS = Table.layer(
            "outlines", "Polygons of the test.", GeometryKind.POLYGON, row -> Shape.polygon(row.lines()), COLUMNS);

    /** Each ring is a polygon, but for the second, which is a hole of the first. */
    public static final Table<Sample> MULTIPOLYGONS = Table.layer(
            "areas",
            "Polygons of several parts of the test.",
            GeometryKind.MULTIPOLYGON,
            row -> Shape.polygons(polygons(row.lines())),
            COLUMNS);

    public static final Table<Sample> POINTS = Table.layer(
            "places",
            "Points of the test.",
            GeometryKind.POINT,
            row -> row.lines().isEmpty()
                    ? Shape.EMPTY
                    : Shape.point(row.lines().get(0).x(0), row.lines().get(0).y(0)),
            COLUMNS);

    private static List<List<Line>> polygons(List<Line> rings) {
        int holes = Math.min(2, rings.size());
        List<List<Line>> polygons = new ArrayList<>();
        if (!rings.isEmpty()) {
            polygons.add(rings.subList(0, holes));
        }
        rings.subList(holes, rings.size()).forEach(ring -> polygons.add(List.of(ring)));
        return polygons;
    }

    public static Sample of(String label, double... xy) {
        return new Sample(label, (long) label.length(), 12.3456, true, List.of(Line.ofXy(xy)));
    }

    /** Returns random walks around 30 W 40 N, some of them without a shape. */
    public static Stream<Sample> many(int rows, long seed) {
        var random = new Random(seed);
        return IntStream.range(0, rows).mapToObj(i -> {
            double[] xy = new double[2 * (2 + random.nextInt(9))];
            xy[0] = -30 + random.nextDouble();
            xy[1] = 40 + random.nextDouble();
            for (int k = 2; k < xy.length; k++) {
                xy[k] = xy[k - 2] + (random.nextDouble() - 0.5) / 1000;
            }
            List<Line> lines = i % 97 == 5 ? List.of() : List.of(Line.ofXy(xy));
            return new Sample(
                    "row " + i, (long) random.nextInt(), random.nextGaussian() * 1000, random.nextBoolean(), lines);
        });
    }
}
