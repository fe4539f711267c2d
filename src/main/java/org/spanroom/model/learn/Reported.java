package org.spanroom.model.learn;

import java.util.OptionalDouble;

/**
 * A sum over spans of which some reported.
 *
 * @param sumInUnit over those that did; empty where none did
 * @param missing how many did not
 */
public record Reported(OptionalDouble sumInUnit, int missing) {
    /** Nothing yet. */
    public static final Reported NONE = new Reported(OptionalDouble.empty(), 0);

    /** Returns the sum with one span more in it. */
    public Reported and(OptionalDouble ofSpanInUnit) {
        return ofSpanInUnit.isPresent()
                ? new Reported(OptionalDouble.of(sumInUnit.orElse(0) + ofSpanInUnit.getAsDouble()), missing)
                : new Reported(sumInUnit, missing + 1);
    }
}
