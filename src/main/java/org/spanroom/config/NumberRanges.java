package org.spanroom.config;

import static java.util.Map.entry;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.spanroom.config.NumberRange.Sign;
import org.spanroom.model.Term;
import org.spanroom.model.network.Contents;

/**
 * The range of every number of a config, by the unit that its key ends in. A new key has a range by its name alone; a key without a unit
 * is listed by itself, which a test demands.
 *
 * <p>The ranges are our judgment. They are far wider than engineering: from a tenth of what anyone measures to a hundred times of what
 * anyone builds, in any currency. They exist so that a slip of the keyboard, a wrong unit or a damaged file ends in one line at its key:
 * products of numbers inside them are finite, and counts inside them take bounded work and memory. Records check what is narrower, such as a
 * share of at most 1.
 */
final class NumberRanges {
    /** Members of a rate, whose unit is the one of the rate's own name. */
    private static final Set<String> OF_RATES = Set.of("value", "low", "high");

    /** What the key of a map's entry is called. */
    static final String KEY_OF = "a key of ";

    /** Keys that have no unit, or a range of their own. */
    private static final Map<String, NumberRange> BY_KEY = Map.ofEntries(
            // As RunConfig checks it for the command line.
            entry("threads", count(1024)),
            // Any whole number starts a series of random numbers.
            entry("seed", new NumberRange(1, Integer.MAX_VALUE, Sign.ANY, "")),
            entry("samples", from(8, 10_000)),
            entry("top_count", from(1, 1_000_000)),
            entry("prior_spans", from(1, 1_000_000)),
            entry("vaults", count(10_000)),
            // A duct holds tens of cables; a mix of design cables repeats.
            entry("cells_per_sleeve", count(100)),
            entry("cells", count(100)),
            entry("sleeves", count(100)),
            entry("count", count(1_000)),
            entry("fibers", count(100_000)),
            entry("enough_positions", count(10_000)),
            entry("demand_positions", count(10_000)),
            entry("wedged_from_innerducts", count(1_000)),
            // Readers create an object for each innerduct and cable; more are never packed.
            entry("innerduct_count", count(Contents.MOST_THINGS)),
            entry("cable_count", count(Contents.MOST_THINGS)),
            entry("sleeve_cells", count(1_000)),
            entry("cells_reserved", count(1_000)),
            entry("positions_reserved", count(10_000)),
            entry("circuits_at_risk", count(1_000_000_000)),
            entry("least_circuits", count(1_000_000_000)),
            // Years of the calendar, of innerducts and of records.
            entry("year", count(9_999)),
            entry("years", size(1e-6, 9_999, "")),
            entry("from_year", count(9_999)),
            entry("to_year", count(9_999)),
            entry("innerduct_sdr", size(0.1, 1_000, "")),
            entry("shifts_per_week", from(1, 7)),
            // A shift is a part of a day; the calendar's work grows with the number of shifts.
            entry("shift_hours", shift()),
            entry("day_window_hours", shift()),
            entry("night_window_hours", shift()),
            // Of all crews in a year.
            entry("crew_hours", size(1e-4, 1e8, "hours")),
            entry("most_in_work", count(1_000_000)),
            // Quantities of any unit, from differences of money to degrees, and values from 0 to 1.
            entry("curve", new NumberRange(1e-9, 1e12, Sign.ANY, "")),
            entry("position_qualities", size(1e-6, 1, "")),
            // Weights beside one another.
            entry("terms", size(1e-6, 1e6, "")),
            // Of a year in any currency, and of a program.
            entry("money", size(0.01, 1e14, "money")),
            entry("change_money", size(0.01, 1e12, "money")),
            // Shares of a whole, where more than all has no meaning.
            entry("vault_water_ratio", size(1e-6, 1, "")),
            entry("chipping_alongside_ratio", size(1e-6, 1, "")),
            entry("vault_elapsed_ratio", size(1e-6, 1, "")),
            entry("recycled_ratio", size(1e-6, 1, "")),
            entry("least_usable_ratio", size(1e-6, 1, "")),
            entry("planned_ratio", size(1, 100, "")),
            entry("least_stop_ratio", size(1e-6, 1, "")),
            entry("purge_air_changes", size(0.01, 1_000, "air changes")),
            entry("crew_persons", size(0.01, 1_000, "persons")),
            entry("least_permits", size(0.01, 1_000, "permits")),
            entry("boring_pits", size(0.01, 1_000, "pits")),
            entry("new_duct_cables", size(0.01, 10_000, "cables")),
            // From sea floors to mountains.
            entry("vault_elevation", new NumberRange(1e-6, 10_000, Sign.ANY, "m")));

    /** By the last words of a key; the first that fits counts, so a longer unit stands before the one that it ends in. */
    private static final List<Map.Entry<String, NumberRange>> BY_UNIT = List.of(
            entry("money_per_m", size(1e-6, 1e10, "money per m")),
            entry("money_per_m2", size(1e-6, 1e10, "money per m2")),
            entry("money_per_m3", size(1e-6, 1e10, "money per m3")),
            entry("money_per_kg", size(1e-6, 1e10, "money per kg")),
            entry("money_per_liter", size(1e-6, 1e10, "money per liter")),
            entry("money_per_hour", size(1e-6, 1e10, "money per hour")),
            entry("money", size(1e-6, 1e12, "money")),
            entry("m_per_hour", size(0.1, 100_000, "m per hour")),
            entry("m3_per_hour", size(0.01, 1e6, "m3 per hour")),
            entry("kg_per_hour", size(0.01, 1e6, "kg per hour")),
            entry("liters_per_m", size(1e-6, 1_000, "liters per m")),
            entry("kg_per_m", size(1e-6, 10_000, "kg per m")),
            entry("kg_per_m2", size(1e-6, 100_000, "kg per m2")),
            // The densest metal has 22 600.
            entry("kg_per_m3", size(0.1, 25_000, "kg per m3")),
            entry("kg_per_kg", size(1e-6, 10_000, "kg per kg")),
            entry("n_per_m", size(0.001, 1e8, "N per m")),
            entry("rad_per_m", size(1e-9, 10, "rad per m")),
            entry("hours", size(1e-4, 10_000, "hours")),
            // Thirty years.
            entry("days", count(10_000)),
            entry("deg", size(0.001, 100_000, "degrees")),
            entry("points", size(0.001, 100, "points of percent")),
            entry("ratio", size(1e-6, 1e6, "")),
            entry("mpa", size(0.001, 100_000, "MPa")),
            // Thinner than a fabric to wider than a tunnel.
            entry("mm", size(0.01, 10_000, "mm")),
            entry("in2", size(1e-6, 160_000, "in2")),
            entry("in", size(0.0004, 400, "in")),
            entry("m3", size(1e-4, 100_000, "m3")),
            entry("kg", size(0.001, 1e6, "kg")),
            entry("n", size(0.001, 1e8, "N")),
            // Longer than any street.
            entry("m", size(1e-4, 100_000, "m")));

    private NumberRanges() {}

    /**
     * Returns the range of a number.
     *
     * @param key its key; of an entry of a map, that of the map and, after a dot, its own
     * @throws IllegalStateException if the key has neither a unit nor a range of its own, which is a mistake of the program
     */
    static NumberRange of(String key) {
        return find(key).orElseThrow(() -> new IllegalStateException("no range for the number " + key));
    }

    static Optional<NumberRange> find(String key) {
        String name = key.startsWith(KEY_OF) ? key.substring(KEY_OF.length()) : key;
        String[] parts = name.split("\\.", -1);
        // What follows a dot may be a name of the user's own, such as a district; so the map's own key goes first.
        NumberRange ofMap = BY_KEY.get(parts[0]);
        if (ofMap != null) {
            return Optional.of(ofMap);
        }
        boolean isOfRate = parts.length > 1 && isOfRate(parts[parts.length - 1]);
        String last = parts[parts.length - (isOfRate ? 2 : 1)];
        return Optional.ofNullable(BY_KEY.get(last)).or(() -> byUnit(last));
    }

    /** Returns the range of a term's quantity, in the unit that it is kept in. */
    static NumberRange of(Term term) {
        return switch (term.kind()) {
            case DIAMETER -> of("term_mm");
            case MASS_PER_LENGTH -> of("term_kg_per_m");
            case VOLUME -> of("term_m3");
            case LENGTH -> find(term.key()).orElseGet(() -> of("term_m"));
            default -> of(term.key());
        };
    }

    /** Returns whether a key means something only together with the name of its rate. */
    static boolean isOfRate(String key) {
        return OF_RATES.contains(key);
    }

    private static Optional<NumberRange> byUnit(String key) {
        return BY_UNIT.stream()
                .filter(unit -> key.endsWith("_" + unit.getKey()))
                .map(Map.Entry::getValue)
                .findFirst();
    }

    private static NumberRange count(int most) {
        return new NumberRange(1, most, Sign.NOT_NEGATIVE, "");
    }

    private static NumberRange from(int least, int most) {
        return new NumberRange(least, most, Sign.POSITIVE, "");
    }

    private static NumberRange shift() {
        return new NumberRange(0.5, 24, Sign.POSITIVE, "hours");
    }

    private static NumberRange size(double least, double most, String unit) {
        return new NumberRange(least, most, Sign.NOT_NEGATIVE, unit);
    }
}
