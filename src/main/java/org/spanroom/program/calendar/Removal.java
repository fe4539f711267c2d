package org.spanroom.program.calendar;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Chooses at random which orders are taken out together, so that they can be placed in another way. */
final class Removal {
    private static final int MOST_TAKEN = 10;
    private static final int MOST_WAITING = 4;

    private final OrderBook book;
    private final CrewWeeks weeks;
    private final WorkingCalendar calendar;
    private final int[] candidates;
    private final SplittableRandom random;

    /**
     * Makes a choice for one calendar.
     *
     * @param candidates the orders that can have a place
     */
    Removal(OrderBook book, CrewWeeks weeks, WorkingCalendar calendar, int[] candidates, SplittableRandom random) {
        this.book = book;
        this.weeks = weeks;
        this.calendar = calendar;
        this.candidates = candidates;
        this.random = random;
    }

    /** Chooses what to take out: an order and neighbors of it and of these, or what a crew does in one week and neighbors of that. */
    List<Integer> chosen(List<Integer> waiting) {
        var chosen = new ArrayList<Integer>();
        int most = 1 + random.nextInt(MOST_TAKEN);
        int start = waiting.isEmpty() || random.nextBoolean()
                ? candidates[random.nextInt(candidates.length)]
                : waiting.get(random.nextInt(waiting.size()));
        chosen.add(start);
        if (random.nextBoolean()) {
            if (calendar.isPlaced(start)) {
                addWeek(calendar.crewOf(start), calendar.weekOf(start), chosen);
            } else {
                addAnyWeek(start, chosen);
            }
        }
        for (int next = 0; next < chosen.size() && chosen.size() < most; next++) {
            int[] neighbors = book.neighbors(chosen.get(next));
            int from = neighbors.length == 0 ? 0 : random.nextInt(neighbors.length);
            for (int step = 0; step < neighbors.length && chosen.size() < most; step++) {
                int neighbor = neighbors[(from + step) % neighbors.length];
                if (!chosen.contains(neighbor)) {
                    chosen.add(neighbor);
                }
            }
        }
        return chosen;
    }

    private void addWeek(int crew, int week, List<Integer> chosen) {
        for (int order : calendar.plan(crew, week).orders()) {
            if (!chosen.contains(order)) {
                chosen.add(order);
            }
        }
    }

    /** Makes room for an order in as many weeks as it takes of a crew that can do it. */
    private void addAnyWeek(int order, List<Integer> chosen) {
        int from = Math.max(
                0, weeks.weekOf(Math.max(book.firstDay(order), weeks.monday(0).toEpochDay())));
        long last = Math.min(book.lastDay(order), weeks.monday(weeks.weeks()).toEpochDay() - 1);
        int until = Math.min(weeks.weeks() - 1, weeks.weekOf(last));
        int crew = random.nextInt(weeks.crews());
        if (from <= until && weeks.crew(crew).works(book.isNight(order))) {
            int week = from + random.nextInt(until - from + 1);
            int duration = (int) Math.ceil(book.siteHours(order) / weeks.usualWeekHours(crew));
            for (int next = week; next < Math.min(week + duration, weeks.weeks()); next++) {
                addWeek(crew, next, chosen);
            }
        }
    }

    /** Returns a few orders that have no place: they may find one now. */
    List<Integer> someWaiting() {
        var waiting = new ArrayList<Integer>();
        int start = random.nextInt(candidates.length);
        for (int step = 0; step < candidates.length && waiting.size() < MOST_WAITING; step++) {
            int order = candidates[(start + step) % candidates.length];
            if (!calendar.isPlaced(order)) {
                waiting.add(order);
            }
        }
        return waiting;
    }
}
