package org.spanroom.model.bore;

import java.util.Optional;
import java.util.function.Supplier;
import org.spanroom.model.Check;

/**
 * Whether what a cross-section holds goes side by side into its bore, with the evidence.
 *
 * <p>Most callers ask for the outcome only, and the evidence takes a search, so it is calculated when it is first asked for. Immutable as
 * seen from outside; safe for use by several threads.
 */
public final class Packing {
    private final PackingOutcome outcome;
    private final Supplier<Evidence> source;
    private Optional<Evidence> known = Optional.empty();

    private Packing(PackingOutcome outcome, Supplier<Evidence> source) {
        this.outcome = outcome;
        this.source = source;
    }

    /** A packing of which all is known; the parameters are those of {@link Evidence}. */
    public Packing(
            PackingOutcome outcome, double marginMm, String bound, double gapMm, Optional<Arrangement> arrangement) {
        this(outcome, new Evidence(marginMm, bound, gapMm, arrangement));
    }

    private Packing(PackingOutcome outcome, Evidence evidence) {
        this(outcome, () -> evidence);
    }

    /**
     * What an outcome rests on.
     *
     * @param marginMm how much narrower the bore could be, at least, where it fits; else less than 0: how much wider it must
     *     be by the proof, or would have to be for the best arrangement known
     * @param bound the bound that proves that it does not fit, or that comes nearest to a proof where that is undecided; else empty
     * @param gapMm where that is undecided, how far apart the bores are that the bound demands and that the best arrangement known needs
     * @param arrangement the arrangement that fits, or the best known where that is undecided; none where a bound spared it
     */
    public record Evidence(double marginMm, String bound, double gapMm, Optional<Arrangement> arrangement) {
        public Evidence {
            Check.notNegative("gapMm", gapMm);
            Check.finite("marginMm", marginMm);
        }
    }

    /**
     * Returns a packing whose evidence is calculated once, when it is asked for.
     *
     * @param source must give the same evidence whenever it is asked
     */
    public static Packing of(PackingOutcome outcome, Supplier<Evidence> source) {
        return new Packing(outcome, source);
    }

    public PackingOutcome outcome() {
        return outcome;
    }

    /** Returns what the outcome rests on; the first call may take as long as a search. */
    public synchronized Evidence evidence() {
        Evidence evidence = known.orElseGet(source);
        known = Optional.of(evidence);
        return evidence;
    }

    /** Returns the margin, in {@link Evidence}. */
    public double marginMm() {
        return evidence().marginMm();
    }

    /** Returns the bound, in {@link Evidence}. */
    public String bound() {
        return evidence().bound();
    }

    /** Returns the gap, in {@link Evidence}. */
    public double gapMm() {
        return evidence().gapMm();
    }

    /** Returns the arrangement, in {@link Evidence}. */
    public Optional<Arrangement> arrangement() {
        return evidence().arrangement();
    }

    /** Returns the overlap of the best arrangement; 0 to within 1e-6 mm where it fits. */
    public double overlapMm() {
        return arrangement().map(Arrangement::overlapMm).orElse(0.0);
    }

    /** Packings are equal where their outcomes and their evidence are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Packing packing
                && outcome == packing.outcome
                && evidence().equals(packing.evidence());
    }

    @Override
    public int hashCode() {
        return outcome.hashCode();
    }

    @Override
    public String toString() {
        return "Packing[" + outcome + ", " + evidence() + "]";
    }
}
