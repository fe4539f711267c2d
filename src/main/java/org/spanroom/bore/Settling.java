package org.spanroom.bore;

/**
 * Lets circles that lie clear in a bore come to rest at its bottom, as cables and innerducts do.
 *
 * <p>Method: {@link Laying}, one after another at the lowest place. Where that leaves some over: the overlap energy with a weight on each circle that fades away, so that little by little they sink without
 * pushing into one another; for the drawing, not for the answer. Where the end is not as clear as the beginning, they stay
 * where they were. Sleeves hang together all the while.
 */
final class Settling {
    private static final double[] FADING = {0.5, 0.2, 0.08, 0.03, 0.01, 0.003, 0.001};

    /** What a way down takes, in moves of a search. */
    private static final int SINKING_MOVES = 5;

    private Settling() {}

    /** Where circles come to rest, and the moves of a search that finding it takes as long as. */
    @SuppressWarnings("ArrayRecordComponent") // never compared, and the array is not changed once found
    record Rest(double[] centersMm, int moves) {}

    /** Returns centers at rest; those given where a way down was not found. */
    static Rest settle(PackingTask task, double[] centers) {
        double[] laid = Laying.lay(task);
        if (laid.length > 0 && task.isMetBy(laid)) {
            return new Rest(laid, 1);
        }
        double[] sunk = sink(task, centers, 0);
        if (task.isMetBy(sunk)) {
            return new Rest(sunk, SINKING_MOVES);
        }
        double[] gently = sink(task, centers, 3);
        return new Rest(task.isMetBy(gently) ? gently : centers.clone(), 2 * SINKING_MOVES);
    }

    private static double[] sink(PackingTask task, double[] centers, int from) {
        double[] moving = centers.clone();
        var energy = new OverlapEnergy(task);
        var descent = new Descent(energy);
        energy.join(moving);
        double meanMm = Math.sqrt(task.squaresMm2() / task.size());
        for (int k = from; k < FADING.length; k++) {
            energy.weigh(FADING[k] * meanMm);
            descent.descend(moving, task.halfMm(), Descent.RESTING);
        }
        energy.weigh(0);
        descent.descend(moving, task.halfMm(), Descent.FINE);
        return moving;
    }
}
