package org.spanroom.model.network;

import java.util.List;
import org.spanroom.model.Check;

/**
 * How near the ends of the routes are to vaults, so that a snap tolerance can be chosen with open eyes.
 *
 * @param endCount how many ends there are, two for each route
 * @param bands in order of distance; each counts all ends within its distance, those of the bands before included
 */
public record EndDistanceCounts(int endCount, List<Band> bands) {
    public EndDistanceCounts {
        Check.notNegative("endCount", endCount);
        bands = List.copyOf(bands);
    }

    /** How many ends have a vault within {@code withinM}. */
    public record Band(double withinM, int count) {}
}
