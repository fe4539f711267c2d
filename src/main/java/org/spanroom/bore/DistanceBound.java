package org.spanroom.bore;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;

/**
 * A proof that the largest circles of a task do not go into a round bore, by cases of how far each is from its middle.
 *
 * <p>Derived here, from the angles of {@link RingBound}. A case is a range of distances from the middle for each center. Over it the
 * angle under which two centers are seen is at least that at a corner of their ranges. In their order around the middle the
 * angles along every closed chain of circles add up to at most a full turn; a case in which every order has a chain that
 * exceeds it is impossible. A case that may be possible is cut in two where that raises the angles most. If none is left, the circles do
 * not fit. Once the ranges are small the angles are exact, so that the bound is as sharp as the number of cases allows.
 */
final class DistanceBound {
    /** Orders around the middle are tried one by one, so no more circles than this. */
    static final int MOST_CIRCLES = 7;

    private static final double FULL_TURN_RAD = 2 * Math.PI + 1e-10;
    private static final double NO_DISTANCE_RATIO = 1e-12;
    private static final double LEAST_RANGE_RATIO = 1e-9;

    private final int size;
    private final double[] radiiMm;
    private final double[][] angles;
    private final double[][] chains;
    private final int[] order;
    private final boolean[] placed;
    private int work;

    DistanceBound(PackingTask task, int count) {
        size = count;
        radiiMm = new double[count];
        for (int i = 0; i < count; i++) {
            radiiMm[i] = task.radiusMm(i);
        }
        angles = new double[count][count];
        chains = new double[count][count];
        order = new int[count];
        placed = new boolean[count];
    }

    /** A range of distances for each circle. */
    @SuppressWarnings("ArrayRecordComponent") // never compared; each copy is changed by the one search that made it
    private record Ranges(double[] from, double[] to) {
        Ranges copy() {
            return new Ranges(from.clone(), to.clone());
        }
    }

    /**
     * Returns whether the circles are proved not to go into a round bore of this radius.
     *
     * @param mostWork how many circles may be set into orders before it gives up
     */
    boolean refutes(double halfMm, int mostWork) {
        work = 0;
        Deque<Ranges> cases = new ArrayDeque<>();
        var all = new Ranges(new double[size], new double[size]);
        for (int i = 0; i < size; i++) {
            all.to()[i] = halfMm - radiiMm[i];
        }
        cases.push(all);
        while (!cases.isEmpty()) {
            Ranges ranges = cases.pop();
            if (work > mostWork) {
                return false;
            }
            if (tighten(ranges) && mayBe(ranges, halfMm)) {
                int cut = sharpest(ranges, halfMm);
                if (ranges.to()[cut] - ranges.from()[cut] < LEAST_RANGE_RATIO * halfMm) {
                    return false;
                }
                cutInTwo(ranges, cut, cases);
            }
        }
        return true;
    }

    /** Returns how many circles were set into orders for the last answer. */
    int work() {
        return work;
    }

    private static void cutInTwo(Ranges ranges, int circle, Deque<Ranges> cases) {
        double middle = (ranges.from()[circle] + ranges.to()[circle]) / 2;
        Ranges far = ranges.copy();
        far.from()[circle] = middle;
        ranges.to()[circle] = middle;
        cases.push(ranges);
        cases.push(far);
    }

    /** Leaves out distances at which a pair would overlap wherever it lies; of equal circles the first is the nearer; false if none is left. */
    private boolean tighten(Ranges ranges) {
        double[] from = ranges.from();
        double[] to = ranges.to();
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                if (i != j) {
                    from[i] = Math.max(from[i], radiiMm[i] + radiiMm[j] - to[j]);
                }
            }
        }
        for (int i = 1; i < size; i++) {
            if (radiiMm[i] == radiiMm[i - 1]) {
                from[i] = Math.max(from[i], from[i - 1]);
            }
        }
        for (int i = size - 1; i > 0; i--) {
            if (radiiMm[i] == radiiMm[i - 1]) {
                to[i - 1] = Math.min(to[i - 1], to[i]);
            }
        }
        for (int i = 0; i < size; i++) {
            if (from[i] > to[i]) {
                return false;
            }
        }
        return true;
    }

    private boolean mayBe(Ranges ranges, double halfMm) {
        double nearest = NO_DISTANCE_RATIO * halfMm;
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < i; j++) {
                angles[i][j] = leastAngleRad(
                        Math.max(nearest, ranges.from()[i]),
                        ranges.to()[i],
                        Math.max(nearest, ranges.from()[j]),
                        ranges.to()[j],
                        i,
                        j);
                angles[j][i] = angles[i][j];
            }
        }
        Arrays.fill(placed, false);
        placed[0] = true;
        order[0] = 0;
        return canContinue(1);
    }

    private double leastAngleRad(double fromI, double toI, double fromJ, double toJ, int i, int j) {
        double touch = radiiMm[i] + radiiMm[j];
        double cosine = Math.max(
                Math.max(cosine(fromI, fromJ, touch), cosine(fromI, toJ, touch)),
                Math.max(cosine(toI, fromJ, touch), cosine(toI, toJ, touch)));
        return Math.acos(Math.max(-1, Math.min(1, cosine)));
    }

    private static double cosine(double a, double b, double touch) {
        return (a * a + b * b - touch * touch) / (2 * a * b);
    }

    /**
     * Returns whether the circles that are placed can be followed by the others, in any order, without a chain over a full turn. An order
     * and its mirror image have the same chains, so only the one in which circle 1 comes before circle 2 is tried.
     */
    private boolean canContinue(int count) {
        if (count == size) {
            return true;
        }
        for (int next = 1; next < size; next++) {
            boolean mirrored = next == 2 && !placed[1];
            if (!placed[next] && !mirrored && place(next, count)) {
                placed[next] = true;
                boolean can = canContinue(count + 1);
                placed[next] = false;
                if (can) {
                    return true;
                }
            }
        }
        return false;
    }

    /** The longest chain from each circle to the next one and back. */
    private boolean place(int next, int at) {
        work++;
        order[at] = next;
        for (int first = at - 1; first >= 0; first--) {
            double longest = angles[order[first]][next];
            for (int via = first + 1; via < at; via++) {
                longest = Math.max(longest, chains[first][via] + angles[order[via]][next]);
            }
            chains[first][at] = longest;
            if (longest + angles[next][order[first]] > FULL_TURN_RAD) {
                return false;
            }
        }
        return true;
    }

    /** The circle whose angles grow most where its range is cut in two. */
    private int sharpest(Ranges ranges, double halfMm) {
        double nearest = NO_DISTANCE_RATIO * halfMm;
        int sharpest = 0;
        double most = -1;
        for (int i = 0; i < size; i++) {
            double from = Math.max(nearest, ranges.from()[i]);
            double to = ranges.to()[i];
            double middle = (from + to) / 2;
            double gained = 1e-9 * (to - from) / halfMm;
            for (int j = 0; j < size; j++) {
                if (j != i) {
                    double fromJ = Math.max(nearest, ranges.from()[j]);
                    double toJ = ranges.to()[j];
                    gained += leastAngleRad(from, middle, fromJ, toJ, i, j)
                            + leastAngleRad(middle, to, fromJ, toJ, i, j)
                            - 2 * angles[i][j];
                }
            }
            if (gained > most) {
                most = gained;
                sharpest = i;
            }
        }
        return sharpest;
    }
}
