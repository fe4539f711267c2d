package org.spanroom.model;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Which spans are ranked and how they are scored: gates that exclude, and for each criterion a weight and a curve from its
 * absolute quantity to a value from 0 to 1.
 *
 * <p>Weights need not add up to anything: each counts as its share of their sum. Because a span's value depends on nothing
 * but its own quantity, adding or removing a third span never changes the order of two. The shipped weights and curves are
 * illustrative: an owner sets them to what the owner values.
 *
 * @param criteria by the criterion's key, as the ranking names it
 * @param gates whether each reason excludes, by its key, as the ranking names it; one that is left out does
 * @param unknownConsentExcludes whether a consent that is not recorded counts as one that is missing
 * @param hardVaultKinds kinds of vaults that are hard to work in; upper and lower case are alike
 * @param hardVaultSurfaces surfaces of a vault's cover that are hard to work on, likewise
 * @param knowledge what counts towards how well a span is known
 */
public record ScoringSettings(
        Map<String, Criterion> criteria,
        Map<String, Boolean> gates,
        boolean unknownConsentExcludes,
        List<String> hardVaultKinds,
        List<String> hardVaultSurfaces,
        KnowledgeSettings knowledge) {
    /** Illustrative: where a crew or the pulling gear finds little space. */
    private static final List<String> HARD_KINDS = List.of("handhole", "pull box");

    /** Illustrative: where traffic must be kept away. */
    private static final List<String> HARD_SURFACES = List.of("roadway", "street", "carriageway");

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
        gates = Collections.unmodifiableMap(new TreeMap<>(gates));
        hardVaultKinds = List.copyOf(hardVaultKinds);
        hardVaultSurfaces = List.copyOf(hardVaultSurfaces);
    }

    /** Scoring by the given criteria, with all else as shipped. */
    public ScoringSettings(Map<String, Criterion> criteria) {
        this(criteria, shippedGates(), false, HARD_KINDS, HARD_SURFACES, KnowledgeSettings.defaults());
    }

    /** Returns whether a reason excludes. */
    public boolean excludes(String reason) {
        return gates.getOrDefault(reason, true);
    }

    /** Returns these settings with some gates switched. */
    public ScoringSettings withGates(Map<String, Boolean> others) {
        var switched = new TreeMap<>(gates);
        switched.putAll(others);
        return new ScoringSettings(
                criteria, switched, unknownConsentExcludes, hardVaultKinds, hardVaultSurfaces, knowledge);
    }

    /** Returns the shipped, illustrative scoring. */
    public static ScoringSettings defaults() {
        var criteria = new TreeMap<String, Criterion>();
        criteria.put("room_gained", criterion(0.30, List.of(0.0, 0.0, 3.0, 0.5, 6.0, 0.8, 9.0, 1.0)));
        criteria.put("shortage", criterion(0.10, List.of(0.0, 1.0, 1.0, 0.5, 3.0, 0.0)));
        criteria.put("ease_pull", criterion(0.20, List.of(0.0, 1.0, 60.0, 0.8, 90.0, 0.4, 100.0, 0.1, 150.0, 0.0)));
        criteria.put("ease_bends", criterion(0.05, List.of(0.0, 1.0, 90.0, 0.7, 180.0, 0.3, 360.0, 0.0)));
        criteria.put("ease_water", criterion(0.05, List.of(0.0, 1.0, 1.0, 0.5, 3.0, 0.0)));
        criteria.put("ease_access", criterion(0.05, List.of(0.0, 1.0, 2.0, 0.5, 4.0, 0.0)));
        criteria.put("saving", criterion(0.15, List.of(0.0, 0.0, 1.0, 0.4, 4.0, 0.8, 10.0, 1.0)));
        criteria.put("permits_avoided", criterion(0.05, List.of(0.0, 0.0, 1.0, 0.4, 4.0, 1.0)));
        criteria.put("knowledge", criterion(0.05, List.of(0.0, 0.0, 50.0, 0.3, 100.0, 1.0)));
        criteria.put("length", criterion(0, List.of(0.0, 0.0, 60.0, 0.5, 183.0, 1.0)));
        return new ScoringSettings(criteria);
    }

    /** A pull that fails on paper is no reason by itself: forces are uncertain by a factor of two. */
    private static Map<String, Boolean> shippedGates() {
        var gates = new TreeMap<String, Boolean>();
        List.of(
                        "contents_unknown",
                        "no_innerduct",
                        "no_outer_duct",
                        "duct_collapsed",
                        "duct_blocked",
                        "innerduct_fixed",
                        "splice_inside",
                        "no_cable_hold",
                        "service_unknown",
                        "all_cables_dead",
                        "owner_consent_missing",
                        "loose_cable_forbidden",
                        "empty_duct_in_bank",
                        "no_room_gained")
                .forEach(reason -> gates.put(reason, true));
        gates.put("pull_fails", false);
        return gates;
    }

    private static Criterion criterion(double weightRatio, List<Double> quantitiesAndValues) {
        var curve = new TreeMap<Double, Double>();
        for (int i = 0; i < quantitiesAndValues.size(); i += 2) {
            curve.put(quantitiesAndValues.get(i), quantitiesAndValues.get(i + 1));
        }
        return new Criterion(weightRatio, curve);
    }
}
