package org.spanroom.model;

/**
 * How a span meets a permit zone.
 *
 * @param lengthM metres of the span on the ground that lie inside
 * @param atFrom whether the span's first vault lies inside
 * @param atTo whether its last vault lies inside
 */
public record ZoneTouch(Zone zone, double lengthM, boolean atFrom, boolean atTo) {
    public ZoneTouch {
        Check.notNegative("lengthM", lengthM);
    }
}
