package org.spanroom.model;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * How spans are scored: for each criterion a weight, and a curve from its absolute quantity to a value from 0 to 1.
 *
 * <p>Weights need not add up to anything: each counts as its share of their sum. Because a span's value depends on nothing
 * but its own quantity, adding or removing a third span never changes the order of two. The shipped weights and curves are
 * illustrative: an owner sets them to what the owner values.
 *
 * @param criteria by the criterion's key, as the ranking names it
 */
public record ScoringSettings(Map<String, Criterion> criteria) {
    /**
     * The weight of one criterion, and its curve.
     *
     * @param weightRatio 0 or more; 0 switches the criterion off
     * @param curve quantity to value, read piecewise linearly and held constant beyond both ends
     */
    public record Criterion(double weightRatio, SortedMap<Double, Double> curve) {
        public Criterion {
            Check.notNegative("weightRatio", weightRatio);
            curve = Collections.unmodifiableSortedMap(new TreeMap<>(curve));
            if (curve.isEmpty()) {
                throw new IllegalArgumentException("curve must have at least one point");
            }
            curve.values().forEach(value -> Check.within("curve value", value, 0, 1));
        }
    }

    public ScoringSettings {
        criteria = Collections.unmodifiableMap(new TreeMap<>(criteria));
        if (!(criteria.values().stream().mapToDouble(Criterion::weightRatio).sum() > 0)) {
            throw new IllegalArgumentException("at least one criterion must have a weightRatio above 0");
        }
    }

    /** Returns the shipped, illustrative scoring. */
    public static ScoringSettings defaults() {
        return new ScoringSettings(Map.of(
                "room_gained", criterion(0.5, List.of(0.0, 0.0, 3.0, 0.5, 6.0, 0.8, 9.0, 1.0)),
                "ease", criterion(0.25, List.of(0.0, 1.0, 60.0, 0.8, 100.0, 0.3, 200.0, 0.0)),
                "length", criterion(0.15, List.of(0.0, 0.0, 60.0, 0.5, 183.0, 1.0)),
                "bends", criterion(0.1, List.of(0.0, 1.0, 90.0, 0.7, 180.0, 0.3, 360.0, 0.0))));
    }

    private static Criterion criterion(double weightRatio, List<Double> quantitiesAndValues) {
        var curve = new TreeMap<Double, Double>();
        for (int i = 0; i < quantitiesAndValues.size(); i += 2) {
            curve.put(quantitiesAndValues.get(i), quantitiesAndValues.get(i + 1));
        }
        return new Criterion(weightRatio, curve);
    }
}
