package org.spanroom.model.bore;

import java.util.Optional;
import org.spanroom.model.Check;

/**
 * Whether what a cross-section holds goes side by side into its bore, with the evidence.
 *
 * @param marginMm how much narrower the bore could be, at least, where it fits; else less than 0: how much wider it must
 *     be by the proof, or would have to be for the best arrangement known
 * @param bound the bound that proves that it does not fit, or that comes nearest to a proof where that is undecided; else empty
 * @param gapMm where that is undecided, how far apart the bores are that the bound demands and that the best arrangement known needs
 * @param arrangement the arrangement that fits, or the best known where that is undecided; none where a bound spared it
 */
public record Packing(
        PackingOutcome outcome, double marginMm, String bound, double gapMm, Optional<Arrangement> arrangement) {
    public Packing {
        Check.notNegative("gapMm", gapMm);
        Check.finite("marginMm", marginMm);
    }

    /** Returns the overlap of the best arrangement; 0 to within 1e-6 mm where it fits. */
    public double overlapMm() {
        return arrangement.map(Arrangement::overlapMm).orElse(0.0);
    }
}
