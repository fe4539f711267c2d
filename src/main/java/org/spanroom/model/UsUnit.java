package org.spanroom.model;

import java.util.Locale;
import java.util.Optional;

/**
 * A US customary unit, and the metric one in whose place it is shown. The factors follow from five exact definitions: international foot
 * 0.3048 m, inch 25.4 mm, pound 0.45359237 kg, pound-force 4.4482216152605 N, US gallon 3.785411784 L (NIST SP 811, Appendix B).
 */
public enum UsUnit {
    FOOT("m", "ft", 0.3048, 0),
    INCH("mm", "in", 25.4, 1),
    MILE("km", "mi", 1.609344, 0),
    SQUARE_INCH("mm2", "in2", 25.4 * 25.4, 2),
    CUBIC_FOOT("m3", "ft3", 0.028316846592, -1),
    GALLON("l", "gal", 3.785411784, 0),
    POUND("kg", "lb", 0.45359237, 0),
    POUND_FORCE("N", "lbf", 4.4482216152605, 0),
    LBF_PER_FT("N/m", "lbf/ft", 4.4482216152605 / 0.3048, 1),
    LB_PER_FT("kg/m", "lb/ft", 0.45359237 / 0.3048, 0),
    LB_PER_FT3("kg/m3", "lb/ft3", 0.45359237 / 0.028316846592, 1),
    /** Pound-force per square inch. */
    PSI("MPa", "psi", 4.4482216152605 / (25.4 * 25.4), -2),
    RAD_PER_FT("rad/m", "rad/ft", 1 / 0.3048, 1);

    private final String metric;
    private final String symbol;
    private final double metricRatio;
    private final int furtherDecimals;

    /**
     * @param metricRatio how much of the metric unit one of this unit is
     * @param furtherDecimals how many decimals a value has here beyond those of the metric one, to be about as fine
     */
    UsUnit(String metric, String symbol, double metricRatio, int furtherDecimals) {
        this.metric = metric;
        this.symbol = symbol;
        this.metricRatio = metricRatio;
        this.furtherDecimals = furtherDecimals;
    }

    /** Finds the unit that replaces a metric one; none for units that both systems share, such as hours and degrees. */
    public static Optional<UsUnit> findFor(String metricUnit) {
        for (UsUnit unit : values()) {
            if (unit.metric.equals(metricUnit)) {
                return Optional.of(unit);
            }
        }
        return Optional.empty();
    }

    /** Returns the symbol of the metric unit. */
    public String metric() {
        return metric;
    }

    public String symbol() {
        return symbol;
    }

    /** Returns the last words of the name of a column in the metric unit, as {@code n_per_m}. */
    public String metricWord() {
        return word(metric);
    }

    /** Returns the last words of the name of a column in this unit, as {@code lbf_per_ft}. */
    public String word() {
        return word(symbol);
    }

    private static String word(String symbol) {
        return symbol.toLowerCase(Locale.ROOT).replace("/", "_per_");
    }

    /** Returns a value of the metric unit in this one. */
    public double of(double metricValue) {
        return metricValue / metricRatio;
    }

    /** Returns what is given for each of the metric unit, such as money for each meter, for each of this one. */
    public double perUnit(double perMetric) {
        return perMetric * metricRatio;
    }

    /** Returns how many decimals a value has here that has so many in the metric unit. */
    public int decimals(int metricDecimals) {
        return Math.max(0, metricDecimals + furtherDecimals);
    }
}
