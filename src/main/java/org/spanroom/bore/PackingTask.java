package org.spanroom.bore;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.spanroom.model.network.BoreShape;

/**
 * The question whether circles go side by side into a bore, those of one sleeve in a row of neighbors.
 *
 * <p>Immutable; the circles are kept from the largest to the smallest, equal ones by the numbers of their sleeves. Equal where
 * shape, bore, circles, sleeves and slack are.
 */
final class PackingTask {
    /** Overlap that an arrangement may show and still be called one that fits: a nanometer, far below any tolerance of pipe. */
    static final double VERIFIED_MM = 1e-6;

    private static final int FEW = 20;

    /** Rows of more cells are found nearest to nearest. */
    private static final int LONGEST_EXACT_ROW = 10;

    private static final int NANOS = 1000;

    private final BoreShape shape;
    private final double boreMm;
    private final double[] radiiMm;
    private final int[] sleeves;
    private final double slackMm;

    private PackingTask(BoreShape shape, double boreMm, double[] radiiMm, int[] sleeves, double slackMm) {
        this.shape = shape;
        this.boreMm = boreMm;
        this.radiiMm = radiiMm;
        this.sleeves = sleeves;
        this.slackMm = slackMm;
    }

    /**
     * Returns the task to pack circles of these diameters, none of which belongs to a sleeve.
     *
     * @param boreMm inside diameter of a round bore, side of a square one
     */
    static PackingTask of(BoreShape shape, double boreMm, double... diametersMm) {
        return jointed(shape, boreMm, diametersMm, new int[diametersMm.length], 0);
    }

    /**
     * Returns the task to pack circles of which some are cells of sleeves.
     *
     * @param boreMm inside diameter of a round bore, side of a square one
     * @param sleeves the number of each circle's sleeve, 0 for none
     * @param slackMm neighbors in a sleeve are no farther apart than this, outside to outside
     */
    static PackingTask jointed(BoreShape shape, double boreMm, double[] diametersMm, int[] sleeves, double slackMm) {
        for (double diameterMm : diametersMm) {
            if (!(diameterMm > 0) || Double.isInfinite(diameterMm)) {
                throw new IllegalArgumentException("a circle must have a diameter > 0, was " + diameterMm);
            }
        }
        int[] order = IntStream.range(0, diametersMm.length)
                .boxed()
                .sorted(Comparator.<Integer>comparingDouble(i -> -diametersMm[i])
                        .thenComparingInt(i -> sleeves[i]))
                .mapToInt(Integer::intValue)
                .toArray();
        int[] ordered = Arrays.stream(order).map(i -> sleeves[i]).toArray();
        return new PackingTask(
                shape,
                boreMm,
                Arrays.stream(order).mapToDouble(i -> diametersMm[i] / 2).toArray(),
                ordered,
                Arrays.stream(ordered).allMatch(sleeve -> sleeve == 0) ? 0 : slackMm);
    }

    /** Returns the same circles in a bore of another size. */
    PackingTask in(double otherBoreMm) {
        return new PackingTask(shape, otherBoreMm, radiiMm, sleeves, slackMm);
    }

    /** Returns the same circles in the bore of which they fill such a share. */
    PackingTask filling(double fillRatio) {
        double boreMm2 = Math.PI * squaresMm2() / fillRatio;
        return in(isSquare() ? Math.sqrt(boreMm2) : 2 * Math.sqrt(boreMm2 / Math.PI));
    }

    /** Returns the task of the largest circles alone, none of them in a sleeve. */
    PackingTask largest(int count) {
        return new PackingTask(shape, boreMm, Arrays.copyOf(radiiMm, count), new int[count], 0);
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

    /** Returns the number of the sleeve that a circle belongs to; 0 for none. */
    int sleeve(int circle) {
        return sleeves[circle];
    }

    double slackMm() {
        return slackMm;
    }

    List<Double> diametersMm() {
        return Arrays.stream(radiiMm).mapToObj(r -> 2 * r).toList();
    }

    List<Integer> sleeves() {
        return Arrays.stream(sleeves).boxed().toList();
    }

    /**
     * Returns what a move takes in a search for these circles, in units of {@link Work}: each goes with each, more steps lead downhill
     * where they are many, and for equal cells of several sleeves rows are found again.
     */
    long moveWork() {
        long size = size();
        long cells = 0;
        long exchanges = 0;
        for (int i = 0; i < size; i++) {
            if (sleeves[i] > 0) {
                int own = 0;
                for (int j = 0; j < size; j++) {
                    own += sleeves[j] == sleeves[i] ? 1 : 0;
                    exchanges += sleeves[j] != sleeves[i] && radiiMm[j] == radiiMm[i] ? 1 : 0;
                }
                cells = Math.max(cells, own);
            }
        }
        return size * size * Math.max(FEW, size) / FEW + exchanges * rowWork(cells) / NANOS;
    }

    private static long rowWork(long cells) {
        return cells <= 3 ? 0 : (cells * cells) << Math.min(cells, LONGEST_EXACT_ROW);
    }

    /** Returns whether some circles belong to sleeves. */
    boolean hasSleeves() {
        return Arrays.stream(sleeves).anyMatch(sleeve -> sleeve > 0);
    }

    /** Returns whether all circles are of one size. */
    boolean isEqual() {
        return radiiMm.length == 0 || radiiMm[0] == radiiMm[radiiMm.length - 1];
    }

    double squaresMm2() {
        return Arrays.stream(radiiMm).map(r -> r * r).sum();
    }

    /** Returns whether an arrangement is one: nothing overlaps, and every sleeve hangs together. */
    boolean isMetBy(double[] centersMm) {
        return overlapMm(centersMm) <= VERIFIED_MM
                && (!hasSleeves() || new Joints(this).tornMm(centersMm) <= VERIFIED_MM);
    }

    /**
     * Returns the deepest that a circle goes into another one or through the wall; 0 or less where all lie clear.
     *
     * @param centersMm x and y of each circle in turn, from the middle of the bore
     */
    double overlapMm(double[] centersMm) {
        double deepest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < size(); i++) {
            deepest = Math.max(deepest, throughWallMm(centersMm, i));
            for (int j = i + 1; j < size(); j++) {
                double apartMm =
                        Math.hypot(centersMm[2 * i] - centersMm[2 * j], centersMm[2 * i + 1] - centersMm[2 * j + 1]);
                deepest = Math.max(deepest, radiiMm[i] + radiiMm[j] - apartMm);
            }
        }
        return deepest;
    }

    /** Returns half the width of the bore that reaches as far as the outermost circle. */
    double reachMm(double[] centersMm) {
        double reachMm = 0;
        for (int i = 0; i < size(); i++) {
            reachMm = Math.max(reachMm, reachMm(centersMm, i));
        }
        return reachMm;
    }

    private double throughWallMm(double[] centersMm, int i) {
        return reachMm(centersMm, i) - halfMm();
    }

    private double reachMm(double[] centersMm, int i) {
        double x = Math.abs(centersMm[2 * i]);
        double y = Math.abs(centersMm[2 * i + 1]);
        return radiiMm[i] + (isSquare() ? Math.max(x, y) : Math.hypot(x, y));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PackingTask task
                && shape == task.shape
                && Double.compare(boreMm, task.boreMm) == 0
                && Double.compare(slackMm, task.slackMm) == 0
                && Arrays.equals(radiiMm, task.radiiMm)
                && Arrays.equals(sleeves, task.sleeves);
    }

    @Override
    public int hashCode() {
        int circles = 31 * Arrays.hashCode(radiiMm) + Arrays.hashCode(sleeves);
        return 31 * (31 * circles + Double.hashCode(boreMm)) + Boolean.hashCode(isSquare());
    }
}
