package org.spanroom.model.network;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What ducts may hold whose contents are not recorded: three scenarios instead of one number.
 *
 * @param assumeContents whether the typical counts are used where the data has none; otherwise such contents stay unknown
 * @param typical what the main result of a run rests on
 */
public record ScenarioSettings(
        boolean assumeContents, ContentsScenario few, ContentsScenario typical, ContentsScenario many) {
    private static final double ROUNDING_RATIO = 1e-9;

    public ScenarioSettings {
        demandOrder("innerduct_count", few.innerductCount(), typical.innerductCount(), many.innerductCount());
        demandOrder("cable_count", few.cableCount(), typical.cableCount(), many.cableCount());
        double sumRatio = few.chanceRatio() + typical.chanceRatio() + many.chanceRatio();
        if (Math.abs(sumRatio - 1) > ROUNDING_RATIO) {
            throw new IllegalArgumentException(
                    "the chance_ratio of few, typical and many must add up to 1, was " + sumRatio);
        }
    }

    /** Returns the scenarios by their names, in order. */
    public Map<String, ContentsScenario> byName() {
        var byName = new LinkedHashMap<String, ContentsScenario>();
        byName.put("few", few);
        byName.put("typical", typical);
        byName.put("many", many);
        return Collections.unmodifiableMap(byName);
    }

    /** Returns the same scenarios around other typical counts; few is never more than these and many never less. */
    public ScenarioSettings around(int innerducts, int cables) {
        return new ScenarioSettings(
                assumeContents,
                few.withCounts(Math.min(few.innerductCount(), innerducts), Math.min(few.cableCount(), cables)),
                typical.withCounts(innerducts, cables),
                many.withCounts(Math.max(many.innerductCount(), innerducts), Math.max(many.cableCount(), cables)));
    }

    private static void demandOrder(String what, int few, int typical, int many) {
        if (few > typical || typical > many) {
            throw new IllegalArgumentException("the " + what + " must not decrease from few to typical to many, was "
                    + few + ", " + typical + ", " + many);
        }
    }
}
