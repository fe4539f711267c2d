package org.spanroom.model;

/** What the stages found out about one span, before it is compared with any other. */
public record Assessment(Span span, Bends bends, Room room, PullAssessment pull) {}
