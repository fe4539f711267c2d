package org.spanroom.program.calendar;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Tries orders in a week of a crew beside what it already does there. Leaves the calendar unchanged. Not thread-safe. */
final class WeekTrial {
    private static final double ROUNDING_HOURS = 1e-6;

    private final OrderBook book;
    private final CrewWeeks weeks;
    private final WorkingCalendar calendar;
    private final WeekTiming timing;
    private int[] sequence = new int[16];

    WeekTrial(OrderBook book, CrewWeeks weeks, WorkingCalendar calendar) {
        this.book = book;
        this.weeks = weeks;
        this.calendar = calendar;
        timing = new WeekTiming(book, weeks);
    }

    /** Returns whether an order takes more hours than a usual week of a crew has. */
    boolean isLong(int crew, int order) {
        return book.siteHours(order) > weeks.usualWeekHours(crew) + WeekTiming.ROUNDING_HOURS;
    }

    /**
     * Inserts orders that follow one another into a week, in the order given or the reverse.
     *
     * @return the plan that shares most hours, of equal ones the one that is done soonest; null where they have no room
     */
    @Nullable
    WeekPlan insert(int crew, int week, int... block) {
        WeekPlan old = calendar.plan(crew, week);
        if (!mayHold(crew, week, old, block)) {
            return null;
        }
        WeekPlan best = null;
        for (int at = old.comesIn() ? 1 : 0; at <= old.size(); at++) {
            for (int turn = 0; turn < (block.length > 1 ? 2 : 1); turn++) {
                fill(old, at, turn == 1, block);
                if (timing.run(crew, week, sequence, old.size() + block.length, old.inHours())
                        && timing.outHours() == 0
                        && (best == null || isBetterThan(best))) {
                    best = timing.plan();
                }
            }
        }
        return best;
    }

    private boolean mayHold(int crew, int week, WeekPlan old, int... block) {
        if (old.goesOn() || (!old.isEmpty() && book.isNight(old.orders()[0]) != book.isNight(block[0]))) {
            return false;
        }
        double leastHours = 0;
        double mostSharedHours = 0;
        for (int order : block) {
            if (isLong(crew, order)) {
                return false;
            }
            leastHours += book.siteHours(order) - book.mostSharedHours(order);
            mostSharedHours = Math.max(mostSharedHours, book.mostSharedHours(order));
        }
        // What follows the block in the week may share with its last order.
        return weeks.weekHours(crew, week) - old.usedHours() >= leastHours - mostSharedHours - ROUNDING_HOURS;
    }

    private void fill(WeekPlan old, int at, boolean reversed, int... block) {
        int size = old.size() + block.length;
        if (sequence.length < size) {
            sequence = new int[2 * size];
        }
        System.arraycopy(old.orders(), 0, sequence, 0, at);
        for (int next = 0; next < block.length; next++) {
            sequence[at + next] = block[reversed ? block.length - 1 - next : next];
        }
        System.arraycopy(old.orders(), at, sequence, at + block.length, old.size() - at);
    }

    private boolean isBetterThan(WeekPlan other) {
        double gainHours = timing.allSharedHours() - other.allSharedHours();
        return gainHours > ROUNDING_HOURS || (gainHours >= -ROUNDING_HOURS && timing.doneDays() < other.doneDays());
    }

    /** Begins an order of more than a week at the start of a week; returns the plans from that week on, none where there is no room. */
    List<WeekPlan> longWork(int crew, int week, int order) {
        var plans = new ArrayList<WeekPlan>();
        double leftHours = 0;
        for (int next = week; next < weeks.weeks(); next++) {
            WeekPlan old = calendar.plan(crew, next);
            if (old.comesIn()
                    || old.goesOn()
                    || (!old.isEmpty() && book.isNight(old.orders()[0]) != book.isNight(order))) {
                return List.of();
            }
            fill(old, 0, false, order);
            if (!timing.run(crew, next, sequence, old.size() + 1, leftHours)) {
                return List.of();
            }
            plans.add(timing.plan());
            leftHours = timing.outHours();
            if (leftHours == 0) {
                return plans;
            }
        }
        return List.of();
    }
}
