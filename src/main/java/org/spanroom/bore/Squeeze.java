package org.spanroom.bore;

/**
 * Finds the least bore of an arrangement: how far the wall could close in on it while its circles give way.
 *
 * <p>Method: Newton's rule on the root of the overlap energy as a function of the bore's size, from below, with a descent
 * at each size. The answer is that of the neighborhood, an upper bound of the least bore of all arrangements.
 */
final class Squeeze {
    private static final int MOST_SIZES = 40;

    /** After a step too far that ends in a wider bore, shorter ones are made. */
    private static final double[] STEP_RATIOS = {0.93, 0.99, 0.999};

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

    /** Widens a bore that is too narrow for an arrangement until it lies clear; moves the centers; returns the half size. */
    double grow(double[] centers, double fromHalfMm) {
        double halfMm = fromHalfMm;
        energy.join(centers);
        for (int size = 0; size < MOST_SIZES; size++) {
            descent.descend(centers, halfMm, Descent.FINE);
            double widerMm = descent.freeHalfMm(centers, halfMm);
            if (widerMm - halfMm < 1e-10 * halfMm || Double.isInfinite(widerMm)) {
                return widerMm;
            }
            halfMm = widerMm;
        }
        return halfMm;
    }

    /** Closes the bore in on an arrangement that lies clear in it as far as it goes; moves the centers; returns the half size. */
    double narrow(double[] centers, double fromHalfMm) {
        double clearMm = fromHalfMm;
        energy.join(centers);
        for (double stepRatio : STEP_RATIOS) {
            clearMm = clear(centers, clearMm, stepRatio);
            double[] grown = centers.clone();
            double grownMm = grow(grown, clearMm * stepRatio);
            if (grownMm <= clearMm) {
                System.arraycopy(grown, 0, centers, 0, grown.length);
                return grownMm;
            }
        }
        return clearMm;
    }

    /** Closes the bore in by steps as long as the circles give way. */
    private double clear(double[] centers, double fromHalfMm, double stepRatio) {
        double clearMm = fromHalfMm;
        for (int size = 0; size < MOST_SIZES; size++) {
            double[] closer = centers.clone();
            double value = descent.descend(closer, clearMm * stepRatio, Descent.FINE);
            if (!descent.hasVanished(value)) {
                return clearMm;
            }
            System.arraycopy(closer, 0, centers, 0, closer.length);
            clearMm *= stepRatio;
        }
        return clearMm;
    }
}
