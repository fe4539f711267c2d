package org.spanroom.permit;

import java.util.Arrays;

/** A straight step in a plane, in meters, and the shares of it, 0 to 1, at which it meets edges. For use by one thread. */
final class Step {
    /** An end of an edge is passed within this distance: twice the least reach of an area. */
    private static final double PASSING_M = 2e-4;

    private final double x0;
    private final double y0;
    private final double x1;
    private final double y1;
    private final double lengthM;
    private double[] shares = {0, 1, 0, 0};
    private int size = 2;

    Step(double x0, double y0, double x1, double y1) {
        this.x0 = x0;
        this.y0 = y0;
        this.x1 = x1;
        this.y1 = y1;
        this.lengthM = Math.hypot(x1 - x0, y1 - y0);
    }

    /** Adds where the step crosses an edge, and where it passes an end of it. */
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
        if (Math.hypot(x0 + share * (x1 - x0) - x, y0 + share * (y1 - y0) - y) <= PASSING_M) {
            add(share);
        }
    }

    /**
     * Adds where the step comes within a distance of an edge and where it leaves it again. What is within a distance of an edge is
     * the strip along it and a disk at each end: convex, so that it holds one part of the step at most.
     */
    void near(double ax, double ay, double bx, double by, double distanceM) {
        if (lengthM == 0) {
            return;
        }
        var part = new Part();
        inDisk(ax, ay, distanceM, part);
        inDisk(bx, by, distanceM, part);
        inStrip(ax, ay, bx, by, distanceM, part);
        if (part.from < part.to && part.to > 0 && part.from < 1) {
            add(Math.max(0, part.from));
            add(Math.min(1, part.to));
        }
    }

    /** The smallest part of the endless line through the step that covers what was added. */
    private static final class Part {
        private double from = Double.POSITIVE_INFINITY;
        private double to = Double.NEGATIVE_INFINITY;

        void cover(double one, double other) {
            from = Math.min(from, one);
            to = Math.max(to, other);
        }
    }

    private void inDisk(double x, double y, double radiusM, Part part) {
        double offM = Math.abs(side(x, y)) / lengthM;
        if (offM < radiusM) {
            double middle = ((x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / (lengthM * lengthM);
            double half = Math.sqrt((radiusM - offM) * (radiusM + offM)) / lengthM;
            part.cover(middle - half, middle + half);
        }
    }

    /** The strip reaches to both sides of the edge and no further than its ends. */
    private void inStrip(double ax, double ay, double bx, double by, double halfWidthM, Part part) {
        double edgeM = Math.hypot(bx - ax, by - ay);
        if (edgeM == 0) {
            return;
        }
        double ex = (bx - ax) / edgeM;
        double ey = (by - ay) / edgeM;
        double[] across =
                between(ex * (y0 - ay) - ey * (x0 - ax), ex * (y1 - y0) - ey * (x1 - x0), -halfWidthM, halfWidthM);
        double[] along = between(ex * (x0 - ax) + ey * (y0 - ay), ex * (x1 - x0) + ey * (y1 - y0), 0, edgeM);
        double from = Math.max(across[0], along[0]);
        double to = Math.min(across[1], along[1]);
        if (from < to) {
            part.cover(from, to);
        }
    }

    /** Returns from where to where {@code start + share * change} is between two limits; nothing has its end before its beginning. */
    private static double[] between(double start, double change, double least, double most) {
        if (change == 0) {
            return start > least && start < most
                    ? new double[] {Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY}
                    : new double[] {1, 0};
        }
        double one = (least - start) / change;
        double other = (most - start) / change;
        return new double[] {Math.min(one, other), Math.max(one, other)};
    }

    private double side(double x, double y) {
        return (x1 - x0) * (y - y0) - (x - x0) * (y1 - y0);
    }

    /** Returns the share of the step, 0 to 1, that is nearest to a place. */
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

    /** Returns the shares in order, the ends of the step among them. */
    double[] inOrder() {
        double[] inOrder = Arrays.copyOf(shares, size);
        Arrays.sort(inOrder);
        return inOrder;
    }
}
