package org.spanroom.network;

import java.util.stream.IntStream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.hprtree.HPRtree;

/**
 * The walls of one ring, by where they are: a wall is named by the place of its first ordinate in the ring. Few walls are all tried; of
 * many, a tree (Hilbert-packed R-tree) finds those near, so that the work goes with what is near and not with the outline.
 * Unmodifiable; safe for use by several threads.
 */
final class WallIndex {
    private static final double FIRST_RADIUS_M = 1;

    /** Half around the globe and more. */
    private static final double FARTHEST_M = 1e8;

    private final double[] ring;
    private final int[] every;
    private final HPRtree tree;
    private final boolean indexed;

    private WallIndex(double[] ring, boolean indexed) {
        this.ring = ring;
        this.indexed = indexed;
        every = new int[ring.length / 2 - 1];
        tree = new HPRtree();
        for (int wall = 0; wall < every.length; wall++) {
            int i = 2 * wall;
            every[wall] = i;
            if (indexed) {
                tree.insert(new Envelope(ring[i], ring[i + 2], ring[i + 1], ring[i + 3]), i);
            }
        }
        // A tree builds itself when it is first asked, which two threads may do at once.
        tree.build();
    }

    /** Returns an index of a closed ring, ordinates east and north by turns. */
    static WallIndex of(double[] ring) {
        return new WallIndex(ring, true);
    }

    /** Returns the same of a ring with few walls: each is near everything. */
    static WallIndex all(double[] ring) {
        return new WallIndex(ring, false);
    }

    /** Returns the walls that may touch a box, in the order of the ring. */
    int[] near(double west, double south, double east, double north) {
        if (!indexed) {
            return every;
        }
        IntStream.Builder found = IntStream.builder();
        tree.query(new Envelope(west, east, south, north), wall -> found.add((Integer) wall));
        return found.build().sorted().toArray();
    }

    /** Returns whether a place is inside: even-odd rule along a ray to the east. */
    boolean contains(double x, double y) {
        boolean inside = false;
        for (int i : near(x, y, Double.MAX_VALUE, y)) {
            double y0 = ring[i + 1];
            double y1 = ring[i + 3];
            if (y0 > y != y1 > y && x < ring[i] + (y - y0) / (y1 - y0) * (ring[i + 2] - ring[i])) {
                inside = !inside;
            }
        }
        return inside;
    }

    /** Returns the distance from a place to the nearest wall. */
    double distanceM(double x, double y) {
        for (double radiusM = FIRST_RADIUS_M; ; radiusM *= 2) {
            int[] near = near(x - radiusM, y - radiusM, x + radiusM, y + radiusM);
            double least = Double.POSITIVE_INFINITY;
            for (int i : near) {
                least = Math.min(least, WallStep.distanceM(ring, i, x, y));
            }
            // Walls outside of the box are farther than its half width.
            if (least <= radiusM || near.length == every.length || radiusM > FARTHEST_M) {
                return least;
            }
        }
    }
}
