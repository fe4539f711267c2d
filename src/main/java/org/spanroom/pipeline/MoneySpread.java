package org.spanroom.pipeline;

import org.spanroom.model.effort.MoneyRange;

/** How far amounts of money spread that have a range, all together: an amount without a range of its own gets one of that width. */
final class MoneySpread {
    private double money;
    private double lowMoney;
    private double likelyMoney;
    private double highMoney;

    /** Adds an amount with all rates at their values, and its range. */
    void add(double amountMoney, MoneyRange range) {
        money += amountMoney;
        lowMoney += range.lowMoney();
        likelyMoney += range.likelyMoney();
        highMoney += range.highMoney();
    }

    /** Returns a range around an amount, as wide for its size as that of the sum; of no width where nothing was added. */
    MoneyRange around(double amountMoney) {
        return money > 0
                ? new MoneyRange(
                        amountMoney * lowMoney / money,
                        amountMoney * likelyMoney / money,
                        amountMoney * highMoney / money)
                : new MoneyRange(amountMoney, amountMoney, amountMoney);
    }
}
