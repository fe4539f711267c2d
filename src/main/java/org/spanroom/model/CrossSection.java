package org.spanroom.model;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A duct's cross-section as packed: before any work, and after all rigid innerducts are out and the new cables in.
 *
 * @param before what the records say lies in the duct, in the whole bore
 * @param after the cables that stay and the new ones, in the bore less its allowance; drawn in the whole bore
 * @param nextSleeve what is known of one sleeve more; only where packing is the binding rule
 * @param contradiction why the records cannot be true, in one phrase; empty where they can
 * @param jamRatio 1.05 times the bore's width over that of three or more equal innerducts; empty where there are none
 * @param choices ways of pulling fewer innerducts and all of them, from the fewest
 */
public record CrossSection(
        Packing before,
        Packing after,
        Optional<PackingOutcome> nextSleeve,
        Optional<String> contradiction,
        OptionalDouble jamRatio,
        List<PullChoice> choices) {
    /** Ratio from which three equal items may lock across a bore; from memory of IEEE 1185 and handbooks. */
    private static final double JAM_FROM_RATIO = 2.8;

    /** Ratio above which three equal items cannot lock; likewise. */
    private static final double JAM_TO_RATIO = 3.2;

    public CrossSection {
        choices = List.copyOf(choices);
    }

    /** Returns whether three equal innerducts could lock side by side as they are pulled. */
    public boolean mayJam() {
        double ratio = jamRatio.orElse(0);
        return ratio >= JAM_FROM_RATIO && ratio <= JAM_TO_RATIO;
    }
}
