package org.spanroom.permit;

import java.util.function.Consumer;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.index.hprtree.HPRtree;
import org.spanroom.model.Line;
import org.spanroom.model.permit.Zone;

/**
 * One polygon of a zone in a plane: which places it contains, and where its boundary cuts a straight step.
 *
 * <p>A tree of the edges finds those near a step, and an indexed locator decides about a place. The area reaches beyond its outline by a
 * tolerance: a place within that distance of the boundary is treated as inside, exactly as in a round buffer of that size, but calculated
 * without one. With no tolerance it still reaches {@link #LEAST_REACH_M}: a line drawn along the limit of a zone is in it. Safe for use
 * by several threads.
 */
final class Area {
    /** A tenth of a millimeter: coarser than the noise of degrees in any file, finer than any drawing. */
    private static final double LEAST_REACH_M = 1e-4;

    private static final GeometryFactory SHAPES = new GeometryFactory();

    private final HPRtree edges = new HPRtree();
    private final IndexedPointInAreaLocator locator;
    private final double toleranceM;
    private final double reachM;

    /** @param toleranceM how far the area reaches beyond its outline, 0 or more */
    Area(Zone.Outline outline, Plane plane, double toleranceM) {
        this.toleranceM = toleranceM;
        this.reachM = Math.max(LEAST_REACH_M, toleranceM);
        LinearRing shell = ring(outline.shell(), plane);
        LinearRing[] holes =
                outline.holes().stream().map(hole -> ring(hole, plane)).toArray(LinearRing[]::new);
        locator = new IndexedPointInAreaLocator(SHAPES.createPolygon(shell, holes));
        edges.build();
    }

    /** Returns a ring in the plane, its edges put into the tree. */
    private LinearRing ring(Line line, Plane plane) {
        var places = new Coordinate[line.size()];
        double[] xy = new double[2];
        for (int i = 0; i < places.length; i++) {
            plane.project(line.x(i), line.y(i), xy, 0);
            places[i] = new Coordinate(xy[0], xy[1]);
        }
        places[places.length - 1] = places[0];
        for (int i = 1; i < places.length; i++) {
            edges.insert(new Envelope(places[i - 1], places[i]), new LineSegment(places[i - 1], places[i]));
        }
        return SHAPES.createLinearRing(places);
    }

    private void visit(Envelope box, Consumer<LineSegment> visitor) {
        box.expandBy(reachM);
        edges.query(box, edge -> visitor.accept((LineSegment) edge));
    }

    /** Returns whether the boundary may come into a box; if not, all of the box is on one side of it. */
    boolean boundaryMayMeet(double leastX, double leastY, double mostX, double mostY) {
        boolean[] met = {false};
        visit(new Envelope(leastX, mostX, leastY, mostY), edge -> met[0] = true);
        return met[0];
    }

    /** Returns whether a place is inside, or within reach of the boundary. */
    boolean holds(double x, double y) {
        var place = new Coordinate(x, y);
        return locator.locate(place) != Location.EXTERIOR || isNearBoundary(place);
    }

    private boolean isNearBoundary(Coordinate place) {
        boolean[] near = {false};
        visit(new Envelope(place), edge -> near[0] |= edge.distance(place) <= reachM);
        return near[0];
    }

    /**
     * Returns the shares, 0 to 1 and in order, at which a step may pass from inside to outside or back: its ends, and without a
     * tolerance where it crosses an edge and where it passes the end of one; with a tolerance, where it comes and goes within that
     * distance of an edge.
     */
    double[] cuts(double x0, double y0, double x1, double y1) {
        var step = new Step(x0, y0, x1, y1);
        visit(new Envelope(x0, x1, y0, y1), edge -> {
            if (toleranceM > 0) {
                step.near(edge.p0.x, edge.p0.y, edge.p1.x, edge.p1.y, toleranceM);
            } else {
                step.meet(edge.p0.x, edge.p0.y, edge.p1.x, edge.p1.y);
            }
        });
        return step.inOrder();
    }
}
