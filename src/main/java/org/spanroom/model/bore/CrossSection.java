package org.spanroom.model.bore;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A duct's cross-section as recorded, and all that can be made of it.
 *
 * @param before what the records say is in the duct, in the whole bore
 * @param contradiction why the records cannot be true, in one phrase; empty where they can
 * @param jamRatio 1.05 times the bore's width over that of three or more equal innerducts; empty where there are none
 * @param choices every way of pulling none, some or all of the innerducts, from the fewest; without and with dead cables. The
 *     first leaves everything in
 * @param leftOpen true where the contents are so many that the work limit left an answer undecided that a search might give
 */
public record CrossSection(
        Packing before,
        Optional<String> contradiction,
        OptionalDouble jamRatio,
        List<PullChoice> choices,
        boolean leftOpen) {
    /** Ratio from which three equal items may lock across a bore: an engineering note on cable pulling. */
    public static final double JAM_FROM_RATIO = 2.8;

    /** Ratio above which three equal items cannot lock: common practice, no source; the same note has 3.0. */
    public static final double JAM_TO_RATIO = 3.2;

    public CrossSection {
        choices = List.copyOf(choices);
        if (choices.isEmpty() || choices.get(0).isRecovery()) {
            throw new IllegalArgumentException("the first of choices must leave everything in, were " + choices.size());
        }
    }

    /** A cross-section on which the work did not end early. */
    public CrossSection(
            Packing before, Optional<String> contradiction, OptionalDouble jamRatio, List<PullChoice> choices) {
        this(before, contradiction, jamRatio, choices, false);
    }

    /** Returns the choice that leaves everything in: what the duct can take today. */
    public PullChoice now() {
        return choices.get(0);
    }

    /** Returns whether three equal innerducts could lock side by side during the pull. */
    public boolean mayJam() {
        return jamRatio.isPresent() && isJam(jamRatio.getAsDouble());
    }

    /** Returns whether three equal items of such a ratio may lock across a bore. */
    public static boolean isJam(double ratio) {
        return ratio >= JAM_FROM_RATIO && ratio <= JAM_TO_RATIO;
    }

    CrossSection withChoices(List<PullChoice> others) {
        return new CrossSection(before, contradiction, jamRatio, others, leftOpen);
    }
}
