package org.spanroom.program.calendar;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.CalendarRules.ProgramYear;
import org.spanroom.model.program.Closure;
import org.spanroom.model.program.WorkOrder;

/** Work orders by number, with the days on which each can be done and the set-ups that each two can share. Unmodifiable. */
final class OrderBook {
    private static final int NONE = -1;

    /** So little counts an order of no priority: it takes a place that is free, and displaces none. */
    private static final double LEAST_WEIGHT_SHARE = 1e-6;

    private final List<WorkOrder> orders;
    private final long[] firstDay;
    private final long[] lastDay;
    private final long[] yearStart;
    private final long[][] closures;
    private final int[] vaultA;
    private final int[] vaultB;
    private final int[] district;
    private final List<String> districts;
    private final double[] weight;
    private final int[][] neighbors;
    private final double[] mostSharedHours;

    OrderBook(CalendarRules rules, List<WorkOrder> orders) {
        this.orders = List.copyOf(orders);
        int size = orders.size();
        firstDay = new long[size];
        lastDay = new long[size];
        yearStart = new long[size];
        closures = new long[size][];
        vaultA = new int[size];
        vaultB = new int[size];
        district = new int[size];
        weight = new double[size];
        districts = List.copyOf(new TreeSet<>(rules.mostInWork().keySet()));
        double leastWeight = LEAST_WEIGHT_SHARE
                * Math.max(
                        1,
                        orders.stream().mapToDouble(WorkOrder::priorityMoney).max().orElse(0));
        Map<String, Integer> vaults = new TreeMap<>();
        for (int number = 0; number < size; number++) {
            WorkOrder order = orders.get(number);
            note(number, order, rules);
            vaultA[number] = vaultNumber(vaults, order.vaultA());
            vaultB[number] = vaultNumber(vaults, order.vaultB());
            weight[number] = Math.max(0, order.priorityMoney()) + leastWeight;
            district[number] = order.district().isEmpty() ? NONE : districts.indexOf(order.district());
        }
        neighbors = findNeighbors(vaults.size());
        mostSharedHours = new double[size];
        for (int number = 0; number < size; number++) {
            for (int other : neighbors[number]) {
                mostSharedHours[number] = Math.max(
                        mostSharedHours[number], Math.max(sharedHours(number, other), sharedHours(other, number)));
            }
        }
    }

    private void note(int number, WorkOrder order, CalendarRules rules) {
        closures[number] = order.closures().stream()
                .flatMap(each -> List.of(each.from(), each.until()).stream())
                .mapToLong(LocalDate::toEpochDay)
                .toArray();
        if (order.year() < 0 || order.year() >= rules.years().size()) {
            firstDay[number] = Long.MAX_VALUE;
            lastDay[number] = Long.MIN_VALUE;
            return;
        }
        ProgramYear year = rules.years().get(order.year());
        long ready = rules.readyOn().toEpochDay() + Math.max(order.leadDays(), order.checkDays());
        yearStart[number] = year.from().toEpochDay();
        firstDay[number] =
                Math.max(Math.max(ready, yearStart[number]), order.notBefore().toEpochDay());
        lastDay[number] = Math.min(year.until().toEpochDay(), order.notAfter().toEpochDay());
    }

    /** A vault without a name is not known to be the same as another without a name. */
    private static int vaultNumber(Map<String, Integer> vaults, String id) {
        return id.isEmpty() ? NONE : vaults.computeIfAbsent(id, none -> vaults.size());
    }

    private int[][] findNeighbors(int vaults) {
        List<List<Integer>> at = new ArrayList<>();
        for (int vault = 0; vault < vaults; vault++) {
            at.add(new ArrayList<>());
        }
        for (int number = 0; number < size(); number++) {
            if (vaultA[number] != NONE) {
                at.get(vaultA[number]).add(number);
            }
            if (vaultB[number] != NONE) {
                at.get(vaultB[number]).add(number);
            }
        }
        int[][] found = new int[size()][];
        for (int number = 0; number < size(); number++) {
            var others = new TreeSet<Integer>();
            others.addAll(vaultA[number] == NONE ? List.of() : at.get(vaultA[number]));
            others.addAll(vaultB[number] == NONE ? List.of() : at.get(vaultB[number]));
            int each = number;
            found[number] = others.stream()
                    .filter(other -> other != each && isSameKind(each, other) && sharedHours(each, other) > 0)
                    .mapToInt(Integer::intValue)
                    .toArray();
        }
        return found;
    }

    private boolean isSameKind(int one, int other) {
        return order(one).year() == order(other).year() && isNight(one) == isNight(other);
    }

    int size() {
        return orders.size();
    }

    WorkOrder order(int number) {
        return orders.get(number);
    }

    boolean isNight(int number) {
        return orders.get(number).night();
    }

    double siteHours(int number) {
        return orders.get(number).siteHours();
    }

    /** Returns the first day on which the order can begin, by its year, its lead times and its embargo. */
    long firstDay(int number) {
        return firstDay[number];
    }

    /** Returns the last day on which the order can be in work, by its year and the day by which it is needed. */
    long lastDay(int number) {
        return lastDay[number];
    }

    /** Returns the first day of the order's year. */
    long yearStart(int number) {
        return yearStart[number];
    }

    /** Returns whether an order can be in work on a day. */
    boolean isOpen(int number, long day) {
        if (day < firstDay[number] || day > lastDay[number]) {
            return false;
        }
        long[] closed = closures[number];
        for (int next = 0; next < closed.length; next += 2) {
            if (day >= closed[next] && day <= closed[next + 1]) {
                return false;
            }
        }
        return true;
    }

    /** Returns the hours that an order saves if it begins in the shift in which another one ends. */
    double sharedHours(int before, int after) {
        double savedHours = sharedAt(vaultA[before], order(before).sharedAHours(), after);
        if (vaultB[before] != vaultA[before]) {
            savedHours += sharedAt(vaultB[before], order(before).sharedBHours(), after);
        }
        return Math.min(savedHours, siteHours(after));
    }

    private double sharedAt(int vault, double hours, int other) {
        if (vault == NONE) {
            return 0;
        }
        if (vault == vaultA[other]) {
            return Math.min(hours, order(other).sharedAHours());
        }
        return vault == vaultB[other] ? Math.min(hours, order(other).sharedBHours()) : 0;
    }

    /** Returns the orders of the same year and kind of shift with which an order can share set-ups. Not to be changed. */
    int[] neighbors(int number) {
        return neighbors[number];
    }

    /** Returns the most hours that an order and another one beside it can share. */
    double mostSharedHours(int number) {
        return mostSharedHours[number];
    }

    /** Returns what placing an order counts: its priority, and a little for an order of none. */
    double weight(int number) {
        return weight[number];
    }

    /** Returns the number of an order's district among those with a limit; negative where there is none. */
    int district(int number) {
        return district[number];
    }

    List<String> districts() {
        return districts;
    }

    /** Returns the closures of an order, by which it cannot be done on some days. */
    List<Closure> closures(int number) {
        return order(number).closures();
    }
}
