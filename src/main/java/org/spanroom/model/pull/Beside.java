package org.spanroom.model.pull;

import org.spanroom.model.Check;

/**
 * Cables or sleeves that were placed beside the innerducts of a duct before any of them is pulled.
 *
 * <p>They are neighbors of every pull: their weight rests on the innerduct that is pulled, and each is treated as a body that the
 * innerduct may be wedged against. In a flooded duct too they count with their weight in air, on the safe side.
 *
 * @param count how many bodies: each loose cable, and each sleeve with what is in it
 * @param massKgPerM mass of all of them together
 */
public record Beside(int count, double massKgPerM) {
    public static final Beside NONE = new Beside(0, 0);

    public Beside {
        Check.notNegative("count", count);
        Check.notNegative("massKgPerM", massKgPerM);
        if (count == 0 && massKgPerM > 0) {
            throw new IllegalArgumentException("massKgPerM must be 0 if there is no load beside it, was " + massKgPerM);
        }
    }
}
