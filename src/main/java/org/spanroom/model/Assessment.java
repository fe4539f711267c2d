package org.spanroom.model;

/** What the stages found out about one span, before it is compared with any other. */
public record Assessment(Span span, Bends bends, Room room, PullAssessment pull, Permits permits) {
    /** An assessment without permit zones. */
    public Assessment(Span span, Bends bends, Room room, PullAssessment pull) {
        this(span, bends, room, pull, Permits.NONE);
    }
}
