package org.spanroom.model;

import java.util.Locale;
import java.util.Optional;

/** A unit that a source field may be recorded in, with the factor to the unit that the code keeps. */
public enum Unit {
    /** Kept unit of diameters and walls. */
    MM("mm", Dimension.LENGTH, 0.001),
    CM("cm", Dimension.LENGTH, 0.01),
    M("m", Dimension.LENGTH, 1),
    KM("km", Dimension.LENGTH, 1000),
    IN("in", Dimension.LENGTH, 0.0254),
    /** The international foot, 0.3048 m exactly (NIST SP 811, from memory). */
    FT("ft", Dimension.LENGTH, 0.3048),
    /** The US survey foot, 1200/3937 m exactly (NIST SP 811, from memory). */
    FT_US("ft_us", Dimension.LENGTH, 1200.0 / 3937.0),
    KG_PER_M("kg/m", Dimension.MASS_PER_LENGTH, 1),
    KG_PER_KM("kg/km", Dimension.MASS_PER_LENGTH, 0.001),
    LB_PER_FT("lb/ft", Dimension.MASS_PER_LENGTH, 0.45359237 / 0.3048),
    LB_PER_1000_FT("lb/1000ft", Dimension.MASS_PER_LENGTH, 0.45359237 / 304.8),
    M3("m3", Dimension.VOLUME, 1),
    FT3("ft3", Dimension.VOLUME, 0.3048 * 0.3048 * 0.3048);

    /** What a unit measures. */
    public enum Dimension {
        LENGTH,
        MASS_PER_LENGTH,
        VOLUME
    }

    private final String symbol;
    private final Dimension dimension;
    private final double toSiRatio;

    Unit(String symbol, Dimension dimension, double toSiRatio) {
        this.symbol = symbol;
        this.dimension = dimension;
        this.toSiRatio = toSiRatio;
    }

    /** Finds the unit that is written so in a config; case does not matter. */
    public static Optional<Unit> findBySymbol(String symbol) {
        String wanted = symbol.strip().toLowerCase(Locale.ROOT);
        for (Unit unit : values()) {
            if (unit.symbol.equals(wanted)) {
                return Optional.of(unit);
            }
        }
        return Optional.empty();
    }

    public String symbol() {
        return symbol;
    }

    public Dimension dimension() {
        return dimension;
    }

    /** Returns a value of this unit in meters, kilograms per meter or cubic meters. */
    public double toSi(double value) {
        return value * toSiRatio;
    }

    /** Returns a length of this unit in millimeters. */
    public double toMm(double value) {
        return value * toSiRatio * 1000;
    }
}
