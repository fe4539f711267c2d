package org.spanroom.model.effort;

import java.util.Optional;

/**
 * Money over all ranked spans.
 *
 * @param currency of all money, a word for people
 * @param recoveryMoney cost of recovery with all rates at their values
 * @param newBuildMoney cost of new build for the positions that are needed, in the same way
 * @param ranges of these totals, from drawings that all spans share; empty where nothing was simulated
 */
public record MoneyTotals(String currency, double recoveryMoney, double newBuildMoney, Optional<MoneyRanges> ranges) {
    /** Returns what recovery saves in all; negative where new build is cheaper. */
    public double savingMoney() {
        return newBuildMoney - recoveryMoney;
    }
}
