package org.spanroom.model.bore;

import java.util.List;
import org.spanroom.model.Check;
import org.spanroom.model.network.BoreShape;

/**
 * Circles side by side in a bore: what the drawing of a cross-section shows, and the evidence that they fit.
 *
 * @param boreMm inside diameter of a round bore, side of a square one
 * @param circles those in the bore itself from the widest, each innerduct followed by what lies in it
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
