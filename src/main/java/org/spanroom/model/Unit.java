package org.spanroom.model;

import java.util.Locale;
import java.util.Optional;

/** A unit that a source field may be recorded in, with the factor to the unit that the code keeps. */
public enum Unit {
    /** Kept unit of diameters and walls. */
    MM("mm", "millimeters", Dimension.LENGTH, 0.001),
    CM("cm", "centimeters", Dimension.LENGTH, 0.01),
    M("m", "meters", Dimension.LENGTH, 1),
    KM("km", "kilometers", Dimension.LENGTH, 1000),
    IN("in", "inches", Dimension.LENGTH, 0.0254),
    /** The international foot, 0.3048 m exactly (NIST SP 811, from memory). */
    FT("ft", "feet", Dimension.LENGTH, 0.3048),
    /** The US survey foot, 1200/3937 m exactly (NIST SP 811, from memory). */
    FT_US("ft_us", "US survey feet", Dimension.LENGTH, 1200.0 / 3937.0),
    KG_PER_M("kg/m", "kilograms per meter", Dimension.MASS_PER_LENGTH, 1),
    KG_PER_KM("kg/km", "kilograms per kilometer", Dimension.MASS_PER_LENGTH, 0.001),
    LB_PER_FT("lb/ft", "pounds per foot", Dimension.MASS_PER_LENGTH, 0.45359237 / 0.3048),
    LB_PER_1000_FT("lb/1000ft", "pounds per 1,000 feet", Dimension.MASS_PER_LENGTH, 0.45359237 / 304.8),
    M3("m3", "cubic meters", Dimension.VOLUME, 1),
    FT3("ft3", "cubic feet", Dimension.VOLUME, 0.3048 * 0.3048 * 0.3048);

    /** What a unit measures. */
    public enum Dimension {
        LENGTH,
        MASS_PER_LENGTH,
        VOLUME
    }

    private final String symbol;
    private final String words;
    private final Dimension dimension;
    private final double toSiRatio;

    Unit(String symbol, String words, Dimension dimension, double toSiRatio) {
        this.symbol = symbol;
        this.words = words;
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

    /** Returns the unit as a reader and a config call it: inches (in). */
    public String inWords() {
        return words + " (" + symbol + ")";
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
