package org.spanroom.model.network;

import org.spanroom.model.Answer;

/**
 * What the records say of a route's duct at the two vaults that it leads between.
 *
 * @param a at the first vertex
 * @param b at the last vertex
 * @param uncutAtA whether all innerducts run uncut through the vault at the first vertex
 * @param uncutAtB the same at the last vertex
 */
public record RouteEnds(EndFacts a, EndFacts b, Answer uncutAtA, Answer uncutAtB) {
    /** Nothing is recorded. */
    public static final RouteEnds UNKNOWN =
            new RouteEnds(EndFacts.UNKNOWN, EndFacts.UNKNOWN, Answer.UNKNOWN, Answer.UNKNOWN);

    /** Returns what is recorded at one end. */
    public EndFacts factsAt(SpanEnd end) {
        return end == SpanEnd.A ? a : b;
    }

    /** Returns whether all innerducts run uncut through the vault at one end. */
    public Answer uncutAt(SpanEnd end) {
        return end == SpanEnd.A ? uncutAtA : uncutAtB;
    }

    /** Returns what counts for one part of a route: what is recorded at those ends that the part has. */
    public RouteEnds ofPart(boolean hasA, boolean hasB) {
        return hasA && hasB
                ? this
                : new RouteEnds(
                        hasA ? a : EndFacts.UNKNOWN,
                        hasB ? b : EndFacts.UNKNOWN,
                        hasA ? uncutAtA : Answer.UNKNOWN,
                        hasB ? uncutAtB : Answer.UNKNOWN);
    }
}
