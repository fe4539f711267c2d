package org.spanroom.output.table;

import java.util.List;
import org.spanroom.model.Line;

/**
 * The geometry of one row, immutable: a point, lines, or the rings of one polygon.
 *
 * <p>Ordinates are degrees on WGS 84, longitude first, and meters for the third one; writers turn them into the layer's own
 * reference system. They lie packed in one array, since millions of shapes pass through.
 */
public final class Shape {
    /** The shape of a row that has none. */
    public static final Shape EMPTY = new Shape(new double[0], 2, new int[0]);

    private final double[] ordinates;
    private final int dimension;
    private final int[] partEnds;

    Shape(double[] ordinates, int dimension, int[] partEnds) {
        this.ordinates = ordinates;
        this.dimension = dimension;
        this.partEnds = partEnds;
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
        return new Shape(others, dimension, partEnds);
    }

    /** Returns this polygon with its outer ring turning as wanted and its holes the other way. */
    public Shape oriented(boolean outerCounterClockwise) {
        double[] turned = ordinates.clone();
        for (int part = 0; part < partEnds.length; part++) {
            boolean wantsCounterClockwise = outerCounterClockwise == (part == 0);
            if (doubleArea(part) > 0 != wantsCounterClockwise) {
                reverse(turned, partStart(part), partEnds[part]);
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
