package org.spanroom.model.effort;

import org.spanroom.model.OrderStatistics;

/**
 * An amount of money by percentiles of the draws of the rates.
 *
 * @param lowMoney what it falls short of with the chance that the settings name
 * @param likelyMoney its median: as many drawings are below as above. Most rates can rise farther than they can fall, so it is above
 *     the amount with all rates at their values
 * @param highMoney what it does not exceed with the chance that they name
 */
public record MoneyRange(double lowMoney, double likelyMoney, double highMoney) {
    private static final double LIKELY_RATIO = 0.5;

    /**
     * Returns the range of an amount.
     *
     * @param drawnMoney the amount in each drawing, in any order; at least one
     * @param lowRatio share of the drawings below the low end
     * @param highRatio share of the drawings below the high end
     */
    public static MoneyRange of(double[] drawnMoney, double lowRatio, double highRatio) {
        return of(drawnMoney, lowRatio, highRatio, new OrderStatistics());
    }

    /**
     * Returns the same range.
     *
     * @param by finds the percentiles, of one amount after another
     */
    public static MoneyRange of(double[] drawnMoney, double lowRatio, double highRatio, OrderStatistics by) {
        by.load(drawnMoney);
        return new MoneyRange(by.quantile(lowRatio), by.quantile(LIKELY_RATIO), by.quantile(highRatio));
    }
}
