package org.spanroom.program.calendar;

/**
 * What a crew does in one week. Arrays are not to be changed.
 *
 * @param orders by number, in sequence; an order that came in from the week before is the first
 * @param startShift the shift in which each begins (in this week), from 0
 * @param startHours hours of that shift that are used before
 * @param endShift the shift in which each ends (in this week)
 * @param hours that each takes in this week
 * @param sharedHours that each saves by the set-up of the one before it
 * @param inHours hours of the first order that are left from the week before; 0 where it begins in this week
 * @param outHours hours of the last order that are left for the week after
 * @param allSharedHours that its orders save together
 * @param doneDays the sum of the days from the start of an order's year to its last day, of the orders that end in this week
 */
@SuppressWarnings("ArrayRecordComponent") // Inside the search only; never changed or compared.
record WeekPlan(
        int[] orders,
        int[] startShift,
        double[] startHours,
        int[] endShift,
        double[] hours,
        double[] sharedHours,
        double inHours,
        double outHours,
        double allSharedHours,
        long doneDays) {
    static final WeekPlan EMPTY =
            new WeekPlan(new int[0], new int[0], new double[0], new int[0], new double[0], new double[0], 0, 0, 0, 0);

    int size() {
        return orders.length;
    }

    boolean isEmpty() {
        return orders.length == 0;
    }

    /** Returns whether its first order began in a week before. */
    boolean comesIn() {
        return inHours > 0;
    }

    /** Returns whether its last order goes on in the week after. */
    boolean goesOn() {
        return outHours > 0;
    }

    double usedHours() {
        double sum = 0;
        for (double each : hours) {
            sum += each;
        }
        return sum;
    }
}
