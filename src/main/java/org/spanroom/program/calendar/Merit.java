package org.spanroom.program.calendar;

/**
 * How good a calendar is: by the priority of what is placed; of two equal ones by the hours saved by shared set-ups; then by how soon
 * work is done.
 *
 * @param weight of the orders placed
 * @param sharedHours of all orders placed
 * @param doneDays from the start of its year to the last day of each order placed, summed up
 */
record Merit(double weight, double sharedHours, long doneDays) {
    private static final double ROUNDING_RATIO = 1e-12;
    private static final double ROUNDING_HOURS = 1e-6;

    /** Returns whether it places more than another, with sums in any order; negative where it places less, 0 where the same. */
    int compareWeight(Merit other) {
        double rounding = ROUNDING_RATIO * (1 + Math.abs(weight) + Math.abs(other.weight));
        return Math.abs(weight - other.weight) <= rounding ? 0 : Double.compare(weight, other.weight);
    }

    boolean isBetterThan(Merit other) {
        int byWeight = compareWeight(other);
        if (byWeight != 0) {
            return byWeight > 0;
        }
        if (Math.abs(sharedHours - other.sharedHours) > ROUNDING_HOURS) {
            return sharedHours > other.sharedHours;
        }
        return doneDays < other.doneDays;
    }
}
