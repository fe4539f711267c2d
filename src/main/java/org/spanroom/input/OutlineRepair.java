package org.spanroom.input;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.locationtech.jts.algorithm.LineIntersector;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.noding.MCIndexNoder;
import org.locationtech.jts.noding.NodedSegmentString;
import org.locationtech.jts.noding.SegmentIntersector;
import org.locationtech.jts.noding.SegmentString;

/**
 * Repairs the outlines of one layer that cross or overlap themselves: by JTS's GeometryFixer while that is cheap, otherwise by the
 * convex hull.
 *
 * <p>The fixer's time goes with the crossings, which may be as many as the square of the edges (measured: 0.2 s for 200 edges that all
 * cross, 10 s for 1000). They are counted first, and no further than to the limit. Not only each outline is limited, but the
 * layer's sum too.
 */
final class OutlineRepair {
    private static final int MOST_CROSSINGS = 5_000;
    private static final long MOST_PAIRS = 5_000_000;
    private static final int MOST_OF_LAYER = 20;

    private long crossingsLeft = (long) MOST_OF_LAYER * MOST_CROSSINGS;
    private long pairsLeft = MOST_OF_LAYER * MOST_PAIRS;

    /**
     * What became of an outline.
     *
     * @param words what was done, for a finding
     */
    record Repaired(List<Polygon> polygons, String words) {}

    /** Returns the parts with vertices of a polygon or of several, made valid. */
    Repaired repair(Geometry outline) {
        if (isCheap(outline)) {
            try {
                return new Repaired(polygons(GeometryFixer.fix(outline)), "the outline crosses or overlaps itself");
            } catch (RuntimeException e) {
                // JTS gives up on a few; the hull is left
            }
        }
        return new Repaired(
                polygons(outline.convexHull()),
                "the outline crosses or overlaps itself and cannot be repaired; its convex hull was used");
    }

    private boolean isCheap(Geometry outline) {
        var crossings = new Crossings(Math.min(MOST_CROSSINGS, crossingsLeft), Math.min(MOST_PAIRS, pairsLeft));
        var edges = new ArrayList<SegmentString>();
        for (Object line : LinearComponentExtracter.getLines(outline)) {
            edges.add(new NodedSegmentString(((LineString) line).getCoordinates(), null));
        }
        new MCIndexNoder(crossings).computeNodes(edges);
        crossingsLeft -= crossings.found;
        pairsLeft -= crossings.pairs;
        return !crossings.isDone();
    }

    private static List<Polygon> polygons(Geometry geometry) {
        return Stream.of(PolygonExtracter.getPolygons(geometry).toArray())
                .map(part -> (Polygon) part)
                .filter(part -> !part.isEmpty())
                .toList();
    }

    /** Counts the pairs of edges that meet elsewhere than at an end of both, up to a limit. */
    private static final class Crossings implements SegmentIntersector {
        private final LineIntersector intersector = new RobustLineIntersector();
        private final long mostFound;
        private final long mostPairs;
        private long found;
        private long pairs;

        Crossings(long mostFound, long mostPairs) {
            this.mostFound = mostFound;
            this.mostPairs = mostPairs;
        }

        @Override
        public void processIntersections(SegmentString a, int i, SegmentString b, int j) {
            pairs++;
            intersector.computeIntersection(
                    a.getCoordinate(i), a.getCoordinate(i + 1), b.getCoordinate(j), b.getCoordinate(j + 1));
            found += intersector.hasIntersection() && intersector.isInteriorIntersection() ? 1 : 0;
        }

        @Override
        public boolean isDone() {
            return found >= mostFound || pairs >= mostPairs;
        }
    }
}
