package org.spanroom.bore;

import java.util.Arrays;
import org.spanroom.model.network.BoreShape;

/**
 * The question whether circles go side by side into a bore.
 *
 * <p>Immutable; the circles are kept from the largest to the smallest. Equal where shape, bore and circles are.
 */
final class PackingTask {
    /** Overlap that an arrangement may show and still be called one that fits: a nanometre, far below any tolerance of pipe. */
    static final double VERIFIED_MM = 1e-6;

    private final BoreShape shape;
    private final double boreMm;
    private final double[] radiiMm;

    private PackingTask(BoreShape shape, double boreMm, double[] radiiMm) {
        this.shape = shape;
        this.boreMm = boreMm;
        this.radiiMm = radiiMm;
    }

    /**
     * Returns the task to pack circles of these diameters.
     *
     * @param boreMm inside diameter of a round bore, side of a square one
     */
    static PackingTask of(BoreShape shape, double boreMm, double... diametersMm) {
        double[] radiiMm = Arrays.stream(diametersMm)
                .map(d -> -d / 2)
                .sorted()
                .map(r -> -r)
                .toArray();
        for (double radiusMm : radiiMm) {
            if (!(radiusMm > 0) || Double.isInfinite(radiusMm)) {
                throw new IllegalArgumentException("a circle must have a diameter > 0, was " + 2 * radiusMm);
            }
        }
        return new PackingTask(shape, boreMm, radiiMm);
    }

    /** Returns the same circles in a bore of another size. */
    PackingTask in(double otherBoreMm) {
        return new PackingTask(shape, otherBoreMm, radiiMm);
    }

    /** Returns the same circles in the bore of which they fill such a share. */
    PackingTask filling(double fillRatio) {
        double boreMm2 = Math.PI * squaresMm2() / fillRatio;
        return in(isSquare() ? Math.sqrt(boreMm2) : 2 * Math.sqrt(boreMm2 / Math.PI));
    }

    BoreShape shape() {
        return shape;
    }

    boolean isSquare() {
        return shape == BoreShape.SQUARE;
    }

    /** Returns the radius of a round bore, half the side of a square one; the unknown that the search works with. */
    double halfMm() {
        return boreMm / 2;
    }

    double boreMm() {
        return boreMm;
    }

    int size() {
        return radiiMm.length;
    }

    /** Returns the radius of the circle of this place, 0 being the largest. */
    double radiusMm(int circle) {
        return radiiMm[circle];
    }

    /** Returns whether all circles are of one size. */
    boolean isEqual() {
        return radiiMm.length == 0 || radiiMm[0] == radiiMm[radiiMm.length - 1];
    }

    double squaresMm2() {
        return Arrays.stream(radiiMm).map(r -> r * r).sum();
    }

    /**
     * Returns the deepest that a circle goes into another one or through the wall; 0 or less where all lie clear.
     *
     * @param centresMm x and y of each circle in turn, from the middle of the bore
     */
    double overlapMm(double[] centresMm) {
        double deepest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < size(); i++) {
            deepest = Math.max(deepest, throughWallMm(centresMm, i));
            for (int j = i + 1; j < size(); j++) {
                double apartMm =
                        Math.hypot(centresMm[2 * i] - centresMm[2 * j], centresMm[2 * i + 1] - centresMm[2 * j + 1]);
                deepest = Math.max(deepest, radiiMm[i] + radiiMm[j] - apartMm);
            }
        }
        return deepest;
    }

    private double throughWallMm(double[] centresMm, int i) {
        double x = Math.abs(centresMm[2 * i]);
        double y = Math.abs(centresMm[2 * i + 1]);
        double out = isSquare() ? Math.max(x, y) : Math.hypot(x, y);
        return out + radiiMm[i] - halfMm();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PackingTask task
                && shape == task.shape
                && Double.compare(boreMm, task.boreMm) == 0
                && Arrays.equals(radiiMm, task.radiiMm);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * Arrays.hashCode(radiiMm) + Double.hashCode(boreMm)) + Boolean.hashCode(isSquare());
    }
}
