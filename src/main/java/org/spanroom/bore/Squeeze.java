package org.spanroom.bore;

/**
 * Finds the least bore of an arrangement: how far the wall could close in on it while its circles give way.
 *
 * <p>Method: Newton's rule on the root of the overlap energy as a function of the bore's size, from below, with a descent
 * at each size. The answer is that of the neighbourhood, an upper bound of the least bore of all arrangements.
 */
final class Squeeze {
    private static final int MOST_SIZES = 40;
    private static final double STEP_RATIO = 0.93;

    private final OverlapEnergy energy;
    private final Descent descent;

    Squeeze(OverlapEnergy energy, Descent descent) {
        this.energy = energy;
        this.descent = descent;
    }

    static Squeeze of(PackingTask task) {
        var energy = new OverlapEnergy(task);
        return new Squeeze(energy, new Descent(energy));
    }

    /** Widens a bore that is too narrow for an arrangement until it lies clear; moves the centres; returns the half size. */
    double grow(double[] centres, double fromHalfMm) {
        double halfMm = fromHalfMm;
        energy.join(centres);
        for (int size = 0; size < MOST_SIZES; size++) {
            descent.descend(centres, halfMm, Descent.FINE);
            double widerMm = descent.freeHalfMm(centres, halfMm);
            if (widerMm - halfMm < 1e-10 * halfMm || Double.isInfinite(widerMm)) {
                return widerMm;
            }
            halfMm = widerMm;
        }
        return halfMm;
    }

    /** Closes the bore in on an arrangement that lies clear in it as far as it goes; moves the centres; returns the half size. */
    double narrow(double[] centres, double fromHalfMm) {
        double clearMm = fromHalfMm;
        energy.join(centres);
        for (int size = 0; size < MOST_SIZES; size++) {
            double[] clear = centres.clone();
            double narrowMm = clearMm * STEP_RATIO;
            double value = descent.descend(centres, narrowMm, Descent.FINE);
            if (!descent.hasVanished(value)) {
                double grownMm = grow(centres, narrowMm);
                if (grownMm > clearMm) {
                    System.arraycopy(clear, 0, centres, 0, centres.length);
                }
                return Math.min(clearMm, grownMm);
            }
            clearMm = narrowMm;
        }
        return clearMm;
    }
}
