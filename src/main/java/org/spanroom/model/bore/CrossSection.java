package org.spanroom.model.bore;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A duct's cross-section as packed: before any work, and after the proposed innerducts are out and the new cables in.
 *
 * @param before what the records say lies in the duct, in the whole bore
 * @param after what stays and the new cables, in the bore less its allowance; drawn in the whole bore
 * @param nextSleeve what is known of one sleeve more; only where packing is the binding rule
 * @param contradiction why the records cannot be true, in one phrase; empty where they can
 * @param jamRatio 1.05 times the bore's width over that of three or more equal innerducts; empty where there are none
 * @param choices every way of pulling some of the innerducts or all of them, from the fewest; without and with dead cables
 */
public record CrossSection(
        Packing before,
        Packing after,
        Optional<PackingOutcome> nextSleeve,
        Optional<String> contradiction,
        OptionalDouble jamRatio,
        List<PullChoice> choices) {
    public CrossSection {
        choices = List.copyOf(choices);
    }

    /** Returns this cross-section with the arrangement that a choice leads to. */
    CrossSection after(PullChoice choice) {
        return new CrossSection(before, choice.after(), choice.nextSleeve(), contradiction, jamRatio, choices);
    }
}
