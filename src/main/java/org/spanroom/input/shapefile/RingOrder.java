package org.spanroom.input.shapefile;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import org.spanroom.input.layer.FeatureFault;

/**
 * Which rings of a shapefile polygon are outer ones, and which holes are in which of them.
 *
 * <p>Method: outer rings run clockwise and holes the other way (ESRI White Paper, July 1998, Polygon); a hole belongs to the
 * smallest outer ring whose inside holds its first vertex that is on no edge. A ring that runs as a hole outside of every
 * outer ring is treated as an outer one, because programs write such polygons. Valid for rings that do not cross.
 */
final class RingOrder {
    /** A tenth of a second's work; a polygon that needs more is no vault. */
    private static final long MOST_STEPS = 50_000_000;

    private static final int POINT = 16;

    private ByteBuffer content = ByteBuffer.allocate(0);
    private int base;
    private int[] starts = {};
    private double[] areas = {};
    private double[][] boxes = {};
    private int[] outerOf = {};
    private long steps;

    /** Returns the rings' indexes, each outer one followed by its holes, otherwise as they come. */
    int[] order(ByteBuffer record, int position, int[] ringStarts) throws FeatureFault {
        content = record;
        base = position;
        starts = ringStarts;
        steps = 0;
        int count = ringStarts.length - 1;
        areas = new double[count];
        boxes = new double[count][];
        for (int ring = 0; ring < count; ring++) {
            measure(ring);
        }
        outerOf = new int[count];
        for (int ring = 0; ring < count; ring++) {
            outerOf[ring] = areas[ring] <= 0 ? ring : smallestAround(ring);
        }
        return grouped();
    }

    private int[] grouped() {
        List<List<Integer>> polygons = new ArrayList<>();
        for (int ring = 0; ring < outerOf.length; ring++) {
            polygons.add(new ArrayList<>(isOuter(ring) ? List.of(ring) : List.of()));
        }
        for (int ring = 0; ring < outerOf.length; ring++) {
            if (!isOuter(ring)) {
                polygons.get(outerOf[ring]).add(ring);
            }
        }
        return polygons.stream()
                .flatMap(List::stream)
                .mapToInt(Integer::intValue)
                .toArray();
    }

    boolean isOuter(int ring) {
        return outerOf[ring] == ring;
    }

    private int smallestAround(int hole) throws FeatureFault {
        int best = hole;
        for (int ring = 0; ring < areas.length; ring++) {
            steps++;
            boolean smaller = best == hole || areas[ring] > areas[best];
            if (areas[ring] < 0 && smaller && boxHolds(boxes[ring], boxes[hole]) && holds(ring, hole)) {
                best = ring;
            }
        }
        if (steps > MOST_STEPS) {
            throw FeatureFault.unreadable("a polygon of " + areas.length + " rings has too many to be sorted");
        }
        return best;
    }

    private boolean holds(int outer, int hole) {
        for (int vertex = starts[hole]; vertex < starts[hole + 1] && steps <= MOST_STEPS; vertex++) {
            int side = side(outer, x(vertex), y(vertex));
            if (side != 0) {
                return side > 0;
            }
        }
        return true;
    }

    /** Returns 1 for a point inside the ring, -1 outside, 0 on an edge: counts the edges that a ray crosses. */
    private int side(int ring, double px, double py) {
        boolean inside = false;
        int last = starts[ring + 1] - 1;
        steps += starts[ring + 1] - starts[ring];
        for (int a = last, b = starts[ring]; b <= last; a = b++) {
            double cross = (x(b) - x(a)) * (py - y(a)) - (px - x(a)) * (y(b) - y(a));
            if (cross == 0 && between(px, x(a), x(b)) && between(py, y(a), y(b))) {
                return 0;
            }
            if ((y(a) > py) != (y(b) > py) && (cross > 0) == (y(b) > y(a))) {
                inside = !inside;
            }
        }
        return inside ? 1 : -1;
    }

    private void measure(int ring) {
        double[] box = {
            Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY
        };
        int from = starts[ring];
        double twice = 0;
        for (int vertex = from; vertex < starts[ring + 1]; vertex++) {
            int next = vertex + 1 == starts[ring + 1] ? from : vertex + 1;
            twice += (x(vertex) - x(from)) * (y(next) - y(from)) - (x(next) - x(from)) * (y(vertex) - y(from));
            box[0] = Math.min(box[0], x(vertex));
            box[1] = Math.min(box[1], y(vertex));
            box[2] = Math.max(box[2], x(vertex));
            box[3] = Math.max(box[3], y(vertex));
        }
        areas[ring] = twice / 2;
        boxes[ring] = box;
    }

    private static boolean boxHolds(double[] outer, double[] inner) {
        return outer[0] <= inner[0] && outer[1] <= inner[1] && outer[2] >= inner[2] && outer[3] >= inner[3];
    }

    private static boolean between(double value, double a, double b) {
        return value >= Math.min(a, b) && value <= Math.max(a, b);
    }

    private double x(int vertex) {
        return content.getDouble(base + POINT * vertex);
    }

    private double y(int vertex) {
        return content.getDouble(base + POINT * vertex + Double.BYTES);
    }
}
