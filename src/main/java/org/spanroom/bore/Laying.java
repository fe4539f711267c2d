package org.spanroom.bore;

import java.util.Arrays;

/**
 * Lays circles into a bore one after another, from the largest, each at the lowest free place.
 *
 * <p>Method: of all places where a circle can be without overlap the lowest touches the bottom of the bore, or the wall and
 * another circle, or two others; all these are tried. A place that touches two supports and is the lowest is at rest. A further
 * cell of a sleeve is beside an end of the row of those that are laid.
 * Crowded circles may leave no place for the last ones, although they would go in.
 */
final class Laying {
    private static final double TOUCH_MM = 1e-9;

    private final PackingTask task;
    private final boolean cellsRise;
    private final double[] centers;
    private final int[] firstEnd;
    private final int[] secondEnd;
    private int laid;

    /** 1, or -1 where the circle goes to the highest place: all is upside down for it. */
    private double up = 1;

    private double lowestX;
    private double lowestY;

    private Laying(PackingTask task, boolean cellsRise) {
        this.task = task;
        this.cellsRise = cellsRise;
        centers = new double[2 * task.size()];
        int sleeves = 0;
        for (int i = 0; i < task.size(); i++) {
            sleeves = Math.max(sleeves, task.sleeve(i));
        }
        firstEnd = new int[sleeves + 1];
        secondEnd = new int[sleeves + 1];
        Arrays.fill(firstEnd, -1);
        Arrays.fill(secondEnd, -1);
    }

    /** Returns centers at rest; none where circles are left over. */
    static double[] lay(PackingTask task) {
        return lay(task, false);
    }

    /**
     * Returns centers of which the cells of sleeves are each at the highest free place, not at rest: a row that begins in the open space
     * above wide circles can be continued, while one in a gap between them cannot. None where circles are left over.
     */
    static double[] layCellsAbove(PackingTask task) {
        return lay(task, true);
    }

    private static double[] lay(PackingTask task, boolean cellsRise) {
        var laying = new Laying(task, cellsRise);
        while (laying.laid < task.size()) {
            if (!laying.next()) {
                return new double[0];
            }
        }
        return laying.centers;
    }

    private boolean next() {
        lowestX = 0;
        lowestY = Double.POSITIVE_INFINITY;
        up = cellsRise && task.sleeve(laid) > 0 ? -1 : 1;
        double reachMm = task.halfMm() - task.radiusMm(laid);
        offerBottom(reachMm);
        for (int i = 0; i < laid; i++) {
            double aroundMm = touchMm(i);
            if (task.isSquare()) {
                offerBesideWalls(i, reachMm, aroundMm);
            } else {
                offerCrossing(0, 0, reachMm, centers[2 * i], centers[2 * i + 1], aroundMm);
            }
            for (int j = 0; j < i; j++) {
                offerCrossing(
                        centers[2 * j], centers[2 * j + 1], touchMm(j), centers[2 * i], centers[2 * i + 1], aroundMm);
            }
        }
        if (Double.isInfinite(lowestY)) {
            return false;
        }
        centers[2 * laid] = lowestX;
        lowestY *= up;
        centers[2 * laid + 1] = lowestY;
        lengthenRow();
        laid++;
        return true;
    }

    /** The end beside which the cell lies gives way to it. */
    private void lengthenRow() {
        int sleeve = task.sleeve(laid);
        if (sleeve == 0) {
            return;
        }
        if (firstEnd[sleeve] < 0) {
            firstEnd[sleeve] = laid;
            secondEnd[sleeve] = laid;
        } else if (isBeside(secondEnd[sleeve], lowestX, lowestY)) {
            secondEnd[sleeve] = laid;
        } else {
            firstEnd[sleeve] = laid;
        }
    }

    private boolean hangsTogether(double x, double y) {
        int sleeve = task.sleeve(laid);
        return sleeve == 0
                || firstEnd[sleeve] < 0
                || isBeside(secondEnd[sleeve], x, y)
                || isBeside(firstEnd[sleeve], x, y);
    }

    private boolean isBeside(int end, double x, double y) {
        double reachMm = touchMm(end) + task.slackMm() + TOUCH_MM;
        double dx = x - centers[2 * end];
        double dy = y - centers[2 * end + 1];
        return dx * dx + dy * dy <= reachMm * reachMm;
    }

    private double touchMm(int other) {
        return task.radiusMm(laid) + task.radiusMm(other);
    }

    private void offerBottom(double reachMm) {
        if (task.isSquare()) {
            offer(-reachMm, -up * reachMm);
            offer(reachMm, -up * reachMm);
        } else {
            offer(0, -up * reachMm);
        }
    }

    private void offerBesideWalls(int i, double reachMm, double aroundMm) {
        double x = centers[2 * i];
        double y = centers[2 * i + 1];
        double bottomY = -up * reachMm;
        double alongMm = Math.sqrt(aroundMm * aroundMm - (y - bottomY) * (y - bottomY));
        offer(x - alongMm, bottomY);
        offer(x + alongMm, bottomY);
        for (double wall : new double[] {-reachMm, reachMm}) {
            double upMm = Math.sqrt(aroundMm * aroundMm - (wall - x) * (wall - x));
            offer(wall, y - upMm);
            offer(wall, y + upMm);
        }
    }

    /** The points at given distances from two others. */
    private void offerCrossing(double ax, double ay, double fromA, double bx, double by, double fromB) {
        double dx = bx - ax;
        double dy = by - ay;
        double apart = Math.sqrt(dx * dx + dy * dy);
        double along = (apart * apart + fromA * fromA - fromB * fromB) / (2 * apart);
        double aside = Math.sqrt(fromA * fromA - along * along);
        double x = ax + along * dx / apart;
        double y = ay + along * dy / apart;
        offer(x - aside * dy / apart, y + aside * dx / apart);
        offer(x + aside * dy / apart, y - aside * dx / apart);
    }

    /** Takes a place if it is free and lower than any before; what is no number is no place. */
    private void offer(double x, double y) {
        double heightMm = up * y;
        boolean lower = heightMm < lowestY - TOUCH_MM || (heightMm < lowestY + TOUCH_MM && x < lowestX - TOUCH_MM);
        if (lower && hangsTogether(x, y) && isFree(x, y)) {
            lowestX = x;
            lowestY = heightMm;
        }
    }

    private boolean isFree(double x, double y) {
        double reachMm = task.halfMm() - task.radiusMm(laid) + TOUCH_MM;
        double out = task.isSquare() ? Math.max(Math.abs(x), Math.abs(y)) : Math.sqrt(x * x + y * y);
        if (!(out <= reachMm)) {
            return false;
        }
        for (int i = 0; i < laid; i++) {
            double dx = x - centers[2 * i];
            double dy = y - centers[2 * i + 1];
            double leastMm = touchMm(i) - TOUCH_MM;
            if (dx * dx + dy * dy < leastMm * leastMm) {
                return false;
            }
        }
        return true;
    }
}
