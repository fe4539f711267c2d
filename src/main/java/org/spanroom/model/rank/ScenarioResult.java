package org.spanroom.model.rank;

import org.spanroom.model.network.ContentsScenario;

/**
 * What a run would find if the contents that are not recorded were as one scenario has them.
 *
 * @param name of the scenario: few, typical or many
 * @param main whether the rest of the results rests on this one
 * @param spansAssumed how many of the ranked spans rest on an assumed count
 * @param lengthM of the ranked spans, the length that counts
 * @param positionsGained over the ranked spans
 * @param recoveryMoney with all rates at their values, over the ranked spans
 * @param newBuildMoney with all rates at their values, over the ranked spans
 * @param currency of the money
 */
public record ScenarioResult(
        String name,
        boolean main,
        ContentsScenario scenario,
        long spansRanked,
        long spansAssumed,
        double lengthM,
        long positionsGained,
        double recoveryMoney,
        double newBuildMoney,
        String currency) {
    public double savingMoney() {
        return newBuildMoney - recoveryMoney;
    }
}
