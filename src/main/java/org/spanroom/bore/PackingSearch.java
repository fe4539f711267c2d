package org.spanroom.bore;

import java.util.Arrays;
import java.util.Comparator;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Looks for arrangements of circles in ever narrower bores.
 *
 * <p>Method: from random and ring-shaped starts down the {@link OverlapEnergy}; then from arrangement to arrangement by
 * exchanging two circles, by taking the most pressed circle (or its whole sleeve) out and setting it into the widest hole, or by
 * shaking all; a new arrangement is kept where it overlaps less; after a run of vain moves a new start. Moves are made in a bore a
 * little narrower than the least one found, whatever bore is asked about, and the numbers come from a fixed seed: what is found after
 * this many moves depends on the circles only. It cannot prove that nothing fits.
 */
final class PackingSearch {
    /** Moves are made in a bore narrower than the least one found by these shares of it, in turn from start to start. */
    private static final double[] AHEAD_RATIOS = {0.002, 0.008, 0.02};

    /** An arrangement is looked at exactly where its bore is estimated to be narrower than the least one by this factor. */
    private static final double CLOSE_RATIO = 1 - 1e-5;

    /** An arrangement is treated as narrower where its bore is by this share, which is above the error of its size. */
    private static final double NARROWER_RATIO = 1 - 1e-9;

    /** A start of sleeves that cannot be clear in one bore is tried in wider ones, filled to these shares. */
    private static final double[] FILL_RATIOS = {0.8, 0.5, 0.3, 0.15};

    /** An arrangement is polished from a bore narrower than its own by this factor, this many times at most. */
    private static final double POLISH_RATIO = 1 - 1e-5;

    private static final int MOST_POLISHES = 5;

    private static final int MOST_REASSIGNMENTS = 3;

    private final PackingTask task;
    private final OverlapEnergy energy;
    private final Descent descent;
    private final Squeeze squeeze;
    private final SplittableRandom random;
    private final double[] scratch;
    private final double[] current;

    private double halfMm;
    private double[] best;
    private double leastHalfMm = Double.POSITIVE_INFINITY;
    private double currentMm2;
    private int vain;
    private int starts;
    private int startsLeft;

    PackingSearch(PackingTask task, long seed) {
        this.task = task;
        energy = new OverlapEnergy(task);
        descent = new Descent(energy);
        squeeze = new Squeeze(energy, descent);
        random = new SplittableRandom(seed);
        scratch = new double[2 * task.size()];
        current = new double[2 * task.size()];
        best = new double[2 * task.size()];
    }

    /** Returns the centers of the narrowest arrangement found, x and y in turn. */
    double[] best() {
        return best.clone();
    }

    /** Returns half the width of its bore; infinite where none was found. */
    double leastHalfMm() {
        return leastHalfMm;
    }

    /**
     * Finds a first arrangement. What follows is this many starts altogether, one in each move.
     *
     * @param count as many starts are tried for sleeves that are clear in none, before a wider bore is tried
     */
    void begin(int count) {
        for (int k = 0; k < FILL_RATIOS.length && Double.isInfinite(leastHalfMm); k++) {
            halfMm = task.filling(FILL_RATIOS[k]).halfMm();
            for (int start = 0; start < count && Double.isInfinite(leastHalfMm); start++) {
                restart();
                takeSqueezed(current, freeHalfMm(current, currentMm2));
            }
        }
        if (Double.isInfinite(leastHalfMm)) {
            take(current, layInLine(task, current));
        }
        startsLeft = count - 1;
        vain = Integer.MAX_VALUE;
    }

    private void takeSqueezed(double[] centers, double freeMm) {
        if (!Double.isInfinite(freeMm)) {
            double[] squeezed = centers.clone();
            take(squeezed, freeMm <= halfMm ? squeeze.narrow(squeezed, halfMm) : squeeze.grow(squeezed, halfMm));
        }
    }

    /** Fills in an arrangement that there always is, side by side along a diameter, sleeve by sleeve; returns half its bore. */
    static double layInLine(PackingTask task, double[] centers) {
        int[] circles = IntStream.range(0, task.size())
                .boxed()
                .sorted(Comparator.comparingInt(task::sleeve))
                .mapToInt(Integer::intValue)
                .toArray();
        double wideMm = Arrays.stream(circles).mapToDouble(task::radiusMm).sum();
        double x = -wideMm;
        for (int circle : circles) {
            centers[2 * circle] = x + task.radiusMm(circle);
            centers[2 * circle + 1] = 0;
            x += 2 * task.radiusMm(circle);
        }
        return wideMm;
    }

    /** Makes one of the first starts, a move, or a new start after too many vain ones; returns whether a narrower arrangement was found. */
    boolean move() {
        if (Double.isInfinite(leastHalfMm)) {
            return false;
        }
        double beforeMm = leastHalfMm;
        if (startsLeft > 0) {
            startAgain();
            return leastHalfMm < beforeMm;
        }
        if (vain > 10 + 4 * task.size()) {
            halfMm = aheadHalfMm();
            restart();
        } else {
            tryMove();
        }
        if (leastHalfMm < beforeMm) {
            halfMm = aheadHalfMm();
            currentMm2 = descend(current);
            return true;
        }
        return false;
    }

    /** The first starts are all made in the same bore, which presses the circles hard. */
    private void startAgain() {
        startsLeft--;
        restart();
        if (startsLeft == 0) {
            vain = Integer.MAX_VALUE;
        }
    }

    private double aheadHalfMm() {
        return leastHalfMm * (1 - AHEAD_RATIOS[starts / 2 % AHEAD_RATIOS.length]);
    }

    private void restart() {
        if (starts++ % 2 == 0 && task.size() > 4) {
            Starts.rings(task, halfMm, random, current);
        } else {
            Starts.scattered(task, halfMm, random, current);
        }
        vain = 0;
        currentMm2 = settle(current);
    }

    private void tryMove() {
        System.arraycopy(current, 0, scratch, 0, scratch.length);
        double dice = random.nextDouble();
        if (task.isEqual() ? dice < 0.8 : dice < 0.45) {
            relocate();
        } else if (!task.isEqual() && dice < 0.93) {
            exchange();
        } else {
            shake();
        }
        double reachedMm2 = settle(scratch);
        vain++;
        if (reachedMm2 < currentMm2 * (1 - 1e-9)) {
            System.arraycopy(scratch, 0, current, 0, current.length);
            currentMm2 = reachedMm2;
            vain = 0;
        }
    }

    /** Goes downhill from an arrangement and remembers it where it is the narrowest so far. */
    private double settle(double[] centers) {
        double reachedMm2 = descend(centers);
        if (!Double.isInfinite(leastHalfMm)) {
            double freeMm = freeHalfMm(centers, reachedMm2);
            if (freeMm < leastHalfMm * CLOSE_RATIO) {
                double[] refined = centers.clone();
                take(refined, polish(refined, squeeze.grow(refined, halfMm)));
            }
        }
        return reachedMm2;
    }

    /** Sets out again from just below, where circles that hardly press each other still move; returns half the bore. */
    private double polish(double[] centers, double foundHalfMm) {
        double narrowMm = foundHalfMm;
        for (int turn = 0; turn < MOST_POLISHES; turn++) {
            double[] again = centers.clone();
            double reachedMm = squeeze.grow(again, narrowMm * POLISH_RATIO);
            if (!(reachedMm < narrowMm * NARROWER_RATIO)) {
                return narrowMm;
            }
            System.arraycopy(again, 0, centers, 0, again.length);
            narrowMm = reachedMm;
        }
        return narrowMm;
    }

    private double descend(double[] centers) {
        boolean jointed = !energy.joints().isEmpty();
        if (jointed) {
            energy.joints().reassign(centers);
            energy.join(centers);
        }
        double reachedMm2 = descent.descend(centers, halfMm, Descent.COARSE);
        for (int k = 0; jointed && k < MOST_REASSIGNMENTS && !descent.hasVanished(reachedMm2); k++) {
            energy.joints().reassign(centers);
            energy.join(centers);
            double againMm2 = descent.descend(centers, halfMm, Descent.COARSE);
            if (againMm2 > reachedMm2 * 0.99) {
                return againMm2;
            }
            reachedMm2 = againMm2;
        }
        return reachedMm2;
    }

    private double freeHalfMm(double[] centers, double reachedMm2) {
        return descent.hasVanished(reachedMm2) ? halfMm : descent.freeHalfMm(centers, halfMm);
    }

    /** Only what an arrangement of its bore is in every respect is treated as found. */
    private void take(double[] centers, double foundHalfMm) {
        double reachedMm = Math.min(foundHalfMm, task.reachMm(centers));
        if (reachedMm < leastHalfMm * NARROWER_RATIO && task.in(2 * reachedMm).isMetBy(centers)) {
            best = centers.clone();
            leastHalfMm = reachedMm;
        }
    }

    private void exchange() {
        int n = task.size();
        int one = random.nextInt(n);
        int reach = random.nextInt(3) == 0 ? n : 3;
        int other = Math.min(n - 1, Math.max(0, one + random.nextInt(2 * reach + 1) - reach));
        Joints.exchange(one, other, scratch);
    }

    private void relocate() {
        int circle = random.nextInt(3) == 0 ? random.nextInt(task.size()) : mostPressed();
        double widestMm = Double.NEGATIVE_INFINITY;
        double x = 0;
        double y = 0;
        for (int probe = 0; probe < 40; probe++) {
            double px = (2 * random.nextDouble() - 1) * halfMm;
            double py = (2 * random.nextDouble() - 1) * halfMm;
            double roomMm = roomAt(px, py, circle);
            if (roomMm > widestMm) {
                widestMm = roomMm;
                x = px;
                y = py;
            }
        }
        int[] sleeve = energy.joints().cellsBeside(circle);
        if (sleeve.length > 1 && random.nextBoolean()) {
            moveAll(sleeve, x - scratch[2 * circle], y - scratch[2 * circle + 1]);
        } else {
            scratch[2 * circle] = x;
            scratch[2 * circle + 1] = y;
        }
    }

    private void moveAll(int[] circles, double byX, double byY) {
        for (int circle : circles) {
            scratch[2 * circle] += byX;
            scratch[2 * circle + 1] += byY;
        }
    }

    /** Returns the radius of the largest circle about a point that touches no other circle and no wall. */
    private double roomAt(double x, double y, int except) {
        double out = task.isSquare() ? Math.max(Math.abs(x), Math.abs(y)) : Math.hypot(x, y);
        double roomMm = halfMm - out;
        for (int j = 0; j < task.size(); j++) {
            if (j != except) {
                roomMm = Math.min(roomMm, Math.hypot(x - scratch[2 * j], y - scratch[2 * j + 1]) - task.radiusMm(j));
            }
        }
        return roomMm;
    }

    private int mostPressed() {
        int most = 0;
        double mostRatio = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < task.size(); i++) {
            double depthMm = task.radiusMm(i) - roomAt(scratch[2 * i], scratch[2 * i + 1], i);
            double ratio = depthMm / task.radiusMm(i) * (0.5 + random.nextDouble());
            if (ratio > mostRatio) {
                mostRatio = ratio;
                most = i;
            }
        }
        return most;
    }

    private void shake() {
        double reachMm = 0.8 * task.radiusMm(task.size() / 2);
        for (int k = 0; k < scratch.length; k++) {
            scratch[k] += (2 * random.nextDouble() - 1) * reachMm;
        }
    }
}
