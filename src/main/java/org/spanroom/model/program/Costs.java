package org.spanroom.model.program;

import org.spanroom.model.effort.MoneyRange;

/**
 * An amount of money: with all rates at their values, which decisions use, and its range.
 *
 * @param money with all rates at their values
 * @param range percentiles of the draws of the rates; of a sum, the sums of the percentiles: all spans share the rates of a draw, so that
 *     they are low and high together
 */
public record Costs(double money, MoneyRange range) {
    public static final Costs NONE = new Costs(0, new MoneyRange(0, 0, 0));

    /** Returns both together. */
    public Costs plus(Costs other) {
        return new Costs(
                money + other.money,
                new MoneyRange(
                        range.lowMoney() + other.range.lowMoney(),
                        range.likelyMoney() + other.range.likelyMoney(),
                        range.highMoney() + other.range.highMoney()));
    }

    /** Returns so many times the amount. */
    public Costs times(double factor) {
        return new Costs(
                factor * money,
                new MoneyRange(factor * range.lowMoney(), factor * range.likelyMoney(), factor * range.highMoney()));
    }
}
