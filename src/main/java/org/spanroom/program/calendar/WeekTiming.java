package org.spanroom.program.calendar;

import java.util.Arrays;

/**
 * Puts a sequence of orders into the shifts of one week of a crew, each as early as it can be. Orders wait only for one behind them that
 * shares set-ups with them then. Not thread-safe; reusable, results are valid until the next {@link #run}.
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
    private double[] usedHours = new double[0];
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
    private int[] earliestShift = new int[0];
    private boolean hasWaited;

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
        shifts = weeks.shifts(crew, week);
        shiftHours = weeks.shiftHours(crew);
        usualWeekHours = weeks.usualWeekHours(crew);
        // Waiting so that set-ups are shared can take time that the orders behind need.
        if (!placeAll(true) && (!hasWaited || !placeAll(false))) {
            return false;
        }
        sumUp();
        return true;
    }

    private boolean placeAll(boolean mayWait) {
        hasWaited = false;
        outHours = 0;
        Arrays.fill(earliestShift, 0, size, 0);
        for (int place = 0; place < size; place++) {
            if (!placeFrom(place, place)) {
                return false;
            }
            if (mayWait && place > 0 && startShift[place] > endShift[place - 1]) {
                letWait(place);
            }
        }
        return true;
    }

    /** Begins orders, each in the shift in which the one before ended, or as soon after it as it can be. */
    private boolean placeFrom(int first, int last) {
        for (int place = first; place <= last; place++) {
            int shift = place == 0 ? 0 : endShift[place - 1];
            if (outHours > 0 || !place(place, Math.max(shift, earliestShift[place]))) {
                return false;
            }
        }
        return true;
    }

    /** Lets the orders that share set-ups before this one wait until this one can follow them, where it shares with them then. */
    private void letWait(int place) {
        if (book.sharedHours(orders[place - 1], orders[place]) <= 0) {
            return;
        }
        int first = place - 1;
        while (sharedHours[first] > 0) {
            first--;
        }
        if (first == 0 && inHours > 0) {
            return;
        }
        int earliestBefore = earliestShift[first];
        double sharedBefore = sharedOf(first, place);
        for (int shift = startShift[first] + 1; shift <= startShift[place]; shift++) {
            earliestShift[first] = shift;
            if (placeFrom(first, place) && sharedOf(first, place) > sharedBefore + ROUNDING_HOURS) {
                hasWaited = true;
                return;
            }
        }
        earliestShift[first] = earliestBefore;
        placeFrom(first, place);
    }

    private double sharedOf(int first, int last) {
        double sum = 0;
        for (int place = first; place <= last; place++) {
            sum += sharedHours[place];
        }
        return sum;
    }

    private void sumUp() {
        allSharedHours = sharedOf(0, size - 1);
        doneDays = 0;
        for (int place = 0; place < (outHours > 0 ? size - 1 : size); place++) {
            doneDays += shifts[endShift[place]] - book.yearStart(orders[place]);
        }
    }

    private void reserve(int count) {
        if (orders.length < count) {
            orders = new int[2 * count];
            earliestShift = new int[2 * count];
            startShift = new int[2 * count];
            startHours = new double[2 * count];
            endShift = new int[2 * count];
            usedHours = new double[2 * count];
            hours = new double[2 * count];
            sharedHours = new double[2 * count];
        }
    }

    private boolean place(int place, int shift) {
        boolean comesIn = place == 0 && inHours > 0;
        boolean isLong = comesIn || book.siteHours(orders[place]) > usualWeekHours + ROUNDING_HOURS;
        if (isLong) {
            return place == 0 && tryShift(place, 0, 0, comesIn ? inHours : book.siteHours(orders[0]), true);
        }
        for (int start = shift; start < shifts.length; start++) {
            boolean isSameShift = place > 0 && start == endShift[place - 1];
            double before = isSameShift ? usedHours[place - 1] : 0;
            if (shiftHours - before <= ROUNDING_HOURS) {
                continue;
            }
            double saved = isSameShift ? book.sharedHours(orders[place - 1], orders[place]) : 0;
            double takes = book.siteHours(orders[place]) - saved;
            if (!fitsBeside(before, takes)) {
                continue;
            }
            if (tryShift(place, start, before, takes, false)) {
                sharedHours[place] = saved;
                return true;
            }
        }
        return false;
    }

    /**
     * Returns whether work may begin after other work in its shift. It may if it ends in this shift: hours on site count the daily set-up of each shift that the
     * work takes by itself, and work that went on overnight would have to be set up once more.
     */
    private boolean fitsBeside(double beforeHours, double takesHours) {
        return beforeHours <= 0 || takesHours <= shiftHours - beforeHours + ROUNDING_HOURS;
    }

    private boolean tryShift(int place, int start, double before, double takesHours, boolean mayGoOn) {
        int order = orders[place];
        double left = takesHours;
        double used = before;
        int shift = start;
        while (shift < shifts.length && book.isOpen(order, shifts[shift])) {
            if (left <= shiftHours - used + ROUNDING_HOURS) {
                set(place, start, before, shift, takesHours);
                usedHours[place] = used + left;
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
        usedHours[place] = shiftHours;
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
