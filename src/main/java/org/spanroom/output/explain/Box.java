package org.spanroom.output.explain;

/** An upright rectangle in a drawing, in pixels, y downwards. */
public record Box(double leftPx, double topPx, double rightPx, double bottomPx) {
    public static Box around(double xPx, double yPx, double widthPx, double heightPx) {
        return new Box(xPx - widthPx / 2, yPx - heightPx / 2, xPx + widthPx / 2, yPx + heightPx / 2);
    }

    public boolean overlaps(Box other) {
        return leftPx < other.rightPx && other.leftPx < rightPx && topPx < other.bottomPx && other.topPx < bottomPx;
    }

    public boolean holds(Box other) {
        return leftPx <= other.leftPx && other.rightPx <= rightPx && topPx <= other.topPx && other.bottomPx <= bottomPx;
    }

    /** Returns whether a straight line touches the rectangle (clipping after Liang and Barsky). */
    public boolean isCrossedBy(double[] from, double[] to) {
        double[] range = {0, 1};
        return clip(from[0], to[0], leftPx, rightPx, range) && clip(from[1], to[1], topPx, bottomPx, range);
    }

    private static boolean clip(double from, double to, double least, double most, double[] range) {
        double step = to - from;
        if (step == 0) {
            return from >= least && from <= most;
        }
        double enter = (step > 0 ? least - from : most - from) / step;
        double leave = (step > 0 ? most - from : least - from) / step;
        range[0] = Math.max(range[0], enter);
        range[1] = Math.min(range[1], leave);
        return range[0] <= range[1];
    }
}
