package org.spanroom.config;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import org.spanroom.model.Term;

/**
 * The range in which each quantity is believed; a value outside is more likely in a wrong unit than true.
 *
 * @param least by term, in the unit that is kept: mm, m, kg/m, m3, or a bare number
 * @param most the largest plausible value, by term
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
