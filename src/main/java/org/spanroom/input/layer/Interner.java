package org.spanroom.input.layer;

import org.jspecify.annotations.Nullable;

/**
 * The values seen lately, of which equal ones are kept as one: neighbors in a file are neighbors in the street, and name the same
 * banks, vaults, years and lines. Holds a fixed number of values. For use by one thread.
 */
public final class Interner {
    private static final int BITS = 14;

    private final @Nullable Object[] slots = new Object[1 << BITS];

    /** Returns an equal value of the same type that was seen before, or this one. */
    @SuppressWarnings("unchecked") // of the same class
    public <T> T one(T value) {
        int hash = value.hashCode() * 0x9E3779B9;
        int slot = hash >>> (Integer.SIZE - BITS);
        Object last = slots[slot];
        if (last != null && last.getClass() == value.getClass() && last.equals(value)) {
            return (T) last;
        }
        slots[slot] = value;
        return value;
    }
}
