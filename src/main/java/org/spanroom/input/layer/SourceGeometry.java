package org.spanroom.input.layer;

import java.util.List;

/**
 * A feature's geometry as its file has it: ordinates in the layer's own reference system, x before y, all finite.
 *
 * <p>A line has two vertices or more, a ring three or more; whether it is closed is the file's word. Heights are there for
 * every vertex or for none.
 *
 * @param parts one packed array a point, a line or a ring: x, y (and z, where {@code hasZ}) of each vertex in turn;
 *     measures are dropped
 * @param startsPolygon for polygons, true where the ring at this place is the outer ring of a next polygon and false for
 *     a hole; empty for other kinds
 */
public record SourceGeometry(Kind kind, List<double[]> parts, boolean hasZ, List<Boolean> startsPolygon) {
    /** What the parts are. Collections of one kind are treated as that kind. */
    public enum Kind {
        POINTS,
        LINES,
        POLYGONS,
        /** No geometry at all: null shape, null member, empty geometry. */
        NONE,
        /** A type that no layer of ours is read for, or a collection of several kinds. */
        OTHER
    }

    public SourceGeometry {
        parts = List.copyOf(parts);
        startsPolygon = List.copyOf(startsPolygon);
    }

    /** Returns the geometry with x and y of each vertex exchanged. */
    SourceGeometry exchanged() {
        int step = hasZ ? 3 : 2;
        return new SourceGeometry(
                kind, parts.stream().map(part -> exchanged(part, step)).toList(), hasZ, startsPolygon);
    }

    private static double[] exchanged(double[] part, int step) {
        double[] other = part.clone();
        for (int at = 0; at + 1 < part.length; at += step) {
            other[at] = part[at + 1];
            other[at + 1] = part[at];
        }
        return other;
    }
}
