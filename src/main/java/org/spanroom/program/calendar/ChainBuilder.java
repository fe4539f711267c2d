package org.spanroom.program.calendar;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/**
 * Joins orders into chains in which each shares set-ups with the next one: paths through the graph of orders with common vaults, heaviest
 * savings first. A chain has room in one week, by its hours and by the limits of its districts.
 */
final class ChainBuilder {
    private static final double NOISE_RATIO = 0.5;

    private final OrderBook book;
    private final CrewWeeks weeks;
    private final WorkingCalendar calendar;

    private record Joint(int one, int other, double weightHours) {}

    ChainBuilder(OrderBook book, CrewWeeks weeks, WorkingCalendar calendar) {
        this.book = book;
        this.weeks = weeks;
        this.calendar = calendar;
    }

    /**
     * Builds chains of orders; an order that shares nothing is a chain of its own.
     *
     * @param random disturbs the savings, so that other chains result; null for the heaviest first
     */
    List<int[]> chains(Collection<Integer> orders, @Nullable SplittableRandom random) {
        List<List<Integer>> chainOf = new ArrayList<>();
        for (int order = 0; order < book.size(); order++) {
            chainOf.add(List.of());
        }
        orders.forEach(order -> chainOf.set(order, List.of(order)));
        for (Joint joint : joints(orders, chainOf, random)) {
            List<Integer> joined = join(joint, chainOf.get(joint.one), chainOf.get(joint.other));
            if (!joined.isEmpty() && hasRoomInWeek(joined)) {
                joined.forEach(order -> chainOf.set(order, joined));
            }
        }
        return orders.stream()
                .filter(order -> chainOf.get(order).get(0).equals(order))
                .map(order ->
                        chainOf.get(order).stream().mapToInt(Integer::intValue).toArray())
                .toList();
    }

    private List<Joint> joints(
            Collection<Integer> orders, List<List<Integer>> chainOf, @Nullable SplittableRandom random) {
        var joints = new ArrayList<Joint>();
        for (int order : orders) {
            for (int other : book.neighbors(order)) {
                if (other > order && !chainOf.get(other).isEmpty()) {
                    double noise = random == null ? 1 : 1 + NOISE_RATIO * random.nextDouble();
                    joints.add(new Joint(order, other, noise * book.sharedHours(order, other)));
                }
            }
        }
        joints.sort(Comparator.comparingDouble((Joint joint) -> -joint.weightHours)
                .thenComparingInt(Joint::one)
                .thenComparingInt(Joint::other));
        return joints;
    }

    /** Puts two chains together where the joint's orders are ends of them; returns an empty list where they are not. */
    private static List<Integer> join(Joint joint, List<Integer> one, List<Integer> other) {
        boolean endsOne = isEnd(joint.one, one);
        boolean endsOther = isEnd(joint.other, other);
        if (!endsOne || !endsOther || one.get(0).equals(other.get(0))) {
            return List.of();
        }
        var joined = new ArrayList<Integer>(one.get(one.size() - 1) == joint.one ? one : reversed(one));
        joined.addAll(other.get(0) == joint.other ? other : reversed(other));
        return joined;
    }

    private static boolean isEnd(int order, List<Integer> chain) {
        return chain.get(0) == order || chain.get(chain.size() - 1) == order;
    }

    private static List<Integer> reversed(List<Integer> chain) {
        var turned = new ArrayList<Integer>();
        for (int next = chain.size() - 1; next >= 0; next--) {
            turned.add(chain.get(next));
        }
        return turned;
    }

    private boolean hasRoomInWeek(List<Integer> chain) {
        double takesHours = 0;
        long first = Long.MIN_VALUE;
        long last = Long.MAX_VALUE;
        for (int place = 0; place < chain.size(); place++) {
            int order = chain.get(place);
            takesHours += book.siteHours(order);
            takesHours -= place > 0 ? book.sharedHours(chain.get(place - 1), order) : 0;
            first = Math.max(first, book.firstDay(order));
            last = Math.min(last, book.lastDay(order));
            int district = book.district(order);
            if (district >= 0
                    && chain.stream()
                                    .filter(each -> book.district(each) == district)
                                    .count()
                            > calendar.mostInWork(district)) {
                return false;
            }
        }
        return first <= last && takesHours <= longestWeekHours(book.isNight(chain.get(0)));
    }

    private double longestWeekHours(boolean night) {
        double most = 0;
        for (int crew = 0; crew < weeks.crews(); crew++) {
            most = weeks.crew(crew).works(night) ? Math.max(most, weeks.usualWeekHours(crew)) : most;
        }
        return most;
    }
}
