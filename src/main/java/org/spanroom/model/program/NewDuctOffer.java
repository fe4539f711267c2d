package org.spanroom.model.program;

/**
 * What further ducts on the path of a section would cost.
 *
 * @param positions cables that each of them takes; 0 where none can be priced
 * @param first cost of the first, with its trench or bore
 * @param further cost of each one after it
 * @param leadDays days until its permits are issued
 */
public record NewDuctOffer(int positions, Costs first, Costs further, int leadDays) {}
