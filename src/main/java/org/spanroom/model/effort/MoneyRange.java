package org.spanroom.model.effort;

import java.util.Arrays;
import org.spanroom.model.Quantile;

/**
 * An amount of money between two percentiles of the drawings of the rates.
 *
 * @param lowMoney what it falls short of with the chance that the settings name
 * @param highMoney what it does not exceed with the chance that they name
 */
public record MoneyRange(double lowMoney, double highMoney) {
    /**
     * Returns the range of an amount.
     *
     * @param drawnMoney the amount in each drawing, in any order; at least one
     * @param lowRatio share of the drawings below the low end
     * @param highRatio share of the drawings below the high end
     */
    public static MoneyRange of(double[] drawnMoney, double lowRatio, double highRatio) {
        double[] sorted = drawnMoney.clone();
        Arrays.sort(sorted);
        return new MoneyRange(Quantile.inUnit(sorted, lowRatio), Quantile.inUnit(sorted, highRatio));
    }
}
