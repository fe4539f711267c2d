package org.spanroom.permit;

import java.util.Arrays;
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
 * <p>A tree of the edges finds those near a step, and an indexed locator decides about a place. A place within {@link #REACH_M} of the
 * boundary counts as inside: a line drawn along the limit of a zone lies in it. Safe for use by several threads.
 */
final class Area {
    /** A tenth of a millimetre: coarser than the noise of degrees in any file, finer than any drawing. */
    static final double REACH_M = 1e-4;

    private static final GeometryFactory SHAPES = new GeometryFactory();

    private final HPRtree edges = new HPRtree();
    private final IndexedPointInAreaLocator locator;

    Area(Zone.Outline outline, Plane plane) {
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
        box.expandBy(REACH_M);
        edges.query(box, edge -> visitor.accept((LineSegment) edge));
    }

    /** Returns whether the boundary may come into a box; if not, all of the box lies on one side of it. */
    boolean boundaryMayMeet(double leastX, double leastY, double mostX, double mostY) {
        boolean[] met = {false};
        visit(new Envelope(leastX, mostX, leastY, mostY), edge -> met[0] = true);
        return met[0];
    }

    /** Returns whether a place lies inside, or on the boundary. */
    boolean holds(double x, double y) {
        var place = new Coordinate(x, y);
        return locator.locate(place) != Location.EXTERIOR || isNearBoundary(place);
    }

    private boolean isNearBoundary(Coordinate place) {
        boolean[] near = {false};
        visit(new Envelope(place), edge -> near[0] |= edge.distance(place) <= REACH_M);
        return near[0];
    }

    /**
     * Returns the shares, 0 to 1 and in order, at which a step may pass from inside to outside or back: its ends, where it
     * crosses an edge, and where it passes the end of one.
     */
    double[] cuts(double x0, double y0, double x1, double y1) {
        var step = new Step(x0, y0, x1, y1);
        visit(new Envelope(x0, x1, y0, y1), edge -> step.meet(edge.p0.x, edge.p0.y, edge.p1.x, edge.p1.y));
        return step.inOrder();
    }

    /** A straight step and the shares of it at which edges meet it. */
    private static final class Step {
        private final double x0;
        private final double y0;
        private final double x1;
        private final double y1;
        private double[] shares = {0, 1, 0, 0};
        private int size = 2;

        Step(double x0, double y0, double x1, double y1) {
            this.x0 = x0;
            this.y0 = y0;
            this.x1 = x1;
            this.y1 = y1;
        }

        void meet(double ax, double ay, double bx, double by) {
            double a = side(ax, ay);
            double b = side(bx, by);
            if ((a > 0) != (b > 0)) {
                double share = a / (a - b);
                add(share(ax + share * (bx - ax), ay + share * (by - ay)));
            }
            pass(ax, ay);
            pass(bx, by);
        }

        /** An edge along the step crosses nothing, but where it begins and ends the step may change sides. */
        private void pass(double x, double y) {
            double share = share(x, y);
            if (Math.hypot(x0 + share * (x1 - x0) - x, y0 + share * (y1 - y0) - y) <= 2 * REACH_M) {
                add(share);
            }
        }

        private double side(double x, double y) {
            return (x1 - x0) * (y - y0) - (x - x0) * (y1 - y0);
        }

        /** Returns the share of the step, 0 to 1, that lies nearest to a place. */
        private double share(double x, double y) {
            double dx = x1 - x0;
            double dy = y1 - y0;
            double squared = dx * dx + dy * dy;
            return squared == 0 ? 0 : Math.max(0, Math.min(1, ((x - x0) * dx + (y - y0) * dy) / squared));
        }

        private void add(double share) {
            if (size == shares.length) {
                shares = Arrays.copyOf(shares, 2 * size);
            }
            shares[size++] = share;
        }

        double[] inOrder() {
            double[] inOrder = Arrays.copyOf(shares, size);
            Arrays.sort(inOrder);
            return inOrder;
        }
    }
}
