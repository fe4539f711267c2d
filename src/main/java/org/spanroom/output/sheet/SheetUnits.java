package org.spanroom.output.sheet;

import java.util.List;
import java.util.Locale;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.fieldwork.FactKind;
import org.spanroom.model.fieldwork.FactUnit;

/**
 * Puts quantities into the units of a sheet. What safety depends on is given in both systems, since gauges show either.
 *
 * @param shown the units that come first, and those of the blanks
 */
record SheetUnits(UnitSystem shown) {
    /** No machine or innerduct comes near such a force; a span that would need more is shown as needing more. */
    private static final double LARGEST_N = 100_000;

    /** Returns a value with its unit, as {@code explain} shows it. */
    String one(double metricValue, int metricDecimals, String metricUnit) {
        return shown.words(metricValue, metricDecimals, metricUnit);
    }

    /** Returns a value with its unit, and the same in the other system in brackets. */
    String both(double metricValue, int metricDecimals, String metricUnit) {
        return shown.words(metricValue, metricDecimals, metricUnit) + " ("
                + other().words(metricValue, metricDecimals, metricUnit) + ")";
    }

    /** Returns a range of forces in both systems. */
    String bothForces(double lowN, double highN) {
        return highN > LARGEST_N ? "above " + both(LARGEST_N, 0, "N") : bothRange(lowN, highN, 0, "N");
    }

    /** Returns a range in both systems. */
    String bothRange(double lowMetric, double highMetric, int metricDecimals, String metricUnit) {
        return range(shown, lowMetric, highMetric, metricDecimals, metricUnit) + " ("
                + range(other(), lowMetric, highMetric, metricDecimals, metricUnit) + ")";
    }

    private static String range(UnitSystem units, double low, double high, int decimals, String unit) {
        String from = units.number(low, decimals, unit);
        String to = units.words(high, decimals, unit);
        return to.startsWith(from + " ") ? to : from + " to " + to;
    }

    private UnitSystem other() {
        return shown.isUs() ? UnitSystem.METRIC : UnitSystem.US;
    }

    /** Returns the unit of a blank. */
    FactUnit unit(FactKind kind) {
        List<FactUnit> units = kind.units();
        return units.get(shown.isUs() ? units.size() - 1 : 0);
    }

    /** Returns what is planned for a blank: a number without its unit, in the unit of the blank. */
    String planned(FactKind kind, double kept, int decimals) {
        if (kind == FactKind.FORCE && kept > LARGEST_N) {
            return "";
        }
        return String.format(Locale.ROOT, "%." + decimals + "f", unit(kind).of(kept));
    }
}
