package org.spanroom.bore;

import java.util.SplittableRandom;

/**
 * Looks for an arrangement of circles in a bore without overlap.
 *
 * <p>Method: from random and ring-shaped starts down the {@link OverlapEnergy}; then from arrangement to arrangement by
 * exchanging two circles, by taking the most pressed circle out and setting it into the widest hole, or by shaking all;
 * a new arrangement is kept where it overlaps less; after a run of vain moves a new start. The numbers come from a fixed
 * seed: the same task gives the same answer on every run and thread. It cannot prove that nothing fits.
 */
final class PackingSearch {
    /** The search ends after a tenth of its moves where the bore would have to be wider by this share of it. */
    private static final double FAR_RATIO = 0.03;

    /** The search ends after two fifths of its moves where the bore would have to be wider by this share of it. */
    private static final double NEAR_RATIO = 0.012;

    private final PackingTask task;
    private final OverlapEnergy energy;
    private final Descent descent;
    private final SplittableRandom random;
    private final double[] scratch;

    private double[] best;
    private double bestFreeHalfMm = Double.POSITIVE_INFINITY;

    private double[] current;
    private double currentMm2;

    PackingSearch(PackingTask task, long seed) {
        this.task = task;
        energy = new OverlapEnergy(task);
        descent = new Descent(energy);
        random = new SplittableRandom(seed);
        scratch = new double[2 * task.size()];
        best = new double[2 * task.size()];
        current = new double[2 * task.size()];
    }

    /** Returns the best centres found so far, x and y in turn. */
    double[] best() {
        return best.clone();
    }

    /** Returns the half size of the bore in which the best arrangement lies clear, to first order where it does not fit. */
    double bestFreeHalfMm() {
        return bestFreeHalfMm;
    }

    boolean found() {
        return bestFreeHalfMm <= task.halfMm() && task.overlapMm(best) <= PackingTask.VERIFIED_MM;
    }

    /** Tries the nearest to an arrangement that is already known; returns whether it fits. */
    boolean tryFrom(double... centres) {
        System.arraycopy(centres, 0, current, 0, current.length);
        currentMm2 = settle(current);
        return found();
    }

    /** Tries so many starts without moves from one to the next; ends as soon as one fits. */
    boolean tryStarts(int starts) {
        for (int start = 0; start < starts && !found(); start++) {
            restart(start);
        }
        return found();
    }

    /** Tries so many moves; ends as soon as an arrangement fits, or early where the best is far from it. */
    boolean tryMoves(int moves) {
        int vain = 0;
        int patience = 10 + 4 * task.size();
        restart(0);
        for (int move = 1, start = 1; move < moves && !found(); move++) {
            if (vain > patience) {
                restart(start++);
                vain = 0;
            }
            vain = move() ? 0 : vain + 1;
            if (isHopeless((double) move / moves)) {
                return false;
            }
        }
        return found();
    }

    private boolean isHopeless(double doneRatio) {
        double shortRatio = bestFreeHalfMm / task.halfMm() - 1;
        return (doneRatio > 0.1 && shortRatio > FAR_RATIO) || (doneRatio > 0.4 && shortRatio > NEAR_RATIO);
    }

    private void restart(int number) {
        if (number % 2 == 0 && task.size() > 4) {
            Starts.rings(task, random, current);
        } else {
            Starts.scattered(task, random, current);
        }
        currentMm2 = settle(current);
    }

    private boolean move() {
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
        if (reachedMm2 < currentMm2 * (1 - 1e-9)) {
            double[] swap = current;
            current = scratch.clone();
            System.arraycopy(swap, 0, scratch, 0, scratch.length);
            currentMm2 = reachedMm2;
            return true;
        }
        return false;
    }

    /** Goes downhill from an arrangement and remembers it where it is the best so far. */
    private double settle(double[] centres) {
        double reachedMm2 = descent.descend(centres, task.halfMm(), Descent.COARSE);
        double freeHalfMm =
                descent.hasVanished(reachedMm2) ? task.halfMm() : descent.freeHalfMm(centres, task.halfMm());
        if (freeHalfMm < bestFreeHalfMm) {
            remember(centres, freeHalfMm);
        }
        return reachedMm2;
    }

    /** Close calls are settled exactly: the least bore of the arrangement decides, not the energy. */
    private void remember(double[] centres, double freeHalfMm) {
        best = centres.clone();
        bestFreeHalfMm = freeHalfMm;
        if (freeHalfMm > task.halfMm() && freeHalfMm < task.halfMm() * 1.0005) {
            double[] refined = centres.clone();
            double leastHalfMm = new Squeeze(energy, descent).grow(refined, task.halfMm());
            if (leastHalfMm <= task.halfMm() + 0.4 * PackingTask.VERIFIED_MM) {
                best = refined;
                bestFreeHalfMm = task.halfMm();
            }
        }
    }

    private void exchange() {
        int n = task.size();
        int one = random.nextInt(n);
        int reach = random.nextInt(3) == 0 ? n : 3;
        int other = Math.min(n - 1, Math.max(0, one + random.nextInt(2 * reach + 1) - reach));
        for (int k = 0; k < 2; k++) {
            double kept = scratch[2 * one + k];
            scratch[2 * one + k] = scratch[2 * other + k];
            scratch[2 * other + k] = kept;
        }
    }

    private void relocate() {
        int circle = random.nextInt(3) == 0 ? random.nextInt(task.size()) : mostPressed();
        double widestMm = Double.NEGATIVE_INFINITY;
        double x = 0;
        double y = 0;
        for (int probe = 0; probe < 40; probe++) {
            double px = (2 * random.nextDouble() - 1) * task.halfMm();
            double py = (2 * random.nextDouble() - 1) * task.halfMm();
            double roomMm = roomAt(px, py, circle);
            if (roomMm > widestMm) {
                widestMm = roomMm;
                x = px;
                y = py;
            }
        }
        scratch[2 * circle] = x;
        scratch[2 * circle + 1] = y;
    }

    /** Returns the radius of the largest circle about a point that touches no other circle and no wall. */
    private double roomAt(double x, double y, int except) {
        double out = task.isSquare() ? Math.max(Math.abs(x), Math.abs(y)) : Math.hypot(x, y);
        double roomMm = task.halfMm() - out;
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
