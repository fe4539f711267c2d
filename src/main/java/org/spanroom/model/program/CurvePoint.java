package org.spanroom.model.program;

import java.util.OptionalDouble;

/**
 * What a budget buys.
 *
 * @param budgetRatio the budget over that of the program
 * @param budgetMoney the budget of all years together
 * @param spentMoney what of it the year plan spends
 * @param positions positions that its spans add
 * @param connections how many connections it serves
 * @param valueMoney what it is worth
 * @param boundMoney what no plan of that budget can be worth more than; empty where it was not calculated
 * @param marginalMoneyPerPosition additional money for each additional position, from the point before; empty where none is added
 */
public record CurvePoint(
        double budgetRatio,
        double budgetMoney,
        double spentMoney,
        int positions,
        int connections,
        double valueMoney,
        OptionalDouble boundMoney,
        OptionalDouble marginalMoneyPerPosition) {}
