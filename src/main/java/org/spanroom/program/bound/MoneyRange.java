package org.spanroom.program.bound;

/**
 * What the cost of a trunk is taken to be in: of all designs, those are looked at in which it is.
 *
 * @param fromMoney least cost, paid for less as well
 * @param belowMoney the cost is below this one
 */
record MoneyRange(double fromMoney, double belowMoney) {
    /** Any cost. */
    static final MoneyRange ALL = new MoneyRange(0, Double.POSITIVE_INFINITY);
}
