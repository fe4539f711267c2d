package org.spanroom.network;

/**
 * One straight step of a line against one straight wall, in plane meters: where it is within tolerance, where it is
 * nearest, where it crosses.
 *
 * <p>The places within tolerance of a wall are a rectangle with a round cap at either end, which is convex: they cut one
 * interval out of the step, the union of the rectangle's and the caps' intervals. The least distance between two straight
 * pieces is at an end of one of them or at their crossing.
 */
final class WallStep {
    private final double ax;
    private final double ay;
    private final double dx;
    private final double dy;
    private double reachFrom;
    private double reachTo;
    private double nearFrom;
    private double nearTo;
    private double nearM;
    private double crossing;

    WallStep(double ax, double ay, double bx, double by) {
        this.ax = ax;
        this.ay = ay;
        dx = bx - ax;
        dy = by - ay;
    }

    /** Returns the distance of a point from the wall that begins at a ring's ordinate {@code i}. */
    static double distanceM(double[] ring, int i, double x, double y) {
        double wx = ring[i + 2] - ring[i];
        double wy = ring[i + 3] - ring[i + 1];
        double px = x - ring[i];
        double py = y - ring[i + 1];
        double squared = wx * wx + wy * wy;
        double share = squared == 0 ? 0 : clamp((px * wx + py * wy) / squared);
        return Math.hypot(px - share * wx, py - share * wy);
    }

    void against(double[] ring, int i, double toleranceM, double tieM) {
        double px = ring[i];
        double py = ring[i + 1];
        double wx = ring[i + 2] - px;
        double wy = ring[i + 3] - py;
        crossing = crossingWith(px, py, wx, wy);
        findNearest(ring, i, tieM);
        reachFrom = Double.POSITIVE_INFINITY;
        reachTo = Double.NEGATIVE_INFINITY;
        if (nearM <= toleranceM) {
            addCap(px, py, toleranceM);
            addCap(px + wx, py + wy, toleranceM);
            addRectangle(px, py, wx, wy, toleranceM);
            reachFrom = Math.min(reachFrom, nearFrom);
            reachTo = Math.max(reachTo, nearTo);
        }
    }

    void report(double toleranceM, Footprint.Meeting meeting) {
        if (nearM <= toleranceM) {
            meeting.beside(reachFrom, reachTo, nearFrom, nearTo, nearM);
        } else {
            meeting.misses(nearM);
        }
    }

    boolean crosses() {
        return !Double.isNaN(crossing);
    }

    double crossing() {
        return crossing;
    }

    private double crossingWith(double px, double py, double wx, double wy) {
        double across = dx * wy - dy * wx;
        double step = ((px - ax) * wy - (py - ay) * wx) / across;
        double wall = ((px - ax) * dy - (py - ay) * dx) / across;
        return step >= 0 && step <= 1 && wall >= 0 && wall <= 1 ? step : Double.NaN;
    }

    private void findNearest(double[] ring, int i, double tieM) {
        double[] candidates = {
            0, 1, project(ring[i], ring[i + 1]), project(ring[i + 2], ring[i + 3]), crosses() ? crossing : 0
        };
        double[] distances = new double[candidates.length];
        nearM = Double.POSITIVE_INFINITY;
        for (int c = 0; c < candidates.length; c++) {
            distances[c] = distanceM(ring, i, ax + candidates[c] * dx, ay + candidates[c] * dy);
            nearM = Math.min(nearM, distances[c]);
        }
        nearFrom = 1;
        nearTo = 0;
        for (int c = 0; c < candidates.length; c++) {
            if (distances[c] <= nearM + tieM) {
                nearFrom = Math.min(nearFrom, candidates[c]);
                nearTo = Math.max(nearTo, candidates[c]);
            }
        }
    }

    private double project(double x, double y) {
        return clamp(((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy));
    }

    private void addCap(double x, double y, double toleranceM) {
        double squared = dx * dx + dy * dy;
        double middle = ((x - ax) * dx + (y - ay) * dy) / squared;
        double offX = ax + middle * dx - x;
        double offY = ay + middle * dy - y;
        double half = (toleranceM * toleranceM - offX * offX - offY * offY) / squared;
        if (half >= 0) {
            addReach(middle - Math.sqrt(half), middle + Math.sqrt(half));
        }
    }

    private void addRectangle(double px, double py, double wx, double wy, double toleranceM) {
        double length = Math.hypot(wx, wy);
        if (length == 0) {
            return;
        }
        double[] interval = {0, 1};
        clip(interval, ((ax - px) * wx + (ay - py) * wy) / length, (dx * wx + dy * wy) / length, 0, length);
        clip(
                interval,
                ((ay - py) * wx - (ax - px) * wy) / length,
                (dy * wx - dx * wy) / length,
                -toleranceM,
                toleranceM);
        addReach(interval[0], interval[1]);
    }

    /** Keeps the part of the interval where {@code start + t * slope} is between two values. */
    private static void clip(double[] interval, double start, double slope, double least, double most) {
        if (slope == 0) {
            if (start < least || start > most) {
                interval[1] = interval[0] - 1;
            }
            return;
        }
        double a = (least - start) / slope;
        double b = (most - start) / slope;
        interval[0] = Math.max(interval[0], Math.min(a, b));
        interval[1] = Math.min(interval[1], Math.max(a, b));
    }

    private void addReach(double from, double to) {
        if (from <= to && to >= 0 && from <= 1) {
            reachFrom = Math.min(reachFrom, clamp(from));
            reachTo = Math.max(reachTo, clamp(to));
        }
    }

    private static double clamp(double share) {
        return Math.max(0, Math.min(1, share));
    }
}
