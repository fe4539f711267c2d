package org.spanroom.model.effort;

import java.util.Arrays;

/**
 * One amount for each constant of an enum, all of one unit.
 *
 * <p>A packed array, since millions of spans each keep some of these.
 *
 * @param <E> what the amounts are of
 */
public final class Amounts<E extends Enum<E> & EffortPart> {
    private final double[] amounts;

    /** Takes amounts in the order of the enum's constants. */
    public Amounts(double[] amounts) {
        this.amounts = amounts.clone();
    }

    @SuppressWarnings("EnumOrdinal") // packed in the order of the constants, in memory only
    public double of(E part) {
        return amounts[part.ordinal()];
    }

    public double total() {
        double total = 0;
        for (double amount : amounts) {
            total += amount;
        }
        return total;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Amounts<?> that && Arrays.equals(amounts, that.amounts);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(amounts);
    }

    @Override
    public String toString() {
        return Arrays.toString(amounts);
    }
}
