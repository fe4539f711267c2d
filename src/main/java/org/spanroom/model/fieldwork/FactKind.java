package org.spanroom.model.fieldwork;

import java.util.List;

/** What the value of a fact looks like, and the units that it may have: the first is the one that is kept. */
@SuppressWarnings("ImmutableEnumChecker") // The list is unmodifiable.
public enum FactKind {
    /** One of the words that the fact lists. */
    WORD(FactUnit.NONE),
    TEXT(FactUnit.NONE),
    /** {@code yes} or {@code no}. */
    ANSWER(FactUnit.NONE),
    /** A day, e.g. 2027-03-31. */
    DAY(FactUnit.NONE),
    /** A whole number, 0 or more. */
    COUNT(FactUnit.NONE),
    DIAMETER(FactUnit.MM, FactUnit.IN),
    LENGTH(FactUnit.M, FactUnit.FT),
    FORCE(FactUnit.N, FactUnit.LBF),
    MASS(FactUnit.KG, FactUnit.LB),
    LIQUID(FactUnit.L, FactUnit.GAL),
    AIR_VOLUME(FactUnit.M3, FactUnit.FT3),
    HOURS(FactUnit.H),
    MINUTES(FactUnit.MIN),
    PERCENT(FactUnit.PERCENT),
    /** Optical power; may be negative. */
    LIGHT(FactUnit.DBM),
    MONEY(FactUnit.MONEY);

    private final List<FactUnit> units;

    FactKind(FactUnit... units) {
        this.units = List.of(units);
    }

    /** Returns the units that a value may have; the first is kept. */
    public List<FactUnit> units() {
        return units;
    }

    /** Returns whether values are numbers. */
    public boolean isNumber() {
        return switch (this) {
            case WORD, TEXT, ANSWER, DAY -> false;
            default -> true;
        };
    }
}
