package org.spanroom.bore;

import org.spanroom.model.bore.PackingOutcome;

/** The answer to a {@link PackingTask}. Immutable by convention: answers share the array of centers, so no caller may write to it. */
final class Packed {
    private final PackingOutcome outcome;
    private final double leastBoreMm;
    private final String bound;
    private final double gapMm;
    private final double[] centersMm;

    private Packed(PackingOutcome outcome, double leastBoreMm, String bound, double gapMm, double[] centersMm) {
        this.outcome = outcome;
        this.leastBoreMm = leastBoreMm;
        this.bound = bound;
        this.gapMm = gapMm;
        this.centersMm = centersMm;
    }

    static Packed fits(double leastBoreMm, double... centersMm) {
        return new Packed(PackingOutcome.FITS, leastBoreMm, "", 0, centersMm);
    }

    static Packed doesNotFit(Proof proof) {
        return new Packed(PackingOutcome.DOES_NOT_FIT, proof.leastBoreMm(), proof.bound(), 0, new double[0]);
    }

    /** Neither: the narrowest bore known, and the proof of how wide it must be at least. */
    static Packed undecided(double leastBoreMm, Proof proof, double... centersMm) {
        return new Packed(
                PackingOutcome.UNDECIDED, leastBoreMm, proof.bound(), leastBoreMm - proof.leastBoreMm(), centersMm);
    }

    PackingOutcome outcome() {
        return outcome;
    }

    boolean isFit() {
        return outcome == PackingOutcome.FITS;
    }

    /** Returns the least bore that is known: of the arrangement, or what the proof demands. */
    double leastBoreMm() {
        return leastBoreMm;
    }

    /** Returns how far the narrowest bore known and the bound are apart where that leaves the answer undecided; else 0. */
    double gapMm() {
        return gapMm;
    }

    /** Returns the bound that proves that the circles do not fit, or that comes nearest to it; nothing where they fit. */
    String bound() {
        return bound;
    }

    /** Returns x and y of each circle in turn, from the largest; none where a bound spared the search. */
    double[] centersMm() {
        return centersMm;
    }
}
