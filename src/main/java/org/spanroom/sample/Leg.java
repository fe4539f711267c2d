package org.spanroom.sample;

/**
 * A stretch of street from one vault to the next: what becomes a span for each duct laid in it.
 *
 * @param trace from the first node to the second
 * @param crooked true where it turns so often that pulling will be hard
 */
record Leg(Node from, Node to, Trace trace, boolean crooked) {

    double lengthM() {
        return trace.lengthM();
    }
}
