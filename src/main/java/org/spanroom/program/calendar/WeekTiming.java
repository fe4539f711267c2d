package org.spanroom.program.calendar;

import java.util.Arrays;

/**
 * Puts a sequence of orders into the shifts of one week of a crew, each as early as it can be. Not thread-safe; reusable, results are
 * valid until the next {@link #run}.
 */
final class WeekTiming {
    /** Two times that differ by less are the same. */
    static final double ROUNDING_HOURS = 1e-9;

    private final OrderBook book;
    private final CrewWeeks weeks;
    private int[] orders = new int[0];
    private int[] startShift = new int[0];
    private double[] startHours = new double[0];
    private int[] endShift = new int[0];
    private double[] hours = new double[0];
    private double[] sharedHours = new double[0];
    private int size;
    private double inHours;
    private double outHours;
    private double allSharedHours;
    private long doneDays;
    private long[] shifts = new long[0];
    private double shiftHours;
    private double usualWeekHours;
    private double usedHours;

    WeekTiming(OrderBook book, CrewWeeks weeks) {
        this.book = book;
        this.weeks = weeks;
    }

    /**
     * Times a sequence; returns whether all of it can be done in the week. The last order may go on in the week after if it begins in an
     * earlier week or takes more than a usual week.
     *
     * @param sequence orders, of which the first {@code count} count
     * @param carriedHours hours of the first order that are left from the week before; 0 where it begins in this week
     */
    boolean run(int crew, int week, int[] sequence, int count, double carriedHours) {
        reserve(count);
        System.arraycopy(sequence, 0, orders, 0, count);
        size = count;
        inHours = carriedHours;
        outHours = 0;
        allSharedHours = 0;
        doneDays = 0;
        shifts = weeks.shifts(crew, week);
        shiftHours = weeks.hoursPerShift(crew);
        usualWeekHours = weeks.usualWeekHours(crew);
        usedHours = 0;
        int shift = 0;
        for (int place = 0; place < count; place++) {
            if (outHours > 0 || !place(place, shift)) {
                return false;
            }
            shift = endShift[place];
        }
        return true;
    }

    private void reserve(int count) {
        if (orders.length < count) {
            orders = new int[2 * count];
            startShift = new int[2 * count];
            startHours = new double[2 * count];
            endShift = new int[2 * count];
            hours = new double[2 * count];
            sharedHours = new double[2 * count];
        }
    }

    /** Begins an order in the shift in which the one before ended, or as soon after it as it can be. */
    private boolean place(int place, int shift) {
        boolean comesIn = place == 0 && inHours > 0;
        boolean isLong = comesIn || book.siteHours(orders[place]) > usualWeekHours + ROUNDING_HOURS;
        if (isLong) {
            return place == 0 && tryShift(place, 0, 0, comesIn ? inHours : book.siteHours(orders[0]), true);
        }
        for (int start = shift; start < shifts.length; start++) {
            double before = start == shift ? usedHours : 0;
            if (shiftHours - before <= ROUNDING_HOURS) {
                continue;
            }
            boolean follows = place > 0 && start == shift;
            double saved = follows ? book.sharedHours(orders[place - 1], orders[place]) : 0;
            if (tryShift(place, start, before, book.siteHours(orders[place]) - saved, false)) {
                sharedHours[place] = saved;
                allSharedHours += saved;
                return true;
            }
        }
        return false;
    }

    private boolean tryShift(int place, int start, double before, double takesHours, boolean mayGoOn) {
        int order = orders[place];
        double left = takesHours;
        double used = before;
        int shift = start;
        while (shift < shifts.length && book.isOpen(order, shifts[shift])) {
            if (left <= shiftHours - used + ROUNDING_HOURS) {
                set(place, start, before, shift, takesHours);
                usedHours = used + left;
                doneDays += shifts[shift] - book.yearStart(order);
                return true;
            }
            left -= shiftHours - used;
            used = 0;
            shift++;
        }
        if (!mayGoOn || shift < shifts.length || shift == 0) {
            return false;
        }
        set(place, start, before, shift - 1, takesHours - left);
        usedHours = shiftHours;
        outHours = left;
        return true;
    }

    private void set(int place, int start, double before, int end, double takesHours) {
        startShift[place] = start;
        startHours[place] = before;
        endShift[place] = end;
        hours[place] = takesHours;
        sharedHours[place] = 0;
    }

    /** Returns the hours that all orders of the sequence share with the one before. */
    double allSharedHours() {
        return allSharedHours;
    }

    /** Returns the sum of the days from the start of an order's year to its last day, of all orders that end in the week. */
    long doneDays() {
        return doneDays;
    }

    double outHours() {
        return outHours;
    }

    /** Returns the sequence with its times. */
    WeekPlan plan() {
        return new WeekPlan(
                Arrays.copyOf(orders, size),
                Arrays.copyOf(startShift, size),
                Arrays.copyOf(startHours, size),
                Arrays.copyOf(endShift, size),
                Arrays.copyOf(hours, size),
                Arrays.copyOf(sharedHours, size),
                inHours,
                outHours,
                allSharedHours,
                doneDays);
    }
}
