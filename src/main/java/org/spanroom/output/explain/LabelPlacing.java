package org.spanroom.output.explain;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Finds room for labels in a drawing, one after another: each goes to the nearest place around its point where it covers no
 * other label and no drawn line, or failing that no other label.
 */
public final class LabelPlacing {
    private static final double[] DISTANCES_PX = {13, 19, 27, 38, 52, 70, 95, 130, 180};
    private static final int DIRECTIONS = 16;

    private final Box frame;
    private final List<double[]> way;
    private final List<Box> taken = new ArrayList<>();

    /**
     * @param frame what labels must stay within
     * @param way the drawn line that labels should leave free
     */
    public LabelPlacing(Box frame, List<double[]> way) {
        this.frame = frame;
        this.way = way;
    }

    /** Keeps a place free of labels. */
    public void take(Box box) {
        taken.add(box);
    }

    /** Returns the place for a label of the given size near a point, which is then taken. */
    public Box place(double[] point, double widthPx, double heightPx) {
        Box found = find(point, widthPx, heightPx, true);
        if (found == null) {
            found = find(point, widthPx, heightPx, false);
        }
        if (found == null) {
            found = Box.around(point[0], point[1], widthPx, heightPx);
        }
        taken.add(found);
        return found;
    }

    private @Nullable Box find(double[] point, double widthPx, double heightPx, boolean leaveWayFree) {
        for (double distancePx : DISTANCES_PX) {
            for (int i = 0; i < DIRECTIONS; i++) {
                // Above first, then to either side in turn.
                int turn = (i % 2 == 0 ? -1 : 1) * ((i + 1) / 2);
                double angleRad = -Math.PI / 2 + turn * 2 * Math.PI / DIRECTIONS;
                double xPx = point[0] + Math.cos(angleRad) * (distancePx + widthPx / 2 - heightPx / 2);
                double yPx = point[1] + Math.sin(angleRad) * distancePx;
                Box box = Box.around(xPx, yPx, widthPx, heightPx);
                if (frame.holds(box) && taken.stream().noneMatch(box::overlaps) && !(leaveWayFree && covers(box))) {
                    return box;
                }
            }
        }
        return null;
    }

    private boolean covers(Box box) {
        for (int i = 0; i + 1 < way.size(); i++) {
            if (box.isCrossedBy(way.get(i), way.get(i + 1))) {
                return true;
            }
        }
        return false;
    }
}
