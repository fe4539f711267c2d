package org.spanroom.model;

import java.util.Optional;

/**
 * What the stages found out about one span, before it is compared with any other.
 *
 * @param effort hours, money, material and new build; empty where nothing comes out
 */
public record Assessment(Span span, Bends bends, Room room, PullAssessment pull, Optional<Effort> effort) {
    /** A span of which no effort is reckoned. */
    public Assessment(Span span, Bends bends, Room room, PullAssessment pull) {
        this(span, bends, room, pull, Optional.empty());
    }
}
