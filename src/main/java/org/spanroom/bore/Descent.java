package org.spanroom.bore;

/**
 * Walks down an {@link OverlapEnergy} to the nearest arrangement of least overlap.
 *
 * <p>Method: limited-memory BFGS (Nocedal, Math. Comp. 35, 1980, from memory) with halving of the step until the energy
 * falls. It ends where the energy vanishes, where the gradient is small against the root of the energy, or after a number
 * of steps. Holds working state: one instance a thread.
 */
final class Descent {
    private static final int MEMORY = 8;
    private static final int MOST_STEPS = 2_000;
    private static final double SUFFICIENT_FALL = 1e-4;

    /** Ends a descent early, when the lie of the arrangement no longer changes; for arrangements by the thousand. */
    static final double COARSE = 1e-3;

    /** Ends a descent where nothing visible moves any more; for weights that sink. */
    static final double RESTING = 1e-9;

    /** Ends a descent where the arithmetic does; for the one arrangement that counts. */
    static final double FINE = 1e-14;

    private final OverlapEnergy energy;
    private final double[] gradient;
    private final double[] trial;
    private final double[] trialGradient;
    private final double[] direction;
    private final double[][] steps;
    private final double[][] turns;
    private final double[] products = new double[MEMORY];
    private final double[] shares = new double[MEMORY];
    private final double vanishedMm2;
    private int kept;
    private int next;

    Descent(OverlapEnergy energy) {
        this.energy = energy;
        int dimension = 2 * energy.task().size();
        gradient = new double[dimension];
        trial = new double[dimension];
        trialGradient = new double[dimension];
        direction = new double[dimension];
        steps = new double[MEMORY][dimension];
        turns = new double[MEMORY][dimension];
        double fineMm = 0.01 * PackingTask.VERIFIED_MM;
        vanishedMm2 = fineMm * fineMm;
    }

    /**
     * Moves the centers downhill and returns the energy reached, in mm2.
     *
     * @param flatness the descent ends where the squared gradient is so small against the energy
     */
    double descend(double[] centers, double halfMm, double flatness) {
        kept = 0;
        next = 0;
        double value = energy.at(centers, halfMm, gradient);
        for (int step = 0; step < MOST_STEPS && !isDone(value, flatness); step++) {
            double lower = step(centers, halfMm, value);
            if (!(lower < value)) {
                break;
            }
            value = lower;
        }
        return value;
    }

    /** Returns the half size of the bore in which the arrangement last reached would be clear. */
    double freeHalfMm(double[] centers, double halfMm) {
        double value = energy.at(centers, halfMm, gradient);
        return value <= vanishedMm2 ? halfMm : energy.freeHalfMm(value, halfMm);
    }

    boolean hasVanished(double value) {
        return value <= vanishedMm2;
    }

    private boolean isDone(double value, double flatness) {
        return (value >= 0 && value <= vanishedMm2) || dot(gradient, gradient) <= flatness * Math.abs(value);
    }

    private double step(double[] centers, double halfMm, double value) {
        aim();
        double slope = dot(direction, gradient);
        if (slope >= 0) {
            kept = 0;
            aim();
            slope = dot(direction, gradient);
        }
        double length = 1;
        for (int halving = 0; halving < 30; halving++) {
            for (int k = 0; k < trial.length; k++) {
                trial[k] = centers[k] + length * direction[k];
            }
            double lower = energy.at(trial, halfMm, trialGradient);
            if (lower <= value + SUFFICIENT_FALL * length * slope) {
                take(centers);
                return lower;
            }
            length /= 2;
        }
        return value;
    }

    private void take(double[] centers) {
        double[] moved = steps[next];
        double[] turned = turns[next];
        double product = 0;
        for (int k = 0; k < moved.length; k++) {
            moved[k] = trial[k] - centers[k];
            turned[k] = trialGradient[k] - gradient[k];
            product += moved[k] * turned[k];
            centers[k] = trial[k];
            gradient[k] = trialGradient[k];
        }
        if (product > 1e-30) {
            products[next] = product;
            next = (next + 1) % MEMORY;
            kept = Math.min(MEMORY, kept + 1);
        }
    }

    /**
     * Two loops over the remembered steps give the quasi-Newton direction; a quarter of the gradient to begin with. Each pass adds one
     * vector and calculates the product that the next pass starts from; that of the last pass has no use.
     */
    private void aim() {
        for (int k = 0; k < direction.length; k++) {
            direction[k] = -gradient[k];
        }
        if (kept == 0) {
            scale(0.25);
            return;
        }
        int last = (next - 1 + MEMORY) % MEMORY;
        double product = dot(steps[last], direction);
        for (int age = 1; age <= kept; age++) {
            int m = (next - age + MEMORY) % MEMORY;
            shares[m] = product / products[m];
            product = add(-shares[m], turns[m], steps[(m - 1 + MEMORY) % MEMORY]);
        }
        scale(products[last] / dot(turns[last], turns[last]));
        int first = (next - kept + MEMORY) % MEMORY;
        product = dot(turns[first], direction);
        for (int age = kept; age >= 1; age--) {
            int m = (next - age + MEMORY) % MEMORY;
            product = add(shares[m] - product / products[m], steps[m], turns[(m + 1) % MEMORY]);
        }
    }

    private void scale(double factor) {
        double[] aimed = direction;
        for (int k = 0; k < aimed.length; k++) {
            aimed[k] *= factor;
        }
    }

    /** Adds a vector to the direction, and returns the product of the sum with another one. */
    private double add(double factor, double[] vector, double[] other) {
        double[] aimed = direction;
        double product = 0;
        for (int k = 0; k < aimed.length; k++) {
            double sum = aimed[k] + factor * vector[k];
            aimed[k] = sum;
            product += other[k] * sum;
        }
        return product;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int k = 0; k < a.length; k++) {
            sum += a[k] * b[k];
        }
        return sum;
    }
}
