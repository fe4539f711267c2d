package org.spanroom.model;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The units that people are shown. Everything is calculated and kept in metric units; a value is converted where it is written. What both
 * systems share, as hours, degrees and money, stays as it is.
 */
public enum UnitSystem {
    METRIC,
    US;

    /** A number and a metric unit in a sentence; of two units that begin with the same letters the longer counts. */
    private static final Pattern QUANTITY =
            Pattern.compile("(?<![\\w.,-])(\\d[\\d,]*)((?:\\.\\d+)?) (kg/m3|kg/m|kg|N/m|N|mm2|mm|m3|m|km|l)(?![\\w/])");

    public boolean isUs() {
        return this == US;
    }

    /** Returns a value of a metric unit in the unit that is shown. */
    public double value(double metricValue, String metricUnit) {
        return find(metricUnit).map(unit -> unit.of(metricValue)).orElse(metricValue);
    }

    /** Returns what is given for each of a metric unit, such as money for each meter, for each of the unit that is shown. */
    public double perUnit(double perMetric, String metricUnit) {
        return find(metricUnit).map(unit -> unit.perUnit(perMetric)).orElse(perMetric);
    }

    /** Returns the symbol of the unit that is shown; words behind a blank, as in "m from A", stay. */
    public String unit(String metricUnit) {
        int blank = metricUnit.indexOf(' ');
        String rest = blank < 0 ? "" : metricUnit.substring(blank);
        return find(metricUnit).map(unit -> unit.symbol() + rest).orElse(metricUnit);
    }

    /** Returns how many decimals are shown where the metric value has so many. */
    public int decimals(int metricDecimals, String metricUnit) {
        return find(metricUnit).map(unit -> unit.decimals(metricDecimals)).orElse(metricDecimals);
    }

    /** Returns a value without its unit, as it is shown where the metric one has so many decimals. */
    public String number(double metricValue, int metricDecimals, String metricUnit) {
        int decimals = decimals(metricDecimals, metricUnit);
        return Counted.fixed(value(metricValue, metricUnit), decimals);
    }

    /** Returns a value with its unit, as it is shown where the metric one has so many decimals. */
    public String words(double metricValue, int metricDecimals, String metricUnit) {
        return number(metricValue, metricDecimals, metricUnit) + " " + unit(metricUnit);
    }

    /** Returns a sentence of our own, without names from the data, with its quantities in these units. */
    public String sentence(String metricSentence) {
        if (this == METRIC) {
            return metricSentence;
        }
        return QUANTITY.matcher(metricSentence)
                .replaceAll(
                        found -> Matcher.quoteReplacement(quantity(found.group(1), found.group(2), found.group(3))));
    }

    private String quantity(String whole, String fraction, String unit) {
        return words(Double.parseDouble(whole.replace(",", "") + fraction), Math.max(0, fraction.length() - 1), unit);
    }

    private Optional<UsUnit> find(String metricUnit) {
        int blank = metricUnit.indexOf(' ');
        return this == METRIC
                ? Optional.empty()
                : UsUnit.findFor(blank < 0 ? metricUnit : metricUnit.substring(0, blank));
    }
}
