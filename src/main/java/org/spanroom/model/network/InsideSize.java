package org.spanroom.model.network;

import java.util.OptionalDouble;
import org.spanroom.model.Check;

/** The inside of a vault as recorded, between its walls and from its floor to its ceiling. */
public record InsideSize(OptionalDouble lengthM, OptionalDouble widthM, OptionalDouble heightM) {
    /** Nothing is recorded. */
    public static final InsideSize UNKNOWN =
            new InsideSize(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

    public InsideSize {
        lengthM.ifPresent(length -> Check.positive("lengthM", length));
        widthM.ifPresent(width -> Check.positive("widthM", width));
        heightM.ifPresent(height -> Check.positive("heightM", height));
    }

    /** Returns the volume of a box of this size; empty where a side is not recorded. */
    public OptionalDouble findVolumeM3() {
        return lengthM.isPresent() && widthM.isPresent() && heightM.isPresent()
                ? OptionalDouble.of(lengthM.getAsDouble() * widthM.getAsDouble() * heightM.getAsDouble())
                : OptionalDouble.empty();
    }
}
