package org.spanroom.model.rank;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.spanroom.model.Check;
import org.spanroom.model.Term;

/**
 * How much each thing that may be recorded of a span counts towards how well the span is known. Weights are relative to their
 * sum.
 *
 * @param terms weight of each term that is recorded rather than assumed
 * @param positionWeightRatio weight of how well the position is known
 * @param positionQualities by the recorded word, case is ignored: 1 for the best; other words are treated as 0
 * @param yearWeightRatio weight of how new the duct and its records are
 * @param years year of installation to a value from 0 to 1, read piecewise linearly; an unrecorded year is treated as 0
 */
public record KnowledgeSettings(
        Map<Term, Double> terms,
        double positionWeightRatio,
        Map<String, Double> positionQualities,
        double yearWeightRatio,
        SortedMap<Double, Double> years) {
    public KnowledgeSettings {
        terms.values().forEach(weight -> Check.notNegative("terms", weight));
        terms = Collections.unmodifiableMap(terms.isEmpty() ? Map.of() : new EnumMap<>(terms));
        Check.notNegative("positionWeightRatio", positionWeightRatio);
        positionQualities.values().forEach(value -> Check.within("positionQualities", value, 0, 1));
        positionQualities = Collections.unmodifiableMap(new TreeMap<>(positionQualities));
        Check.notNegative("yearWeightRatio", yearWeightRatio);
        years.values().forEach(value -> Check.within("years", value, 0, 1));
        years = Collections.unmodifiableSortedMap(new TreeMap<>(years));
        if (years.isEmpty()) {
            throw new IllegalArgumentException("years must have at least one point");
        }
        double sum = positionWeightRatio + yearWeightRatio;
        for (double weight : terms.values()) {
            sum += weight;
        }
        if (!(sum > 0)) {
            throw new IllegalArgumentException("terms, or one of the other weights, must have a weight above 0");
        }
    }
}
