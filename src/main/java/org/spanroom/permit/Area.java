package org.spanroom.permit;

import java.util.Arrays;
import org.spanroom.model.Line;
import org.spanroom.model.Zone;

/**
 * One polygon of a zone in a plane: which places it holds, and where its boundary cuts a straight step.
 *
 * <p>Edges lie packed in blocks of consecutive ones, each block with its box, so that most of a large boundary is passed over
 * unseen. A place within {@link #REACH_M} of the boundary counts as inside: a line drawn along the limit of a zone lies in it.
 * Places inside are recognized by the parity of the edges that a ray to the east crosses.
 */
final class Area {
    /** A tenth of a millimetre: coarser than the noise of degrees in any file, finer than any drawing. */
    static final double REACH_M = 1e-4;

    private static final int BLOCK = 16;

    private final double[] edges;
    private final double[] boxes;

    Area(Zone.Outline outline, Plane plane) {
        int count = outline.shell().size() - 1;
        for (Line hole : outline.holes()) {
            count += hole.size() - 1;
        }
        edges = new double[4 * count];
        int at = put(outline.shell(), plane, 0);
        for (Line hole : outline.holes()) {
            at = put(hole, plane, at);
        }
        boxes = boxes(edges);
    }

    private int put(Line ring, Plane plane, int from) {
        int at = from;
        double[] xy = new double[2];
        plane.project(ring.x(0), ring.y(0), xy, 0);
        for (int i = 1; i < ring.size(); i++) {
            edges[at] = xy[0];
            edges[at + 1] = xy[1];
            plane.project(ring.x(i), ring.y(i), xy, 0);
            edges[at + 2] = xy[0];
            edges[at + 3] = xy[1];
            at += 4;
        }
        return at;
    }

    /** Returns least x, least y, most x, most y of each block of edges. */
    private static double[] boxes(double[] edges) {
        int count = (edges.length / 4 + BLOCK - 1) / BLOCK;
        double[] boxes = new double[4 * count];
        for (int block = 0; block < count; block++) {
            double[] box = {
                Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY
            };
            for (int at = 4 * BLOCK * block; at < Math.min(edges.length, 4 * BLOCK * (block + 1)); at += 2) {
                box[0] = Math.min(box[0], edges[at]);
                box[1] = Math.min(box[1], edges[at + 1]);
                box[2] = Math.max(box[2], edges[at]);
                box[3] = Math.max(box[3], edges[at + 1]);
            }
            System.arraycopy(box, 0, boxes, 4 * block, 4);
        }
        return boxes;
    }

    /** Returns whether the boundary may come into a box; if not, all of the box lies on one side of it. */
    boolean boundaryMayMeet(double leastX, double leastY, double mostX, double mostY) {
        for (int box = 0; box < boxes.length; box += 4) {
            if (boxes[box] <= mostX + REACH_M
                    && boxes[box + 2] >= leastX - REACH_M
                    && boxes[box + 1] <= mostY + REACH_M
                    && boxes[box + 3] >= leastY - REACH_M) {
                return true;
            }
        }
        return false;
    }

    /** Returns whether a place lies inside, or on the boundary. */
    boolean holds(double x, double y) {
        boolean inside = false;
        for (int block = 0; 4 * block < boxes.length; block++) {
            int box = 4 * block;
            boolean beside =
                    boxes[box + 1] > y + REACH_M || boxes[box + 3] < y - REACH_M || boxes[box + 2] < x - REACH_M;
            for (int at = first(block); !beside && at < end(block); at += 4) {
                if (isNear(at, x, y)) {
                    return true;
                }
                inside ^= isCrossedByRay(at, x, y);
            }
        }
        return inside;
    }

    private boolean isCrossedByRay(int at, double x, double y) {
        double y0 = edges[at + 1];
        double y1 = edges[at + 3];
        return (y0 > y) != (y1 > y) && x < edges[at] + (y - y0) / (y1 - y0) * (edges[at + 2] - edges[at]);
    }

    private boolean isNear(int at, double x, double y) {
        double x0 = edges[at];
        double y0 = edges[at + 1];
        double x1 = edges[at + 2];
        double y1 = edges[at + 3];
        if (Math.min(x0, x1) > x + REACH_M
                || Math.max(x0, x1) < x - REACH_M
                || Math.min(y0, y1) > y + REACH_M
                || Math.max(y0, y1) < y - REACH_M) {
            return false;
        }
        double share = share(x0, y0, x1, y1, x, y);
        return Math.hypot(x0 + share * (x1 - x0) - x, y0 + share * (y1 - y0) - y) <= REACH_M;
    }

    /** Returns the share of a step, 0 to 1, that lies nearest to a place. */
    private static double share(double x0, double y0, double x1, double y1, double x, double y) {
        double dx = x1 - x0;
        double dy = y1 - y0;
        double squared = dx * dx + dy * dy;
        return squared == 0 ? 0 : Math.max(0, Math.min(1, ((x - x0) * dx + (y - y0) * dy) / squared));
    }

    /**
     * Returns the shares, 0 to 1 and in order, at which a step may pass from inside to outside or back: its ends, where it
     * crosses an edge, and where it passes the end of one.
     */
    double[] cuts(double x0, double y0, double x1, double y1) {
        var step = new Step(x0, y0, x1, y1);
        for (int block = 0; 4 * block < boxes.length; block++) {
            int box = 4 * block;
            if (step.mayMeet(boxes[box], boxes[box + 1], boxes[box + 2], boxes[box + 3])) {
                for (int at = first(block); at < end(block); at += 4) {
                    step.meet(edges[at], edges[at + 1], edges[at + 2], edges[at + 3]);
                }
            }
        }
        return step.inOrder();
    }

    private static int first(int block) {
        return 4 * BLOCK * block;
    }

    private int end(int block) {
        return Math.min(edges.length, 4 * BLOCK * (block + 1));
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

        boolean mayMeet(double leastX, double leastY, double mostX, double mostY) {
            return leastX <= Math.max(x0, x1) + REACH_M
                    && mostX >= Math.min(x0, x1) - REACH_M
                    && leastY <= Math.max(y0, y1) + REACH_M
                    && mostY >= Math.min(y0, y1) - REACH_M;
        }

        void meet(double ax, double ay, double bx, double by) {
            if (!mayMeet(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by))) {
                return;
            }
            double a = side(ax, ay);
            double b = side(bx, by);
            if ((a > 0) != (b > 0)) {
                double share = a / (a - b);
                add(share(x0, y0, x1, y1, ax + share * (bx - ax), ay + share * (by - ay)));
            }
            pass(ax, ay);
            pass(bx, by);
        }

        /** An edge along the step crosses nothing, but where it begins and ends the step may change sides. */
        private void pass(double x, double y) {
            double share = share(x0, y0, x1, y1, x, y);
            if (Math.hypot(x0 + share * (x1 - x0) - x, y0 + share * (y1 - y0) - y) <= 2 * REACH_M) {
                add(share);
            }
        }

        private double side(double x, double y) {
            return (x1 - x0) * (y - y0) - (x - x0) * (y1 - y0);
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
