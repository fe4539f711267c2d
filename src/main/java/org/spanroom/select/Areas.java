package org.spanroom.select;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;
import org.spanroom.model.Line;
import org.spanroom.model.permit.Zone;

/**
 * Polygons, and whether a line touches any of them: in degrees, where both are straight between their vertices. A line that only
 * meets an outline touches it. Safe for use by several threads.
 */
public final class Areas {
    private static final GeometryFactory SHAPES = new GeometryFactory();
    private static final double ROUND_DEG = 360;

    private final STRtree tree = new STRtree();

    private Areas() {}

    /** Returns the areas of the given outlines. */
    public static Areas of(List<Zone.Outline> outlines) {
        var areas = new Areas();
        for (Zone.Outline outline : outlines) {
            LinearRing[] holes = outline.holes().stream().map(Areas::ring).toArray(LinearRing[]::new);
            Geometry polygon = SHAPES.createPolygon(ring(outline.shell()), holes);
            areas.tree.insert(polygon.getEnvelopeInternal(), PreparedGeometryFactory.prepare(polygon));
        }
        areas.tree.build();
        return areas;
    }

    private static LinearRing ring(Line line) {
        Coordinate[] places = coordinates(line);
        places[places.length - 1] = places[0];
        return SHAPES.createLinearRing(places);
    }

    /** Returns a line's vertices on the side of the date line where the first one lies. */
    private static Coordinate[] coordinates(Line line) {
        var places = new Coordinate[line.size()];
        for (int i = 0; i < places.length; i++) {
            double lonDeg = line.x(0) + Math.IEEEremainder(line.x(i) - line.x(0), ROUND_DEG);
            places[i] = new Coordinate(lonDeg, line.y(i));
        }
        return places;
    }

    /** Returns whether a line is in an area, wholly or in part; areas may be drawn beyond the 180th meridian. */
    public boolean touches(Line lonLat) {
        Coordinate[] places = coordinates(lonLat);
        for (int turn = -1; turn <= 1; turn++) {
            var moved = new Coordinate[places.length];
            for (int i = 0; i < places.length; i++) {
                moved[i] = new Coordinate(places[i].x + turn * ROUND_DEG, places[i].y);
            }
            Geometry line = SHAPES.createLineString(moved);
            for (PreparedGeometry area : near(line.getEnvelopeInternal())) {
                if (area.intersects(line)) {
                    return true;
                }
            }
        }
        return false;
    }

    private List<PreparedGeometry> near(Envelope box) {
        var found = new ArrayList<PreparedGeometry>();
        tree.query(box, item -> found.add((PreparedGeometry) item));
        return found;
    }
}
