package org.spanroom.model;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * An open polyline, immutable, of two or more vertices; with or without a third ordinate.
 *
 * <p>What the ordinates mean is the owner's word: degrees of longitude and latitude on WGS 84 ({@code lonLat}), or meters
 * east, north and up in the frame of one span ({@code ground}). The third ordinate is always meters.
 *
 * <p>Ordinates lie packed in one array: a city holds tens of millions of vertices, and an object for each would take five
 * times the memory. A line that is kept for long may be {@link #compact}.
 */
public final class Line {
    private final double @Nullable [] ordinates;
    private final @Nullable DecimalSteps steps;
    private final int dimension;

    private Line(double[] ordinates, int dimension) {
        if (ordinates.length < 2 * dimension || ordinates.length % dimension != 0) {
            throw new IllegalArgumentException(
                    "a line needs at least two vertices of " + dimension + " ordinates, got " + ordinates.length);
        }
        for (double ordinate : ordinates) {
            Check.finite("ordinate", ordinate);
        }
        this.ordinates = ordinates;
        this.steps = null;
        this.dimension = dimension;
    }

    private Line(DecimalSteps steps, int dimension) {
        this.ordinates = null;
        this.steps = steps;
        this.dimension = dimension;
    }

    /** Returns the line through x0, y0, x1, y1, ... . */
    public static Line ofXy(double... xy) {
        return new Line(xy.clone(), 2);
    }

    /** Returns the line through x0, y0, z0, x1, y1, z1, ... . */
    public static Line ofXyz(double... xyz) {
        return new Line(xyz.clone(), 3);
    }

    /** Returns the line over the given array without copying it; the caller must not keep the array. */
    public static Line wrap(double[] ordinates, boolean hasZ) {
        return new Line(ordinates, hasZ ? 3 : 2);
    }

    /**
     * Returns the same line in a third of the memory or less, where all its ordinates are decimal numbers of at most nine places and none is far
     * from the first; else this one. Every ordinate stays the same to the last bit.
     */
    public Line compact() {
        if (ordinates == null) {
            return this;
        }
        DecimalSteps found = DecimalSteps.of(ordinates, dimension);
        return found == null ? this : new Line(found, dimension);
    }

    private double ordinate(int at) {
        return ordinates != null ? ordinates[at] : steps == null ? Double.NaN : steps.ordinate(at, dimension);
    }

    private int count() {
        return ordinates != null ? ordinates.length : steps == null ? 0 : steps.count(dimension);
    }

    /** Returns the number of vertices. */
    public int size() {
        return count() / dimension;
    }

    public double x(int vertex) {
        return ordinate(vertex * dimension);
    }

    public double y(int vertex) {
        return ordinate(vertex * dimension + 1);
    }

    public boolean hasZ() {
        return dimension == 3;
    }

    /** Returns the third ordinate of a vertex; only for a line that {@link #hasZ()}. */
    public double z(int vertex) {
        if (!hasZ()) {
            throw new IllegalStateException("the line has no third ordinate");
        }
        return ordinate(vertex * 3 + 2);
    }

    /** Returns the plane distance between two neighboring vertices; meters only on a {@code ground} line. */
    public double stepLength(int fromVertex) {
        return Math.hypot(x(fromVertex + 1) - x(fromVertex), y(fromVertex + 1) - y(fromVertex));
    }

    /** Returns the plane length along all vertices; meters only on a {@code ground} line. */
    public double planeLength() {
        double total = 0;
        for (int vertex = 0; vertex + 1 < size(); vertex++) {
            total += stepLength(vertex);
        }
        return total;
    }

    /** Returns the same line, drawn from its other end. */
    public Line reversed() {
        double[] back = new double[count()];
        for (int from = 0, to = back.length - dimension; to >= 0; from += dimension, to -= dimension) {
            for (int i = 0; i < dimension; i++) {
                back[to + i] = ordinate(from + i);
            }
        }
        return new Line(back, dimension);
    }

    @Override
    public boolean equals(Object other) {
        if (!(other instanceof Line that) || dimension != that.dimension || count() != that.count()) {
            return false;
        }
        if (ordinates != null && that.ordinates != null) {
            return Arrays.equals(ordinates, that.ordinates);
        }
        for (int i = 0; i < count(); i++) {
            if (Double.compare(ordinate(i), that.ordinate(i)) != 0) {
                return false;
            }
        }
        return true;
    }

    @Override
    public int hashCode() {
        int hash = dimension;
        for (int i = 0; i < count(); i++) {
            hash = 31 * hash + Double.hashCode(ordinate(i));
        }
        return hash;
    }

    @Override
    public String toString() {
        return "Line of " + size() + " vertices from (" + x(0) + ", " + y(0) + ") to (" + x(size() - 1) + ", "
                + y(size() - 1) + ")";
    }
}
