package org.spanroom.output.table;

import org.jspecify.annotations.Nullable;

/** The shape of a row in each system that a file asks for it in, found once. For one thread. */
final class RowPlace {
    private final OutputCrs frame;
    private final OutputCrs lonLat = OutputCrs.lonLat();
    private Shape shape = Shape.EMPTY;
    private @Nullable Shape placed;
    private @Nullable Shape onLonLat;

    RowPlace(OutputCrs frame) {
        this.frame = frame;
    }

    /** Begins the next row. */
    void begin(Shape itsShape) {
        shape = itsShape;
        placed = null;
        onLonLat = null;
    }

    /** Returns the shape in the frame of the layers; empty if it has no place there. */
    Shape placed() {
        Shape known = placed;
        if (known == null) {
            known = frame.place(shape);
            placed = known;
        }
        return known;
    }

    boolean isWithoutPlace() {
        return placed().isEmpty() && !shape.isEmpty();
    }

    /** Returns the shape in longitude and latitude, rounded as in every layer. */
    Shape onLonLat() {
        if (frame.isLonLat()) {
            return placed();
        }
        Shape known = onLonLat;
        if (known == null) {
            known = lonLat.place(shape);
            onLonLat = known;
        }
        return known;
    }
}
