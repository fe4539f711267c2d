package org.spanroom.program.annual;

import java.util.List;
import java.util.Optional;

/**
 * A program of years, and what none can be worth more than.
 *
 * @param plan the best plan that was found; empty where tasks that have to be done are short of something
 * @param bound no plan is worth more; negative infinity where it is proven that there is none
 * @param shortages why there is no plan, or which connections that have to be served it does not serve
 * @param iterations how many were done, of all starts
 * @param isWhole whether {@code stop} ended nothing; if it did, another run may find another plan
 */
public record AnnualResult(
        Optional<YearPlan> plan, double bound, List<Shortage> shortages, long iterations, boolean isWhole) {
    public AnnualResult {
        shortages = List.copyOf(shortages);
    }

    static AnnualResult impossible(List<Shortage> shortages, long iterations, boolean isWhole) {
        return new AnnualResult(Optional.empty(), Double.NEGATIVE_INFINITY, shortages, iterations, isWhole);
    }

    /** Returns by how much the bound is above the plan's value, as a share of the bound; infinite without a plan. */
    public double gapRatio() {
        return plan.map(found -> bound <= found.value() ? 0 : (bound - found.value()) / Math.abs(bound))
                .orElse(Double.POSITIVE_INFINITY);
    }
}
