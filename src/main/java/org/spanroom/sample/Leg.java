package org.spanroom.sample;

/**
 * A stretch of street from one vault to the next: what becomes a span for each duct laid in it.
 *
 * @param xy packed ordinates from the first node to the second, both included
 * @param crooked true where it turns so often that pulling will be hard
 */
record Leg(Node from, Node to, double[] xy, boolean crooked) {

    double lengthM() {
        double total = 0;
        for (int i = 2; i < xy.length; i += 2) {
            total += Math.sqrt(
                    (xy[i] - xy[i - 2]) * (xy[i] - xy[i - 2]) + (xy[i + 1] - xy[i - 1]) * (xy[i + 1] - xy[i - 1]));
        }
        return total;
    }

    /** Returns the least distance from a point to the line. */
    double distance(double x, double y) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 2; i < xy.length; i += 2) {
            least = Math.min(least, distanceToStep(i, x, y));
        }
        return least;
    }

    private double distanceToStep(int i, double x, double y) {
        double dx = xy[i] - xy[i - 2];
        double dy = xy[i + 1] - xy[i - 1];
        double squared = dx * dx + dy * dy;
        double along = squared == 0 ? 0 : ((x - xy[i - 2]) * dx + (y - xy[i - 1]) * dy) / squared;
        double share = Math.max(0, Math.min(1, along));
        double offX = xy[i - 2] + share * dx - x;
        double offY = xy[i - 1] + share * dy - y;
        return Math.sqrt(offX * offX + offY * offY);
    }
}
