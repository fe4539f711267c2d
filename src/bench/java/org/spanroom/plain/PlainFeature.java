package org.spanroom.plain;

import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.TransformException;
import org.locationtech.jts.geom.Coordinate;

/** A point or line with its attributes, names and values by turns. */
final class PlainFeature {
    private final String[] attributes;
    private final Coordinate[] coordinates;
    private Coordinate[] plane = {};

    PlainFeature(String[] attributes, Coordinate[] coordinates) {
        this.attributes = attributes;
        this.coordinates = coordinates;
    }

    String[] attributes() {
        return attributes;
    }

    Coordinate[] coordinates() {
        return coordinates;
    }

    Coordinate[] plane() {
        return plane;
    }

    void project(MathTransform toPlane) {
        double[] ordinates = new double[2 * coordinates.length];
        for (int i = 0; i < coordinates.length; i++) {
            ordinates[2 * i] = coordinates[i].x;
            ordinates[2 * i + 1] = coordinates[i].y;
        }
        try {
            toPlane.transform(ordinates, 0, ordinates, 0, coordinates.length);
        } catch (TransformException failure) {
            throw new IllegalStateException(failure);
        }
        plane = new Coordinate[coordinates.length];
        for (int i = 0; i < coordinates.length; i++) {
            plane[i] = new Coordinate(ordinates[2 * i], ordinates[2 * i + 1]);
        }
    }
}
