package org.spanroom.effort;

/**
 * Fills shifts with work in its order: what can be broken off goes on in the next shift, what cannot goes into the first shift that
 * holds it whole.
 *
 * <p>This is next-fit packing, which is monotone: no piece of work can grow and the number of shifts fall.
 */
final class ShiftFill {
    static final double TOLERANCE_HOURS = 1e-9;

    private final double usableHours;
    private int shifts = 1;
    private double usedHours;

    ShiftFill(double usableHours) {
        this.usableHours = usableHours;
    }

    /** Adds work that can be broken off when the shift ends. */
    void broken(double hours) {
        usedHours += hours;
        if (usedHours > usableHours + TOLERANCE_HOURS) {
            int full = (int) Math.ceil((usedHours - TOLERANCE_HOURS) / usableHours) - 1;
            shifts += full;
            usedHours -= full * usableHours;
        }
    }

    /** Adds work that must be done in one go; more of it than a shift has continues in the next anyway. */
    void whole(double hours) {
        boolean fits = usedHours + hours <= usableHours + TOLERANCE_HOURS;
        if (!fits && usedHours > 0) {
            shifts++;
            usedHours = 0;
        }
        broken(hours);
    }

    int shifts() {
        return shifts;
    }
}
