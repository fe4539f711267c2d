package org.spanroom.input;

import java.util.List;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.geom.util.PolygonExtracter;

/**
 * Mends the outlines of one layer that cross or touch themselves: by JTS's GeometryFixer while that is cheap, otherwise by the
 * convex hull.
 *
 * <p>The time of the fixer grows with more than the square of the vertices where all edges cross (measured: 0.2 s for 200, 10 s for
 * 1000); a vault has a dozen. Not only each outline is limited therefore, but the layer's sum too.
 */
final class OutlineMender {
    private static final int MOST_VERTICES = 200;
    private static final long MOST_SQUARES = 4_000_000;

    private long squares;

    /**
     * What became of an outline.
     *
     * @param words what was done, for a finding
     */
    record Mended(List<Polygon> polygons, String words) {}

    Mended mend(Polygon polygon) {
        int vertices = polygon.getNumPoints();
        squares += (long) vertices * vertices;
        if (vertices <= MOST_VERTICES && squares <= MOST_SQUARES) {
            try {
                return new Mended(polygons(GeometryFixer.fix(polygon)), "the outline crosses or touches itself");
            } catch (RuntimeException e) {
                // JTS gives up on a few; the hull is left
            }
        }
        return new Mended(
                polygons(polygon.convexHull()),
                "the outline crosses or touches itself and cannot be mended; the hull around it was taken");
    }

    private static List<Polygon> polygons(Geometry geometry) {
        return Stream.of(PolygonExtracter.getPolygons(geometry).toArray())
                .map(part -> (Polygon) part)
                .filter(part -> !part.isEmpty())
                .toList();
    }
}
