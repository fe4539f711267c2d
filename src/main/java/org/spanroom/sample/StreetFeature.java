package org.spanroom.sample;

import org.spanroom.output.table.Shape;

/**
 * One feature of the streets layer, in the city's plane.
 *
 * @param name as on its signs
 * @param rank main, side or link
 * @param axis its center line
 */
record StreetFeature(String name, String rank, DrawnLine axis) {
    Shape shape() {
        return Shape.line(axis.lonLat(false));
    }
}
