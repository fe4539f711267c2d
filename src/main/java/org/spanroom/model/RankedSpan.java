package org.spanroom.model;

import java.util.OptionalInt;

/**
 * A span with its place in the ranking.
 *
 * @param rank 1 for the best; empty for an excluded span
 */
public record RankedSpan(OptionalInt rank, Assessment assessment, Score score) {
    public Span span() {
        return assessment.span();
    }
}
