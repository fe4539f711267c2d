package org.spanroom.permit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.ItemVisitor;
import org.locationtech.jts.index.hprtree.HPRtree;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.spanroom.model.Line;
import org.spanroom.model.Span;
import org.spanroom.model.Stretch;
import org.spanroom.model.Zone;

/**
 * Prints how long {@link Area} takes beside what JTS offers for the same: {@code AreaTiming SPANS ZONES}, 20 000 and 2 000 by default.
 * Not a test; run it from the test classes. Decision 009 rests on it.
 *
 * <p>The city is that of {@link PermitTiming}; pairs of a span and a zone whose boxes meet are found before the clock starts. All
 * answer how many metres of the span lie in the zone, and whether its ends do. The run fails where they differ by a millimetre. What is
 * asked of JTS is less: a line drawn along a boundary counts as inside with ours within a tenth of a millimetre, with JTS only where it
 * lies on it to the last digit. No line of this city is drawn so.
 */
final class AreaTiming {
    private static final GeometryFactory SHAPES = new GeometryFactory();
    private static final int ROUNDS = 3;
    private static final double SAME_M = 1e-3;

    private AreaTiming() {}

    /** A span whose box meets that of a zone, by their numbers. */
    private record Pair(int span, int zone) {}

    /** What is asked about a pair. */
    private record Answer(double insideM, boolean beginsIn, boolean endsIn) {}

    /** Prints three rounds of each. Arguments: number of spans, of zones. */
    public static void main(String[] args) {
        var random = new Random(1);
        List<Span> spans = PermitTiming.spans(random, args.length > 0 ? Integer.parseInt(args[0]) : 20_000);
        List<Zone> zones = PermitTiming.zones(random, args.length > 1 ? Integer.parseInt(args[1]) : 2_000);
        Plane plane = Plane.about(spans.get(0).from().lonDeg());
        List<Way> ways = spans.stream().map(span -> new Way(span, plane)).toList();
        List<LineString> lines =
                spans.stream().map(span -> line(span.lonLat(), plane)).toList();
        List<Polygon> polygons = zones.stream()
                .map(zone -> polygon(zone.outlines().get(0), plane))
                .toList();
        List<Pair> pairs = pairs(lines, polygons);
        System.out.println(pairs.size() + " pairs of a span and a zone whose boxes meet");
        Answer[] ours = new Answer[pairs.size()];
        Answer[] overlaid = new Answer[pairs.size()];
        Answer[] indexed = new Answer[pairs.size()];
        for (int round = 0; round < ROUNDS; round++) {
            double oursS = timed("Area", pairs, ours, () -> {
                List<Area> areas = zones.stream()
                        .map(zone -> new Area(zone.outlines().get(0), plane))
                        .toList();
                return pair -> ask(ways.get(pair.span()), areas.get(pair.zone()));
            });
            double overlaidS = timed("overlay", pairs, overlaid, () -> {
                List<OverlaidArea> areas =
                        polygons.stream().map(OverlaidArea::new).toList();
                return pair -> areas.get(pair.zone()).ask(lines.get(pair.span()), spans.get(pair.span()));
            });
            double indexedS = timed("indexes", pairs, indexed, () -> {
                List<IndexedArea> areas =
                        polygons.stream().map(IndexedArea::new).toList();
                return pair -> areas.get(pair.zone()).ask(lines.get(pair.span()), spans.get(pair.span()));
            });
            System.out.printf(
                    Locale.ROOT,
                    "round %d: overlay takes %.2f times as long as ours, indexes %.2f times%n",
                    round + 1,
                    overlaidS / oursS,
                    indexedS / oursS);
        }
        Predicate<Pair> onBoundary = pair -> hasEndOnBoundary(lines.get(pair.span()), polygons.get(pair.zone()));
        compare(pairs, ours, overlaid, onBoundary);
        compare(pairs, ours, indexed, onBoundary);
    }

    private static double timed(
            String who, List<Pair> pairs, Answer[] answers, Supplier<Function<Pair, Answer>> prepared) {
        long start = System.nanoTime();
        Function<Pair, Answer> asked = prepared.get();
        long ready = System.nanoTime();
        for (int i = 0; i < answers.length; i++) {
            answers[i] = asked.apply(pairs.get(i));
        }
        double askedS = (System.nanoTime() - ready) / 1e9;
        System.out.printf(
                Locale.ROOT,
                "%-7s prepared in %.3f s, asked in %.3f s, %.2f us a pair%n",
                who,
                (ready - start) / 1e9,
                askedS,
                askedS / answers.length * 1e6);
        return askedS;
    }

    private static Answer ask(Way way, Area area) {
        boolean beginsIn = way.beginsIn(area);
        if (!way.mayMeetBoundary(area)) {
            return new Answer(beginsIn ? way.whole().lengthM() : 0, beginsIn, beginsIn);
        }
        double insideM = way.inside(area).stream().mapToDouble(Stretch::lengthM).sum();
        return new Answer(insideM, beginsIn, way.endsIn(area));
    }

    /** The same by JTS: a prepared polygon decides what it can, an overlay measures the rest, an indexed locator knows the ends. */
    private static final class OverlaidArea {
        private final Polygon polygon;
        private final PreparedGeometry prepared;
        private final IndexedPointInAreaLocator locator;

        OverlaidArea(Polygon polygon) {
            this.polygon = polygon;
            this.prepared = PreparedGeometryFactory.prepare(polygon);
            this.locator = new IndexedPointInAreaLocator(polygon);
        }

        Answer ask(LineString line, Span span) {
            double scaleRatio = span.lengthM() / line.getLength();
            boolean beginsIn = holds(line.getCoordinateN(0));
            boolean endsIn = holds(line.getCoordinateN(line.getNumPoints() - 1));
            if (!prepared.intersects(line)) {
                return new Answer(0, beginsIn, endsIn);
            }
            if (beginsIn && endsIn && prepared.containsProperly(line)) {
                return new Answer(span.lengthM(), true, true);
            }
            Geometry inside = OverlayNGRobust.overlay(polygon, line, OverlayNG.INTERSECTION);
            return new Answer(inside.getLength() * scaleRatio, beginsIn, endsIn);
        }

        private boolean holds(Coordinate place) {
            return locator.locate(place) != Location.EXTERIOR;
        }
    }

    /** The same by JTS's indexes: a tree of edges names those that may cut a step, an indexed locator knows what lies between cuts. */
    private static final class IndexedArea {
        private final HPRtree edges = new HPRtree();
        private final IndexedPointInAreaLocator locator;
        private final RobustLineIntersector crossing = new RobustLineIntersector();

        IndexedArea(Polygon polygon) {
            this.locator = new IndexedPointInAreaLocator(polygon);
            Coordinate[] ring = polygon.getExteriorRing().getCoordinates();
            for (int i = 1; i < ring.length; i++) {
                edges.insert(new Envelope(ring[i - 1], ring[i]), new LineSegment(ring[i - 1], ring[i]));
            }
            edges.build();
        }

        Answer ask(LineString line, Span span) {
            Coordinate[] places = line.getCoordinates();
            boolean beginsIn = holds(places[0]);
            if (edges.query(line.getEnvelopeInternal()).isEmpty()) {
                return new Answer(beginsIn ? span.lengthM() : 0, beginsIn, beginsIn);
            }
            double insideM = 0;
            for (int i = 1; i < places.length; i++) {
                insideM += insideM(new LineSegment(places[i - 1], places[i]));
            }
            return new Answer(insideM * span.lengthM() / line.getLength(), beginsIn, holds(places[places.length - 1]));
        }

        private double insideM(LineSegment step) {
            var shares = new double[16];
            int[] size = {2};
            shares[1] = 1;
            double[][] grown = {shares};
            edges.query(new Envelope(step.p0, step.p1), (ItemVisitor) item -> {
                LineSegment edge = (LineSegment) item;
                crossing.computeIntersection(step.p0, step.p1, edge.p0, edge.p1);
                for (int k = 0; k < crossing.getIntersectionNum(); k++) {
                    if (size[0] == grown[0].length) {
                        grown[0] = Arrays.copyOf(grown[0], 2 * size[0]);
                    }
                    grown[0][size[0]++] = step.projectionFactor(crossing.getIntersection(k));
                }
            });
            Arrays.sort(grown[0], 0, size[0]);
            double insideRatio = 0;
            for (int k = 1; k < size[0]; k++) {
                double from = grown[0][k - 1];
                double to = grown[0][k];
                insideRatio += to > from && holds(step.pointAlong((from + to) / 2)) ? to - from : 0;
            }
            return insideRatio * step.getLength();
        }

        private boolean holds(Coordinate place) {
            return locator.locate(place) != Location.EXTERIOR;
        }
    }

    /**
     * Fails unless lengths agree to a millimetre, and ends lie on the same side; ends on the boundary aside.
     *
     * @param onBoundary whether an end of a pair's span lies so near the zone's boundary that ours counts it as inside
     */
    private static void compare(List<Pair> pairs, Answer[] ours, Answer[] jts, Predicate<Pair> onBoundary) {
        double mostM = 0;
        int other = 0;
        for (int i = 0; i < ours.length; i++) {
            mostM = Math.max(mostM, Math.abs(ours[i].insideM() - jts[i].insideM()));
            if (ours[i].beginsIn() != jts[i].beginsIn() || ours[i].endsIn() != jts[i].endsIn()) {
                other++;
                check(onBoundary.test(pairs.get(i)), "an end lies on another side");
            }
        }
        System.out.printf(
                Locale.ROOT,
                "%.0f m inside; lengths of a pair differ by %.2e m at most; %d pairs have an end on the boundary%n",
                Arrays.stream(ours).mapToDouble(Answer::insideM).sum(),
                mostM,
                other);
        check(mostM <= SAME_M, "lengths differ");
    }

    private static void check(boolean good, String problem) {
        if (!good) {
            throw new IllegalStateException(problem);
        }
    }

    private static boolean hasEndOnBoundary(LineString line, Polygon polygon) {
        double nearestM = Math.min(
                polygon.getExteriorRing().distance(line.getStartPoint()),
                polygon.getExteriorRing().distance(line.getEndPoint()));
        return nearestM <= 1.01 * Area.REACH_M;
    }

    private static List<Pair> pairs(List<LineString> lines, List<Polygon> polygons) {
        var index = new STRtree();
        for (int zone = 0; zone < polygons.size(); zone++) {
            index.insert(polygons.get(zone).getEnvelopeInternal(), zone);
        }
        var pairs = new ArrayList<Pair>();
        for (int span = 0; span < lines.size(); span++) {
            Envelope extent = lines.get(span).getEnvelopeInternal();
            for (Object zone : index.query(extent)) {
                pairs.add(new Pair(span, (Integer) zone));
            }
        }
        return pairs;
    }

    private static Polygon polygon(Zone.Outline outline, Plane plane) {
        return SHAPES.createPolygon(line(outline.shell(), plane).getCoordinates());
    }

    private static LineString line(Line degrees, Plane plane) {
        var places = new Coordinate[degrees.size()];
        double[] xy = new double[2];
        for (int i = 0; i < places.length; i++) {
            plane.project(degrees.x(i), degrees.y(i), xy, 0);
            places[i] = new Coordinate(xy[0], xy[1]);
        }
        return SHAPES.createLineString(places);
    }
}
