package org.spanroom.model.program;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * What one duct of a section offers.
 *
 * @param spanId name of its span
 * @param ductId name of the duct
 * @param positionsNow cables that it takes today; 0 where it cannot be used
 * @param positionsAfter cables that it takes once recovered; equal to {@code positionsNow} where it cannot be, or gains none
 * @param rank of the span in the run
 * @param closedBy keys of the gates that close use or recovery for good; empty where none does
 * @param recovery what recovery takes; present where {@code positionsAfter} exceeds {@code positionsNow}
 */
public record DuctOffer(
        String spanId,
        String ductId,
        int positionsNow,
        int positionsAfter,
        OptionalInt rank,
        String closedBy,
        Optional<Recovery> recovery) {
    public DuctOffer {
        if (positionsNow < 0
                || positionsAfter < positionsNow
                || recovery.isPresent() != positionsAfter > positionsNow) {
            throw new IllegalArgumentException(spanId + ": " + positionsNow + " now, " + positionsAfter + " after");
        }
    }

    /**
     * What recovering a duct takes.
     *
     * @param siteHours hours on site, over all shifts
     * @param leadDays days until its permits are issued
     * @param notBefore first day without an embargo, where one is recorded
     * @param feasibleDraws in which of the first samples of the simulation it works, as bits; empty where that was not simulated
     */
    public record Recovery(
            Costs costs, double siteHours, int leadDays, Optional<LocalDate> notBefore, OptionalLong feasibleDraws) {}
}
