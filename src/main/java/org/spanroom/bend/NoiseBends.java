package org.spanroom.bend;

import org.spanroom.model.bend.BendSettings;

/** Decides which corners are noise: those without which the path costs hardly more. */
final class NoiseBends {
    /**
     * Corners that are dropped one after another leave ever longer stretches to look at: in all this many vertices are, before fewer to
     * each side have to do. No line of less than 14 000 vertices, and no corner with fewer to each side, is judged by less.
     */
    private static final int MOST_LOOKS = 200_000_000;

    /** As many vertices as the longest straight piece of the first cut has. */
    private static final int LEAST_REACH = 400;

    private final Trace trace;
    private final BendSettings settings;
    private final Fits fits;
    private final Noise noise;
    private final double sigmaM;
    private final double toleranceM;
    private final double bendPrice;
    private final int reach;

    NoiseBends(Fits fits, BendSettings settings) {
        this.trace = fits.trace;
        this.settings = settings;
        this.fits = fits;
        this.noise = fits.noise;
        this.sigmaM = noise.sigmaM;
        this.bendPrice = noise.bendPrice();
        this.reach = Math.max(LEAST_REACH, MOST_LOOKS / trace.size());
        this.toleranceM = NoiseLevel.toleranceM(noise, settings);
    }

    /** Returns how many vertices to each side are looked at where corners are judged. */
    int reach() {
        return reach;
    }

    /** Returns the groups of corners without those that are noise. */
    Corners drop(Corners corners) {
        return drop(drop(corners, 1), 2);
    }

    /** Returns the groups without those that are noise, or so many neighbors that are noise together, from the last one on. */
    private Corners drop(Corners corners, int together) {
        int[] kept = new int[corners.count()];
        int count = 0;
        for (int group = corners.count() - 1; group >= 0; group--) {
            // Kept ones lie in reverse order.
            int behind = count - together;
            int to = behind < 0 ? trace.size() - 1 : corners.first[kept[behind]];
            kept[count++] = group;
            if (count >= together
                    && isNoise(corners.picked(kept, count - together, count), corners.windowStart(group, reach), to)) {
                count -= together;
            }
        }
        return corners.picked(kept, 0, count);
    }

    /** Returns whether bends are noise together: of two, each may be needed only to make up for the other. */
    private boolean isNoise(Corners groups, int windowFrom, int windowTo) {
        int from = Math.max(windowFrom, groups.first[0] - reach);
        int to = Math.min(windowTo, groups.last[groups.count() - 1] + reach);
        double price = bendPrice * groups.count();
        trace.countVisits(to - from + 1L);
        Straight straight = Straight.through(trace, from, to);
        if (straight.foldsBack(trace, from, to, 2 * settings.drawingToleranceM())) {
            return false;
        }
        if (straight.farthestM(trace, from, to) <= toleranceM) {
            return true;
        }
        double without = Straight.leastSquaresM2(trace, noise, from, to) / (sigmaM * sigmaM);
        if (without < price) {
            return true;
        }
        TangentChain bent = fits.unfitted(new Fits.Part(groups, from, to));
        bent.settle();
        double asCorners = bent.squares() / (sigmaM * sigmaM);
        return without - asCorners < price && without - fits.fit(bent).cost() < price;
    }
}
