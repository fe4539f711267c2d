package org.spanroom.output.table;

import java.util.List;
import org.spanroom.model.Line;

/**
 * The geometry of one row, immutable: a point, lines, or the rings of one polygon or several.
 *
 * <p>Ordinates are degrees on WGS 84, longitude first, and meters for the third one; writers turn them into the layer's own
 * reference system. They lie packed in one array, since millions of shapes pass through.
 */
public final class Shape {
    /** The shape of a row that has none. */
    public static final Shape EMPTY = new Shape(new double[0], 2, new int[0]);

    /** Where all rings are those of one polygon. */
    private static final int[] ONE_POLYGON = {0};

    private final double[] ordinates;
    private final int dimension;
    private final int[] partEnds;
    private final int[] outerRings;

    Shape(double[] ordinates, int dimension, int[] partEnds) {
        this(ordinates, dimension, partEnds, ONE_POLYGON);
    }

    private Shape(double[] ordinates, int dimension, int[] partEnds, int[] outerRings) {
        this.ordinates = ordinates;
        this.dimension = dimension;
        this.partEnds = partEnds;
        this.outerRings = outerRings;
    }

    public static Shape point(double lonDeg, double latDeg) {
        return new Shape(new double[] {lonDeg, latDeg}, 2, new int[] {1});
    }

    public static Shape point(double lonDeg, double latDeg, double elevationM) {
        return new Shape(new double[] {lonDeg, latDeg, elevationM}, 3, new int[] {1});
    }

    public static Shape line(Line line) {
        return lines(List.of(line));
    }

    /** Returns the shape of several lines; elevations are kept if all of them have them. */
    public static Shape lines(List<Line> lines) {
        boolean hasZ = !lines.isEmpty() && lines.stream().allMatch(Line::hasZ);
        int dimension = hasZ ? 3 : 2;
        double[] packed = new double[lines.stream().mapToInt(Line::size).sum() * dimension];
        int[] ends = new int[lines.size()];
        int vertex = 0;
        for (int part = 0; part < ends.length; part++) {
            Line line = lines.get(part);
            for (int i = 0; i < line.size(); i++, vertex++) {
                packed[vertex * dimension] = line.x(i);
                packed[vertex * dimension + 1] = line.y(i);
                if (hasZ) {
                    packed[vertex * 3 + 2] = line.z(i);
                }
            }
            ends[part] = vertex;
        }
        return new Shape(packed, dimension, ends);
    }

    /** Returns the polygon of closed rings, the outer one first; which way they turn does not matter. */
    public static Shape polygon(List<Line> rings) {
        return lines(rings);
    }

    /** Returns the polygons whose closed rings are given, of each the outer one first. */
    public static Shape polygons(List<List<Line>> polygons) {
        Shape rings = lines(polygons.stream().flatMap(List::stream).toList());
        int[] outer = new int[polygons.size()];
        for (int polygon = 1; polygon < outer.length; polygon++) {
            outer[polygon] = outer[polygon - 1] + polygons.get(polygon - 1).size();
        }
        return polygons.isEmpty() ? EMPTY : new Shape(rings.ordinates, rings.dimension, rings.partEnds, outer);
    }

    public boolean isEmpty() {
        return ordinates.length == 0;
    }

    public boolean hasZ() {
        return dimension == 3;
    }

    int dimension() {
        return dimension;
    }

    public int size() {
        return ordinates.length / dimension;
    }

    public int parts() {
        return partEnds.length;
    }

    public int partStart(int part) {
        return part == 0 ? 0 : partEnds[part - 1];
    }

    public int partEnd(int part) {
        return partEnds[part];
    }

    /** Returns how many polygons the rings are of. */
    public int polygons() {
        return outerRings.length;
    }

    /** Returns the outer ring of a polygon, as a part. */
    public int firstRing(int polygon) {
        return outerRings[polygon];
    }

    /** Returns the part after the last ring of a polygon. */
    public int ringsEnd(int polygon) {
        return polygon + 1 < outerRings.length ? outerRings[polygon + 1] : partEnds.length;
    }

    public double x(int vertex) {
        return ordinates[vertex * dimension];
    }

    public double y(int vertex) {
        return ordinates[vertex * dimension + 1];
    }

    public double z(int vertex) {
        return ordinates[vertex * dimension + 2];
    }

    /** Returns a copy of the packed ordinates. */
    double[] copyOrdinates() {
        return ordinates.clone();
    }

    /** Returns the same parts with other ordinates, which the caller must not keep. */
    Shape withOrdinates(double[] others) {
        return new Shape(others, dimension, partEnds, outerRings);
    }

    /** Returns these polygons with their outer rings turning as wanted and their holes the other way. */
    public Shape oriented(boolean outerCounterClockwise) {
        double[] turned = ordinates.clone();
        for (int polygon = 0; polygon < outerRings.length; polygon++) {
            for (int part = firstRing(polygon); part < ringsEnd(polygon); part++) {
                boolean wantsCounterClockwise = outerCounterClockwise == (part == firstRing(polygon));
                if (doubleArea(part) > 0 != wantsCounterClockwise) {
                    reverse(turned, partStart(part), partEnds[part]);
                }
            }
        }
        return withOrdinates(turned);
    }

    /** Returns twice the signed area of a ring (the shoelace formula), positive where it turns counter-clockwise. */
    private double doubleArea(int ring) {
        double area = 0;
        int start = partStart(ring);
        for (int i = start; i + 1 < partEnds[ring]; i++) {
            area += (x(i) - x(start)) * (y(i + 1) - y(start)) - (x(i + 1) - x(start)) * (y(i) - y(start));
        }
        return area;
    }

    private void reverse(double[] packed, int fromVertex, int toVertex) {
        for (int low = fromVertex, high = toVertex - 1; low < high; low++, high--) {
            for (int k = 0; k < dimension; k++) {
                double swapped = packed[low * dimension + k];
                packed[low * dimension + k] = packed[high * dimension + k];
                packed[high * dimension + k] = swapped;
            }
        }
    }
}
