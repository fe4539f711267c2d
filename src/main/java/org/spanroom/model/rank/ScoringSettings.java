package org.spanroom.model.rank;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.spanroom.model.Check;

/**
 * Which spans are ranked and how they are scored: gates that exclude, and for each criterion a weight and a curve from its
 * absolute quantity to a value from 0 to 1.
 *
 * <p>Weights need not add up to anything: each is relative to their sum. Because a span's value depends on nothing
 * but its own quantity, adding or removing a third span never changes the order of two. The shipped weights and curves are
 * illustrative: an owner sets them to what the owner values.
 *
 * @param criteria by the criterion's key, as the ranking names it
 * @param gates whether each reason excludes, by its key, as the ranking names it; one that is left out does
 * @param unknownConsentExcludes whether a consent that is not recorded is treated as one that is missing
 * @param hardVaultKinds kinds of vaults that are hard to work in; case is ignored
 * @param hardVaultSurfaces surfaces of a vault's cover that are hard to work on; case is ignored
 * @param knowledge what counts towards how well a span is known
 */
public record ScoringSettings(
        Map<String, Criterion> criteria,
        Map<String, Boolean> gates,
        boolean unknownConsentExcludes,
        List<String> hardVaultKinds,
        List<String> hardVaultSurfaces,
        KnowledgeSettings knowledge) {
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
}
