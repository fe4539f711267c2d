package org.spanroom.model.effort;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Money over all ranked spans.
 *
 * @param currency of all money, a word for people
 * @param recoveryMoney cost of recovery with all rates at their values
 * @param newBuildMoney cost of new build for the positions that are needed, in the same way
 * @param sharedBuildMoney the same where one trench or bore serves all ranked spans of a section; empty where it was not calculated
 * @param ranges of these totals, from drawings that all spans share; empty where nothing was simulated
 */
public record MoneyTotals(
        String currency,
        double recoveryMoney,
        double newBuildMoney,
        OptionalDouble sharedBuildMoney,
        Optional<MoneyRanges> ranges) {
    /** Returns these totals with what new build costs where the spans of a section share a trench or bore. */
    public MoneyTotals withSharedBuild(double money) {
        return new MoneyTotals(currency, recoveryMoney, newBuildMoney, OptionalDouble.of(money), ranges);
    }

    /** Returns what recovery saves in all; negative where new build is cheaper. */
    public double savingMoney() {
        return newBuildMoney - recoveryMoney;
    }
}
