package org.spanroom.model.bore;

import java.util.Locale;

/**
 * Why a proposal leaves innerducts in: what it gains for its hours, beside what all innerducts out would gain for theirs. Put into words
 * when asked, because most of millions are not read.
 *
 * @param proposedHours hours on site of the proposal, more than 0
 * @param all the best of the choices that leave no innerduct in
 * @param allHours its hours on site, more than 0
 */
public record ProposalReason(PullChoice proposed, double proposedHours, PullChoice all, double allHours) {
    /** Returns the reason in one phrase. */
    public String words() {
        return words(proposed, proposedHours) + "; " + words(all, allHours);
    }

    private static String words(PullChoice choice, double hours) {
        return String.format(
                Locale.ROOT,
                "%s: %d gained in %.1f h (%.2f per hour)",
                choice.words(),
                choice.positionsGained(),
                hours,
                choice.positionsGained() / hours);
    }
}
