package org.spanroom.input;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.spanroom.input.layer.SourceGeometry;
import org.spanroom.model.Line;

/**
 * A vault's outline: the outer rings, and a place inside the largest of them.
 *
 * <p>Rings that are not closed are closed; outlines that cross themselves are repaired by {@link OutlineRepair}; an outline without
 * area becomes the point where it begins.
 *
 * @param repair what had to be repaired, or empty
 */
record VaultOutline(List<Line> rings, double lonDeg, double latDeg, Optional<String> repair) {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    private static final int SMALLEST_RING = 4;

    /** Returns the outline of a polygon feature whose ordinates are in degrees already. */
    static VaultOutline of(SourceGeometry geometry, OutlineRepair repairer) {
        int dimension = geometry.hasZ() ? 3 : 2;
        var polygons = new ArrayList<Polygon>();
        var holes = new ArrayList<LinearRing>();
        String closed = "";
        for (int i = geometry.parts().size() - 1; i >= 0; i--) {
            double[] ordinates = geometry.parts().get(i);
            List<Coordinate> vertices = vertices(ordinates, dimension);
            if (!vertices.get(0).equals2D(vertices.get(vertices.size() - 1))) {
                vertices.add(vertices.get(0).copy());
                closed = "a ring was not closed";
            }
            boolean isOuter = geometry.startsPolygon().isEmpty()
                    || geometry.startsPolygon().get(i);
            if (vertices.size() >= SMALLEST_RING) {
                LinearRing ring = GEOMETRY.createLinearRing(vertices.toArray(Coordinate[]::new));
                if (isOuter) {
                    polygons.add(GEOMETRY.createPolygon(ring, holes.toArray(LinearRing[]::new)));
                } else {
                    holes.add(ring);
                }
            }
            if (isOuter) {
                holes.clear();
            }
        }
        java.util.Collections.reverse(polygons);
        return of(geometry.parts(), polygons, closed, repairer);
    }

    private static VaultOutline of(
            List<double[]> parts, List<Polygon> polygons, String closed, OutlineRepair repairer) {
        String repair = closed;
        var valid = new ArrayList<Polygon>();
        for (Polygon polygon : polygons) {
            if (polygon.isValid()) {
                valid.add(polygon);
            } else {
                OutlineRepair.Repaired repaired = repairer.repair(polygon);
                repair = repaired.words();
                valid.addAll(repaired.polygons());
            }
        }
        Optional<Polygon> largest = valid.stream()
                .filter(polygon -> polygon.getArea() > 0)
                .max(Comparator.comparingDouble(Geometry::getArea));
        if (largest.isEmpty()) {
            return withoutArea(parts);
        }
        Coordinate inside = largest.get().getInteriorPoint().getCoordinate();
        List<Line> rings =
                valid.stream().map(polygon -> ring(polygon.getExteriorRing())).toList();
        return new VaultOutline(rings, inside.x, inside.y, repair.isEmpty() ? Optional.empty() : Optional.of(repair));
    }

    private static VaultOutline withoutArea(List<double[]> parts) {
        return new VaultOutline(
                List.of(),
                parts.get(0)[0],
                parts.get(0)[1],
                Optional.of("the outline has no area; its first vertex was used as a point"));
    }

    private static List<Coordinate> vertices(double[] ordinates, int dimension) {
        var vertices = new ArrayList<Coordinate>();
        for (int at = 0; at + 1 < ordinates.length; at += dimension) {
            vertices.add(new Coordinate(ordinates[at], ordinates[at + 1]));
        }
        return vertices;
    }

    private static Line ring(LinearRing ring) {
        CoordinateSequence vertices = ring.getCoordinateSequence();
        double[] xy = new double[2 * vertices.size()];
        for (int i = 0; i < vertices.size(); i++) {
            xy[2 * i] = vertices.getX(i);
            xy[2 * i + 1] = vertices.getY(i);
        }
        return Line.wrap(xy, false);
    }
}
