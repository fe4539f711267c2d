package org.spanroom.sample;

/**
 * A stretch of street from one vault to the next: what becomes a span for each duct laid in it.
 *
 * @param trace from the first node to the second
 */
record Leg(Node from, Node to, DrawnLine trace, Course course) {

    double lengthM() {
        return trace.lengthM();
    }
}
