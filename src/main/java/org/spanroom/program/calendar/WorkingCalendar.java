package org.spanroom.program.calendar;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.spanroom.model.program.CalendarRules;

/**
 * A calendar that is being put together: what each crew does in each week, where each order is, and how many of a district are in work.
 * Changes can be taken back up to the last {@link #accept}. Not thread-safe.
 */
final class WorkingCalendar {
    private static final int NOWHERE = -1;

    private final OrderBook book;
    private final WeekTiming timing;
    private final WeekPlan[][] plans;
    private final int[] crewOf;
    private final int[] weekOf;
    private final int[][] inWork;
    private final int[] mostInWork;
    private final List<Change> changes = new ArrayList<>();
    private Merit merit = new Merit(0, 0, 0);
    private Merit acceptedMerit = merit;

    private record Change(int crew, int week, WeekPlan before) {}

    WorkingCalendar(OrderBook book, CrewWeeks weeks, CalendarRules rules) {
        this.book = book;
        timing = new WeekTiming(book, weeks);
        plans = new WeekPlan[weeks.crews()][weeks.weeks()];
        for (WeekPlan[] each : plans) {
            Arrays.fill(each, WeekPlan.EMPTY);
        }
        crewOf = new int[book.size()];
        weekOf = new int[book.size()];
        Arrays.fill(crewOf, NOWHERE);
        Arrays.fill(weekOf, NOWHERE);
        inWork = new int[book.districts().size()][weeks.weeks()];
        mostInWork = book.districts().stream()
                .mapToInt(name -> rules.mostInWork().getOrDefault(name, Integer.MAX_VALUE))
                .toArray();
    }

    WeekPlan plan(int crew, int week) {
        return plans[crew][week];
    }

    boolean isPlaced(int order) {
        return crewOf[order] != NOWHERE;
    }

    int crewOf(int order) {
        return crewOf[order];
    }

    /** Returns the week in which an order begins. */
    int weekOf(int order) {
        return weekOf[order];
    }

    Merit merit() {
        return merit;
    }

    /** Returns whether so many other orders of a district may be in work in a week; true where the district has no limit. */
    boolean hasRoom(int district, int week, int more) {
        return district < 0 || inWork[district][week] + more <= mostInWork[district];
    }

    /** Returns the limit of a district. */
    int mostInWork(int district) {
        return mostInWork[district];
    }

    /** Sets what a crew does in a week. */
    void set(int crew, int week, WeekPlan plan) {
        changes.add(new Change(crew, week, plans[crew][week]));
        replace(crew, week, plan);
    }

    private void replace(int crew, int week, WeekPlan plan) {
        count(crew, week, plans[crew][week], -1);
        plans[crew][week] = plan;
        count(crew, week, plan, 1);
    }

    private void count(int crew, int week, WeekPlan plan, int sign) {
        double weight = 0;
        for (int place = 0; place < plan.size(); place++) {
            int order = plan.orders()[place];
            if (book.district(order) >= 0) {
                inWork[book.district(order)][week] += sign;
            }
            if (place > 0 || !plan.comesIn()) {
                weight += book.weight(order);
                crewOf[order] = sign > 0 ? crew : NOWHERE;
                weekOf[order] = sign > 0 ? week : NOWHERE;
            }
        }
        merit = new Merit(
                merit.weight() + sign * weight,
                merit.sharedHours() + sign * plan.allSharedHours(),
                merit.doneDays() + sign * plan.doneDays());
    }

    /** Keeps all changes. */
    void accept() {
        changes.clear();
        acceptedMerit = merit;
    }

    /** Takes all changes since the last {@link #accept} back. */
    void undo() {
        for (int next = changes.size() - 1; next >= 0; next--) {
            Change change = changes.get(next);
            replace(change.crew, change.week, change.before);
        }
        changes.clear();
        merit = acceptedMerit;
    }

    /**
     * Takes orders out. Work behind them moves up; where it cannot, because it loses what it shared or because of a closure, it is taken
     * out as well.
     *
     * @return all that was taken out
     */
    List<Integer> remove(List<Integer> orders) {
        var removed = new ArrayList<Integer>();
        for (int order : orders) {
            if (isPlaced(order)) {
                remove(order, removed);
            }
        }
        return removed;
    }

    private void remove(int order, List<Integer> removed) {
        int crew = crewOf[order];
        int week = weekOf[order];
        boolean goesOn = true;
        removed.add(order);
        while (goesOn) {
            WeekPlan plan = plans[crew][week];
            goesOn = plan.goesOn() && plan.orders()[plan.size() - 1] == order;
            retime(crew, week, plan, order, removed);
            week++;
        }
    }

    private void retime(int crew, int week, WeekPlan plan, int without, List<Integer> removed) {
        int[] kept = new int[plan.size()];
        int count = 0;
        double inHours = plan.comesIn() && plan.orders()[0] != without ? plan.inHours() : 0;
        for (int order : plan.orders()) {
            if (order == without) {
                continue;
            }
            kept[count] = order;
            if (timing.run(crew, week, kept, count + 1, inHours)) {
                count++;
            } else {
                removed.add(order);
            }
        }
        timing.run(crew, week, kept, count, inHours);
        set(crew, week, count == 0 ? WeekPlan.EMPTY : timing.plan());
    }

    /** Returns a copy of all plans. */
    WeekPlan[][] copiedPlans() {
        WeekPlan[][] copy = new WeekPlan[plans.length][];
        for (int crew = 0; crew < plans.length; crew++) {
            copy[crew] = plans[crew].clone();
        }
        return copy;
    }

    /** Sets all plans to those of a copy. */
    void restore(WeekPlan[][] copy) {
        // All are emptied first: an order that is in two plans at a time would lose its place when the older one goes.
        for (int crew = 0; crew < plans.length; crew++) {
            for (int week = 0; week < plans[crew].length; week++) {
                replace(crew, week, WeekPlan.EMPTY);
            }
        }
        merit = new Merit(0, 0, 0);
        for (int crew = 0; crew < plans.length; crew++) {
            for (int week = 0; week < plans[crew].length; week++) {
                replace(crew, week, copy[crew][week]);
            }
        }
        accept();
    }
}
