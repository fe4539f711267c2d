package org.spanroom.model.fieldwork;

import java.util.Locale;
import java.util.Optional;

/** A unit in which crews report, with the factor to the unit that is kept. The factors are those of {@link org.spanroom.model.UsUnit}. */
public enum FactUnit {
    NONE("", 1),
    MM("mm", 1),
    IN("in", 25.4),
    M("m", 1),
    FT("ft", 0.3048),
    N("N", 1),
    LBF("lbf", 4.4482216152605),
    KG("kg", 1),
    LB("lb", 0.45359237),
    L("L", 1),
    GAL("gal", 3.785411784),
    M3("m3", 1),
    FT3("ft3", 0.028316846592),
    H("h", 1),
    MIN("min", 1),
    PERCENT("%", 1),
    DBM("dBm", 1),
    /** The currency of the rates. */
    MONEY("money", 1);

    private final String symbol;
    private final double keptRatio;

    FactUnit(String symbol, double keptRatio) {
        this.symbol = symbol;
        this.keptRatio = keptRatio;
    }

    public String symbol() {
        return symbol;
    }

    /** Finds a unit by its symbol; case does not matter. */
    public static Optional<FactUnit> find(String symbol) {
        String wanted = symbol.strip().toLowerCase(Locale.ROOT);
        for (FactUnit unit : values()) {
            if (unit.symbol.toLowerCase(Locale.ROOT).equals(wanted)) {
                return Optional.of(unit);
            }
        }
        return Optional.empty();
    }

    /** Returns a value of this unit in the unit that is kept: mm, m, N, kg, L, m3, h, min, %, dBm or money. */
    public double kept(double valueInUnit) {
        return valueInUnit * keptRatio;
    }

    /** Returns a kept value in this unit. */
    public double of(double keptInUnit) {
        return keptInUnit / keptRatio;
    }
}
