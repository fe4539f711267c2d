package org.spanroom.model.rank;

/**
 * What a program of work needs of a span in addition to its assessment.
 *
 * @param newDuct what further ducts on the same path would cost
 * @param feasibleDraws in which of the first 64 samples of the simulation recovery works: bit {@code i} is set if it does in sample
 *     {@code i}; 0 where nothing was simulated, or recovery is excluded for good
 */
public record SpanOffer(NewDuctCost newDuct, long feasibleDraws) {
    /**
     * What new ducts on the path of a span would cost, with their sleeves, permits and engineering, with all rates at their values.
     *
     * @param positions cables that each of them takes
     * @param firstMoney cost of the first, with its trench or bore
     * @param furtherMoney cost of each additional one in the same trench or bore
     */
    public record NewDuctCost(int positions, double firstMoney, double furtherMoney) {}
}
