package org.spanroom.program.calendar;

import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Finds the best place for orders that follow one another: where the hours shared grow most, of equal places the one after which work is
 * done soonest. Looks at each crew's first week with room and at the weeks of neighbors. Not thread-safe.
 */
final class PlaceFinder {
    private static final double ROUNDING_HOURS = 1e-6;

    private final OrderBook book;
    private final CrewWeeks weeks;
    private final WorkingCalendar calendar;
    private final WeekTrial trial;
    private final boolean keepsDistricts;
    private final SplittableRandom random = new SplittableRandom(1);
    private double skipRatio;
    private @Nullable Place best;

    /** A place that was found: new plans of a crew for weeks that follow one another. */
    private record Place(int crew, int week, List<WeekPlan> plans, double gainHours, long lateDays) {
        boolean isBetterThan(@Nullable Place other) {
            if (other == null || gainHours > other.gainHours + ROUNDING_HOURS) {
                return true;
            }
            return gainHours >= other.gainHours - ROUNDING_HOURS && lateDays < other.lateDays;
        }
    }

    /**
     * Makes a finder for one calendar.
     *
     * @param keepsDistricts whether it keeps the limits of districts; without, it shows whether they are what is decisive
     */
    PlaceFinder(OrderBook book, CrewWeeks weeks, WorkingCalendar calendar, boolean keepsDistricts) {
        this.book = book;
        this.weeks = weeks;
        this.calendar = calendar;
        this.keepsDistricts = keepsDistricts;
        trial = new WeekTrial(book, weeks, calendar);
    }

    /** Passes weeks over at random from now on, so that a search comes to calendars that the best places do not lead to. */
    void skipWeeks(double ratio) {
        skipRatio = ratio;
    }

    /** Places orders one right after the other, in the order given or the reverse; returns whether there is a place for all. */
    boolean place(int... block) {
        Place found = find(block);
        if (found == null) {
            return false;
        }
        for (int next = 0; next < found.plans.size(); next++) {
            calendar.set(found.crew, found.week + next, found.plans.get(next));
        }
        return true;
    }

    /** Returns whether there is a place. */
    boolean hasPlace(int... block) {
        return find(block) != null;
    }

    private @Nullable Place find(int... block) {
        best = null;
        long first = Long.MIN_VALUE;
        long last = Long.MAX_VALUE;
        double innerHours = 0;
        for (int place = 0; place < block.length; place++) {
            first = Math.max(first, book.firstDay(block[place]));
            last = Math.min(last, book.lastDay(block[place]));
            innerHours += place > 0 ? book.sharedHours(block[place - 1], block[place]) : 0;
        }
        if (first > last || weeks.weeks() == 0) {
            return null;
        }
        int firstWeek = Math.max(0, weeks.weekOf(first));
        int lastWeek = Math.min(weeks.weeks() - 1, weeks.weekOf(last));
        for (int crew = 0; crew < weeks.crews(); crew++) {
            if (weeks.crew(crew).works(book.isNight(block[0]))) {
                findSoonest(crew, firstWeek, lastWeek, innerHours, block);
            }
        }
        findBesideNeighbors(firstWeek, lastWeek, block);
        return best;
    }

    /** Tries weeks from the first on until one takes the block with all that it shares inside. */
    private void findSoonest(int crew, int firstWeek, int lastWeek, double innerHours, int... block) {
        for (int week = firstWeek; week <= lastWeek; week++) {
            Place place = skipRatio > 0 && random.nextDouble() < skipRatio ? null : tryWeek(crew, week, block);
            if (place != null && place.isBetterThan(best)) {
                best = place;
            }
            if (place != null && place.gainHours >= innerHours - ROUNDING_HOURS) {
                return;
            }
        }
    }

    private void findBesideNeighbors(int firstWeek, int lastWeek, int... block) {
        var tried = new TreeSet<Integer>();
        for (int order : block) {
            for (int neighbor : book.neighbors(order)) {
                if (calendar.isPlaced(neighbor)) {
                    int crew = calendar.crewOf(neighbor);
                    int week = lastWeekOf(neighbor);
                    if (week >= firstWeek && week <= lastWeek && tried.add(crew * weeks.weeks() + week)) {
                        Place place = tryWeek(crew, week, block);
                        best = place != null && place.isBetterThan(best) ? place : best;
                    }
                }
            }
        }
    }

    private int lastWeekOf(int order) {
        int crew = calendar.crewOf(order);
        int week = calendar.weekOf(order);
        while (goesOnWith(order, calendar.plan(crew, week))) {
            week++;
        }
        return week;
    }

    private static boolean goesOnWith(int order, WeekPlan plan) {
        return plan.goesOn() && plan.orders()[plan.size() - 1] == order;
    }

    private @Nullable Place tryWeek(int crew, int week, int... block) {
        List<WeekPlan> plans;
        if (block.length == 1 && trial.isLong(crew, block[0])) {
            plans = trial.longWork(crew, week, block[0]);
        } else {
            WeekPlan plan = trial.insert(crew, week, block);
            plans = plan == null ? List.of() : List.of(plan);
        }
        if (plans.isEmpty() || (keepsDistricts && !keepsDistricts(week, plans.size(), block))) {
            return null;
        }
        double gainHours = 0;
        long lateDays = 0;
        for (int next = 0; next < plans.size(); next++) {
            WeekPlan old = calendar.plan(crew, week + next);
            gainHours += plans.get(next).allSharedHours() - old.allSharedHours();
            lateDays += plans.get(next).doneDays() - old.doneDays();
        }
        return new Place(crew, week, plans, gainHours, lateDays);
    }

    private boolean keepsDistricts(int week, int duration, int... block) {
        for (int order : block) {
            int district = book.district(order);
            int more = 0;
            for (int other : block) {
                more += book.district(other) == district ? 1 : 0;
            }
            for (int next = week; next < week + duration; next++) {
                if (!calendar.hasRoom(district, next, more)) {
                    return false;
                }
            }
        }
        return true;
    }
}
