package org.spanroom.input;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import org.spanroom.input.layer.SourceGeometry;

/**
 * The polygons of a zone, valid, in the ordinates of their layer.
 *
 * <p>Rings that are not closed are closed. Polygons that cross themselves, have a hole outside, or overlap one another are repaired
 * by {@link OutlineRepair}, which keeps the area that any of them covers; parts without area drop out.
 *
 * @param polygons each with area; empty where the zone has none
 * @param repair what had to be repaired, or empty
 */
record ZoneOutlines(List<Polygon> polygons, Optional<String> repair) {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    private static final int SMALLEST_RING = 4;

    ZoneOutlines {
        polygons = List.copyOf(polygons);
    }

    /** Returns the outlines of a polygon feature as its file has it. */
    static ZoneOutlines of(SourceGeometry geometry, OutlineRepair repairer) {
        int dimension = geometry.hasZ() ? 3 : 2;
        String repair = "";
        var polygons = new ArrayList<Polygon>();
        var holes = new ArrayList<LinearRing>();
        for (int i = geometry.parts().size() - 1; i >= 0; i--) {
            List<Coordinate> vertices = vertices(geometry.parts().get(i), dimension);
            if (!vertices.get(0).equals2D(vertices.get(vertices.size() - 1))) {
                vertices.add(vertices.get(0).copy());
                repair = "a ring was not closed";
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
            } else {
                repair = "a ring has fewer than three vertices";
            }
            if (isOuter) {
                holes.clear();
            }
        }
        Collections.reverse(polygons);
        return repaired(polygons, repair, repairer);
    }

    private static ZoneOutlines repaired(List<Polygon> polygons, String closed, OutlineRepair repairer) {
        MultiPolygon all = GEOMETRY.createMultiPolygon(polygons.toArray(Polygon[]::new));
        boolean valid = all.isValid();
        OutlineRepair.Repaired repaired = valid ? new OutlineRepair.Repaired(polygons, closed) : repairer.repair(all);
        List<Polygon> withArea =
                repaired.polygons().stream().filter(ZoneOutlines::hasArea).toList();
        String repair = repaired.words();
        return new ZoneOutlines(withArea, repair.isEmpty() ? Optional.empty() : Optional.of(repair));
    }

    /** Vertices drawn on one line are beside it when they are rounded to doubles: such an area is none. */
    private static boolean hasArea(Polygon polygon) {
        Envelope extent = polygon.getEnvelopeInternal();
        double largest = Math.max(
                Math.max(Math.abs(extent.getMinX()), Math.abs(extent.getMaxX())),
                Math.max(Math.abs(extent.getMinY()), Math.abs(extent.getMaxY())));
        return polygon.getArea() > 2 * Math.ulp(largest) * polygon.getLength();
    }

    private static List<Coordinate> vertices(double[] ordinates, int dimension) {
        var vertices = new ArrayList<Coordinate>();
        for (int at = 0; at + 1 < ordinates.length; at += dimension) {
            vertices.add(new Coordinate(ordinates[at], ordinates[at + 1]));
        }
        return vertices;
    }
}
