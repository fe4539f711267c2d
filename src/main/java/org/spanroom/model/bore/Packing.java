package org.spanroom.model.bore;

import java.util.Optional;
import org.spanroom.model.Check;

/**
 * Whether what a cross-section holds goes side by side into its bore, with the evidence.
 *
 * @param marginMm how much narrower the bore could be, at least, where it fits; else less than 0: how much wider it must
 *     be by the proof, or would have to be for the best arrangement known
 * @param bound the bound that proves that it does not fit, or empty
 * @param arrangement the arrangement that fits, or the best known where that is undecided; none where a bound spared it
 */
public record Packing(PackingOutcome outcome, double marginMm, String bound, Optional<Arrangement> arrangement) {
    public Packing {
        Check.finite("marginMm", marginMm);
    }

    /** Returns the overlap of the best arrangement; 0 to within 1e-6 mm where it fits. */
    public double overlapMm() {
        return arrangement.map(Arrangement::overlapMm).orElse(0.0);
    }
}
