package org.spanroom.config;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import org.spanroom.model.Term;

/**
 * The range in which each quantity is believed; a value outside is more likely in a wrong unit than true.
 *
 * @param least by term, in the unit that is kept: mm, m, kg/m, m3, or a bare number
 * @param most likewise
 */
public record PlausibleRanges(Map<Term, Double> least, Map<Term, Double> most) {
    public PlausibleRanges {
        least = sorted(least);
        most = sorted(most);
        for (Map.Entry<Term, Double> entry : least.entrySet()) {
            Double upper = most.get(entry.getKey());
            if (upper != null && upper < entry.getValue()) {
                throw new IllegalArgumentException(
                        entry.getKey().key() + ": least " + entry.getValue() + " is more than most " + upper);
            }
        }
    }

    /** Returns the shipped ranges, wide enough for every size that standards list; our judgement. */
    public static PlausibleRanges defaults() {
        var least = new EnumMap<Term, Double>(Term.class);
        var most = new EnumMap<Term, Double>(Term.class);
        Object[][] table = {
            {Term.INSIDE_DIAMETER, 20.0, 500.0},
            {Term.INNERDUCT_COUNT, 0.0, 40.0},
            {Term.INNERDUCT_OUTSIDE_DIAMETER, 8.0, 130.0},
            {Term.INNERDUCT_SDR, 5.0, 45.0},
            {Term.INNERDUCT_WALL, 0.5, 15.0},
            {Term.CABLE_COUNT, 0.0, 100.0},
            {Term.CABLE_OUTSIDE_DIAMETER, 2.0, 110.0},
            {Term.CABLE_MASS, 0.005, 20.0},
            {Term.YEAR, 1850.0, 2100.0},
            {Term.RECORDED_LENGTH, 0.0, 20_000.0},
            {Term.VAULT_ELEVATION, -450.0, 6000.0},
            {Term.VAULT_VOLUME, 0.05, 500.0},
            {Term.CIRCUITS_AT_RISK, 0.0, 1_000_000.0},
        };
        for (Object[] row : table) {
            least.put((Term) row[0], (Double) row[1]);
            most.put((Term) row[0], (Double) row[2]);
        }
        return new PlausibleRanges(least, most);
    }

    /** Returns whether a value, in the unit that is kept, is believed. */
    public boolean contains(Term term, double kept) {
        return kept >= least.getOrDefault(term, Double.NEGATIVE_INFINITY)
                && kept <= most.getOrDefault(term, Double.POSITIVE_INFINITY);
    }

    private static Map<Term, Double> sorted(Map<Term, Double> byTerm) {
        var sorted = new EnumMap<Term, Double>(Term.class);
        sorted.putAll(byTerm);
        return Collections.unmodifiableMap(sorted);
    }
}
