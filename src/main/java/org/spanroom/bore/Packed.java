package org.spanroom.bore;

import org.spanroom.model.bore.PackingOutcome;

/** The answer to a {@link PackingTask}. Immutable by convention: answers share the array of centers, so no caller may write to it. */
final class Packed {
    private final PackingOutcome outcome;
    private final double leastBoreMm;
    private final String bound;
    private final double[] centresMm;

    private Packed(PackingOutcome outcome, double leastBoreMm, String bound, double[] centresMm) {
        this.outcome = outcome;
        this.leastBoreMm = leastBoreMm;
        this.bound = bound;
        this.centresMm = centresMm;
    }

    static Packed fits(double leastBoreMm, double... centresMm) {
        return new Packed(PackingOutcome.FITS, leastBoreMm, "", centresMm);
    }

    static Packed doesNotFit(Proof proof) {
        return new Packed(PackingOutcome.DOES_NOT_FIT, proof.leastBoreMm(), proof.bound(), new double[0]);
    }

    static Packed undecided(double leastBoreMm, double... centresMm) {
        return new Packed(PackingOutcome.UNDECIDED, leastBoreMm, "", centresMm);
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

    /** Returns the bound that proves that the circles do not fit, or nothing. */
    String bound() {
        return bound;
    }

    /** Returns x and y of each circle in turn, from the largest; none where a bound spared the search. */
    double[] centresMm() {
        return centresMm;
    }
}
