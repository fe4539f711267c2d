package org.spanroom.model.bore;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.spanroom.model.Check;
import org.spanroom.model.network.BoreShape;

/**
 * Circles side by side in a bore: what the drawing of a cross-section shows, and the evidence that they fit.
 *
 * @param boreMm inside diameter of a round bore, side of a square one
 * @param circles those in the bore itself from the widest, each innerduct followed by what is in it
 */
public record Arrangement(BoreShape shape, double boreMm, List<PlacedCircle> circles) {
    public Arrangement {
        Check.positive("boreMm", boreMm);
        circles = List.copyOf(circles);
    }

    /** Returns the deepest that any circle goes into another one, the wall, or the innerduct round it; 0 where all lie clear. */
    public double overlapMm() {
        double deepestMm = 0;
        for (int i = 0; i < circles.size(); i++) {
            PlacedCircle circle = circles.get(i);
            deepestMm = Math.max(deepestMm, -gapToWallMm(circle));
            for (PlacedCircle other : circles.subList(i + 1, circles.size())) {
                if (circle.within() == other.within()) {
                    deepestMm = Math.max(deepestMm, -circle.gapMm(other));
                }
            }
        }
        return deepestMm;
    }

    /**
     * Fabric between two cells of a sleeve that are side by side.
     *
     * @param one place of a cell in the arrangement
     * @param other place of its neighbor
     * @param gapMm between their outsides; 0 where they touch
     */
    public record Joint(int one, int other, double gapMm) {}

    /** Returns the joints of all sleeves, each the row of its cells whose widest gap is least. */
    public List<Joint> joints() {
        var sleeves = new TreeMap<Integer, List<Integer>>();
        for (int i = 0; i < circles.size(); i++) {
            if (circles.get(i).sleeve() > 0) {
                sleeves.computeIfAbsent(circles.get(i).sleeve(), sleeve -> new ArrayList<>())
                        .add(i);
            }
        }
        var joints = new ArrayList<Joint>();
        sleeves.values().forEach(cells -> join(cells, joints));
        return joints;
    }

    private void join(List<Integer> cells, List<Joint> joints) {
        double[][] gapsMm = new double[cells.size()][cells.size()];
        for (int a = 0; a < cells.size(); a++) {
            for (int b = 0; b < cells.size(); b++) {
                gapsMm[a][b] = Math.max(0, circles.get(cells.get(a)).gapMm(circles.get(cells.get(b))));
            }
        }
        int[] row = SleeveRow.tightest(gapsMm);
        for (int k = 1; k < row.length; k++) {
            joints.add(new Joint(cells.get(row[k - 1]), cells.get(row[k]), gapsMm[row[k - 1]][row[k]]));
        }
    }

    private double gapToWallMm(PlacedCircle circle) {
        if (circle.within() >= 0) {
            return circle.gapWithinMm(circles.get(circle.within()));
        }
        double outMm = shape == BoreShape.SQUARE
                ? Math.max(Math.abs(circle.xMm()), Math.abs(circle.yMm()))
                : Math.hypot(circle.xMm(), circle.yMm());
        return (boreMm - circle.outsideDiameterMm()) / 2 - outMm;
    }
}
