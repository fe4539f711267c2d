package org.spanroom.model.rank;

import java.util.Collections;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What one run said of a span, as far as runs are compared.
 *
 * @param rank empty for an excluded span
 * @param scorePoints out of 100
 * @param exclusion key of the reason for having no rank, or empty
 * @param partPoints the parts of the score by criterion
 */
public record Standing(OptionalInt rank, double scorePoints, String exclusion, SortedMap<String, Double> partPoints) {
    public Standing {
        partPoints = Collections.unmodifiableSortedMap(new TreeMap<>(partPoints));
    }
}
