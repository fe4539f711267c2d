package org.spanroom.model.fieldwork;

import java.util.OptionalDouble;

/**
 * The value of a fact.
 *
 * @param text as reported
 * @param unit as reported; {@link FactUnit#NONE} where the kind has none
 * @param keptInUnit the number in the first unit of the fact's kind; empty where values are not numbers
 */
public record FactValue(String text, FactUnit unit, OptionalDouble keptInUnit) {
    /** A value that is not a number. */
    public static FactValue ofText(String text) {
        return new FactValue(text, FactUnit.NONE, OptionalDouble.empty());
    }

    /** A number in one of the units of its kind. */
    public static FactValue ofNumber(String text, FactUnit unit, double valueInUnit) {
        return new FactValue(text, unit, OptionalDouble.of(unit.kept(valueInUnit)));
    }
}
