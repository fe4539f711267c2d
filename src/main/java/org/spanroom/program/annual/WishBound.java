package org.spanroom.program.annual;

import java.util.List;
import java.util.function.BooleanSupplier;
import org.spanroom.program.bound.BoundSettings;
import org.spanroom.program.bound.DesignBound;
import org.spanroom.program.design.DesignProblem;
import org.spanroom.program.design.Spread;

/**
 * What no plan of a problem with connections can be worth more than, whichever ways the connections take and in whichever years the work is done.
 *
 * <p>Limits are priced, after which each year is a design problem of its own, see {@link PricedYears}; a lower bound on its cost bounds the value from above.
 *
 * @param value the bound; negative infinite where no plan serves and does all that it must, as {@code areMustsRequired} says
 * @param areMustsRequired whether it is over plans that do all tasks and serve all wishes that they must only; if not, over all plans
 * @param isWhole whether {@code stop} did not end the work
 */
public record WishBound(double value, boolean areMustsRequired, boolean isWhole) {
    private static final double ROUNDING_RATIO = 1e-9;

    /**
     * Calculates the bound at given prices.
     *
     * @param knownMoney of each year of the problem, cost of a known design of its problem, or infinite
     * @param steps most steps on each year's bound, or -1 for as many as its size asks for
     */
    static WishBound of(
            PricedYears years,
            List<Double> knownMoney,
            int steps,
            boolean areMustsRequired,
            boolean hasLibrary,
            Spread spread,
            BooleanSupplier stop) {
        double value = years.constant();
        double amount = Math.abs(value);
        boolean isWhole = true;
        for (int year = 0; year < knownMoney.size() && value > Double.NEGATIVE_INFINITY; year++) {
            DesignProblem design = years.design(year);
            double prizes = years.prizes(year);
            amount += prizes;
            if (design.demands().isEmpty()) {
                value += prizes;
                continue;
            }
            BoundSettings settings = BoundSettings.quick(design);
            DesignBound bound = DesignBound.of(
                    design,
                    steps < 0 ? settings : settings.withSteps(steps),
                    knownMoney.get(year),
                    hasLibrary,
                    spread,
                    stop);
            isWhole &= bound.isWhole();
            value += prizes - Math.max(0, bound.money());
        }
        double rounding = Double.isInfinite(value) ? 0 : ROUNDING_RATIO * amount;
        return new WishBound(value + rounding, areMustsRequired, isWhole);
    }
}
