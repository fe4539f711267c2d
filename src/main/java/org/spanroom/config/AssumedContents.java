package org.spanroom.config;

import java.util.EnumMap;
import org.spanroom.model.Term;
import org.spanroom.model.network.ScenarioSettings;

/**
 * Keeps the two places of one value the same: the counts that are used where none is recorded are those of the typical scenario. A
 * count that the section {@code assumed} names goes before the scenario's.
 */
final class AssumedContents {
    private AssumedContents() {}

    /** Returns the assumed values with the typical counts among them, where the scenarios are requested. */
    static AssumedValues assumed(AssumedValues assumed, ScenarioSettings scenarios) {
        if (!scenarios.assumeContents()) {
            return assumed;
        }
        var numbers = new EnumMap<Term, Double>(Term.class);
        numbers.put(Term.INNERDUCT_COUNT, (double) scenarios.typical().innerductCount());
        numbers.put(Term.CABLE_COUNT, (double) scenarios.typical().cableCount());
        numbers.putAll(assumed.numbers());
        return new AssumedValues(numbers, assumed.words());
    }

    /** Returns the scenarios with the assumed counts as the typical ones. */
    static ScenarioSettings scenarios(AssumedValues assumed, ScenarioSettings scenarios) {
        double innerducts = assumed.findNumber(Term.INNERDUCT_COUNT)
                .orElse(scenarios.typical().innerductCount());
        double cables =
                assumed.findNumber(Term.CABLE_COUNT).orElse(scenarios.typical().cableCount());
        return scenarios.around((int) innerducts, (int) cables);
    }
}
