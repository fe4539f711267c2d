package org.spanroom.input.fieldbook;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.spanroom.input.layer.SourceNumber;
import org.spanroom.model.fieldwork.FactUnit;

/**
 * A number as a crew writes it, with a unit behind it or without: 41.5, 41,5, 1-1/4 in, 180 lbf.
 *
 * @param unit the unit behind the number
 */
record FactNumber(double inUnit, Optional<FactUnit> unit) {
    /** Other ways of writing units, in lower case. */
    private static final Map<String, FactUnit> SPELLINGS = Map.ofEntries(
            Map.entry("\"", FactUnit.IN),
            Map.entry("''", FactUnit.IN),
            Map.entry("\u2033", FactUnit.IN),
            Map.entry("\u201d", FactUnit.IN),
            Map.entry("inch", FactUnit.IN),
            Map.entry("inches", FactUnit.IN),
            Map.entry("in.", FactUnit.IN),
            Map.entry("'", FactUnit.FT),
            Map.entry("\u2032", FactUnit.FT),
            Map.entry("\u2019", FactUnit.FT),
            Map.entry("feet", FactUnit.FT),
            Map.entry("foot", FactUnit.FT),
            Map.entry("ft.", FactUnit.FT),
            Map.entry("lbs", FactUnit.LB),
            Map.entry("lb.", FactUnit.LB),
            Map.entry("hours", FactUnit.H),
            Map.entry("hour", FactUnit.H),
            Map.entry("hrs", FactUnit.H),
            Map.entry("hr", FactUnit.H),
            Map.entry("minutes", FactUnit.MIN),
            Map.entry("percent", FactUnit.PERCENT),
            Map.entry("gallons", FactUnit.GAL),
            Map.entry("m\u00b3", FactUnit.M3),
            Map.entry("ft\u00b3", FactUnit.FT3));

    private static final List<String> LONGEST_FIRST = Stream.concat(
                    Arrays.stream(FactUnit.values()).map(FactNumber::symbol), SPELLINGS.keySet().stream())
            .filter(spelling -> !spelling.isEmpty())
            .distinct()
            .sorted(Comparator.comparingInt(String::length).reversed().thenComparing(Comparator.naturalOrder()))
            .toList();

    /** Reads a text; empty if it is not a number, or one that could mean two things. */
    static Optional<FactNumber> parse(String text) {
        String wanted = text.strip().toLowerCase(Locale.ROOT);
        Optional<Double> alone = bare(wanted);
        if (alone.isPresent()) {
            return alone.map(number -> new FactNumber(number, Optional.empty()));
        }
        for (String spelling : LONGEST_FIRST) {
            if (wanted.endsWith(spelling)) {
                Optional<FactNumber> number = bare(wanted.substring(0, wanted.length() - spelling.length()))
                        .map(bare -> new FactNumber(bare, findUnit(spelling)));
                if (number.isPresent()) {
                    return number;
                }
            }
        }
        return Optional.empty();
    }

    /** Returns the number in another unit where it has none of its own. */
    FactNumber orIn(Optional<FactUnit> other) {
        return unit.isPresent() ? this : new FactNumber(inUnit, other);
    }

    /** Finds a unit by its symbol or another way of writing it. */
    static Optional<FactUnit> findUnit(String text) {
        String wanted = text.strip().toLowerCase(Locale.ROOT);
        return Optional.ofNullable(SPELLINGS.get(wanted)).or(() -> FactUnit.find(wanted));
    }

    private static Optional<Double> bare(String text) {
        return SourceNumber.parse(text)
                .filter(number -> number.unit().isEmpty())
                .map(SourceNumber::inUnit);
    }

    private static String symbol(FactUnit unit) {
        return unit.symbol().toLowerCase(Locale.ROOT);
    }
}
