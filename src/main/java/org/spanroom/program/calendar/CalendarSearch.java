package org.spanroom.program.calendar;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Fills a calendar: first chain by chain, those with tight dates before the others, then by priority; then takes a few related orders out
 * again and again, places them in another order, and keeps the result by the rule of simulated annealing. Never accepts less priority.
 * Not thread-safe.
 */
final class CalendarSearch {
    private static final int TIGHT_DAYS = 28;
    private static final double FIRST_HOURS = 1;
    private static final double LAST_HOURS = 0.001;
    private static final double HOURS_OF_DAY = 0.001;
    private static final double SKIP_RATIO = 0.02;

    private final OrderBook book;
    private final WorkingCalendar calendar;
    private final PlaceFinder finder;
    private final ChainBuilder builder;
    private final SplittableRandom random;
    private final int[] candidates;
    private final Removal removal;
    private WeekPlan[][] best;
    private Merit bestMerit;

    CalendarSearch(OrderBook book, CrewWeeks weeks, WorkingCalendar calendar, long seed) {
        this.book = book;
        this.calendar = calendar;
        finder = new PlaceFinder(book, weeks, calendar, true);
        builder = new ChainBuilder(book, weeks, calendar);
        random = new SplittableRandom(seed);
        // What has no place in an empty calendar has none in any.
        candidates = IntStream.range(0, book.size()).filter(finder::hasPlace).toArray();
        removal = new Removal(book, weeks, calendar, candidates, random);
        best = calendar.copiedPlans();
        bestMerit = calendar.merit();
    }

    /** Fills the calendar and improves it. */
    void run(int iterations) {
        List<Integer> all = Arrays.stream(candidates).boxed().toList();
        WeekPlan[][] empty = calendar.copiedPlans();
        fill(
                all,
                chain ->
                        Arrays.stream(chain).mapToDouble(book::weight).average().orElse(0));
        keepBest();
        calendar.restore(empty);
        fill(all, chain -> weight(chain) / hours(chain));
        keepBest();
        calendar.restore(best);
        if (candidates.length > 0) {
            improve(iterations);
        }
        calendar.restore(best);
        pullForward();
        placeWaiting();
    }

    private void fill(Collection<Integer> orders, ToDoubleFunction<int[]> urgency) {
        var chains = new ArrayList<>(builder.chains(orders, null));
        chains.sort(Comparator.comparing((int[] chain) -> windowDays(chain) > TIGHT_DAYS)
                .thenComparingDouble(chain -> windowDays(chain) > TIGHT_DAYS ? 0 : windowDays(chain))
                .thenComparingDouble(chain -> -urgency.applyAsDouble(chain))
                .thenComparingInt(chain -> chain[0]));
        chains.forEach(this::placeOrSplit);
        calendar.accept();
    }

    private long windowDays(int... chain) {
        long first = Long.MIN_VALUE / 2;
        long last = Long.MAX_VALUE / 2;
        for (int order : chain) {
            first = Math.max(first, book.firstDay(order));
            last = Math.min(last, book.lastDay(order));
        }
        return last - first + 1;
    }

    private double weight(int... chain) {
        return Arrays.stream(chain).mapToDouble(book::weight).sum();
    }

    private double hours(int... chain) {
        return Arrays.stream(chain).mapToDouble(book::siteHours).sum();
    }

    /** Places a chain as a whole or, where it has no room, in two parts that are cut where least is shared. */
    private void placeOrSplit(int... chain) {
        if (finder.place(chain) || chain.length == 1) {
            return;
        }
        int cut = 1;
        for (int at = 2; at < chain.length; at++) {
            if (book.sharedHours(chain[at - 1], chain[at]) < book.sharedHours(chain[cut - 1], chain[cut])) {
                cut = at;
            }
        }
        placeOrSplit(Arrays.copyOf(chain, cut));
        placeOrSplit(Arrays.copyOfRange(chain, cut, chain.length));
    }

    private void improve(int iterations) {
        finder.skipWeeks(SKIP_RATIO);
        for (int done = 0; done < iterations; done++) {
            double temperatureHours = FIRST_HOURS * Math.pow(LAST_HOURS / FIRST_HOURS, (double) done / iterations);
            iterate(temperatureHours);
        }
        finder.skipWeeks(0);
    }

    private void iterate(double temperatureHours) {
        Merit before = calendar.merit();
        List<Integer> waiting = removal.someWaiting();
        List<Integer> taken = calendar.remove(removal.chosen(waiting));
        taken.addAll(waiting);
        replace(taken, waiting);
        if (isAccepted(before, calendar.merit(), temperatureHours)) {
            calendar.accept();
            keepBest();
        } else {
            calendar.undo();
        }
    }

    /** Places orders again: in chains or one by one, in random order, by priority, or those first that had no place. */
    private void replace(List<Integer> orders, List<Integer> waiting) {
        int way = random.nextInt(4);
        if (way < 2) {
            var chains = new ArrayList<>(builder.chains(orders, random));
            shuffle(chains);
            if (way == 0) {
                chains.sort(Comparator.comparingDouble(chain -> -weight(chain)));
            }
            chains.forEach(this::placeOrSplit);
            return;
        }
        shuffle(orders);
        if (way == 2) {
            orders.sort(Comparator.comparingDouble(order -> -book.weight(order)));
        } else {
            orders.sort(Comparator.comparing(order -> !waiting.contains(order)));
        }
        orders.forEach(finder::place);
    }

    private <T> void shuffle(List<T> list) {
        for (int last = list.size() - 1; last > 0; last--) {
            int other = random.nextInt(last + 1);
            T moved = list.set(other, list.get(last));
            list.set(last, moved);
        }
    }

    private boolean isAccepted(Merit before, Merit after, double temperatureHours) {
        double chance = random.nextDouble();
        int byWeight = after.compareWeight(before);
        if (byWeight != 0) {
            return byWeight > 0;
        }
        double gainHours =
                after.sharedHours() - before.sharedHours() - HOURS_OF_DAY * (after.doneDays() - before.doneDays());
        return gainHours >= 0 || chance < Math.exp(gainHours / temperatureHours);
    }

    private void keepBest() {
        if (calendar.merit().isBetterThan(bestMerit)) {
            best = calendar.copiedPlans();
            bestMerit = calendar.merit();
        }
    }

    /** Moves each order by itself to a better place, where there is one, once for each from the first week on. */
    private void pullForward() {
        Arrays.stream(candidates)
                .filter(calendar::isPlaced)
                .boxed()
                .sorted(Comparator.comparingInt(calendar::weekOf))
                .toList()
                .forEach(this::moveIfBetter);
    }

    /** Places what has room after all. */
    private void placeWaiting() {
        List<Integer> waiting = Arrays.stream(candidates)
                .filter(order -> !calendar.isPlaced(order))
                .boxed()
                .sorted(Comparator.comparingDouble(order -> -book.weight(order)))
                .toList();
        boolean placed = true;
        while (placed) {
            placed = waiting.stream().filter(order -> !calendar.isPlaced(order)).anyMatch(finder::place);
        }
    }

    private void moveIfBetter(int order) {
        Merit before = calendar.merit();
        calendar.remove(List.of(order)).forEach(finder::place);
        if (calendar.merit().isBetterThan(before)) {
            calendar.accept();
        } else {
            calendar.undo();
        }
    }
}
