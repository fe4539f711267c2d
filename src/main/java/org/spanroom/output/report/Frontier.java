package org.spanroom.output.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The efficient frontier of cost against positions gained.
 *
 * <p>Its points are the corners of the upper concave hull of all points and the origin, in the order of cost: the polyline from the origin
 * through them has no point above it, is nowhere steeper than before, and ends at the cheapest of the points with most positions. The first
 * corner therefore has most positions for its money. A point on the line between two corners is none. Of points with the same cost and the same
 * positions the first in the list counts.
 */
public final class Frontier {
    private Frontier() {}

    /**
     * One span.
     *
     * @param money its cost, 0 or more
     * @param positions what it gains
     * @param row its row in the page
     */
    public record Point(double money, double positions, int row) {
        /** Positions for each unit of money; a span that costs nothing comes before all others. */
        double ratio() {
            return money > 0 ? positions / money : Double.POSITIVE_INFINITY;
        }
    }

    /** Returns the places of the corners in the list, the cheapest first; none where no point gains anything. */
    public static List<Integer> hull(List<Point> points) {
        List<Integer> byMoney = IntStream.range(0, points.size())
                .boxed()
                .filter(place -> points.get(place).positions() > 0)
                .sorted(Comparator.comparingDouble(
                                (Integer place) -> points.get(place).money())
                        .thenComparingDouble(place -> -points.get(place).positions())
                        .thenComparing(Comparator.naturalOrder()))
                .toList();
        var corners = new ArrayList<Integer>();
        double mostPositions = 0;
        for (int place : byMoney) {
            Point next = points.get(place);
            if (next.positions() <= mostPositions) {
                continue;
            }
            mostPositions = next.positions();
            while (!corners.isEmpty() && !isAbove(points, corners, next)) {
                corners.remove(corners.size() - 1);
            }
            corners.add(place);
        }
        return List.copyOf(corners);
    }

    /**
     * What a budget buys: sums over the spans that are taken first.
     *
     * @param spans how many
     */
    public record Bought(double money, double positions, int spans) {}

    /**
     * Returns what budgets buy when spans are taken one by one, those with most positions for their money first; of equals the one that comes first in
     * the list. No other choice of spans of the same cost has more positions, up to the positions of one span (the relaxation of the
     * knapsack problem; Dantzig 1957, from memory). Begins at nothing and ends at all spans that gain.
     *
     * @param mostPoints so many are returned at most, spread evenly over the spans; at least 2
     */
    public static List<Bought> cumulative(List<Point> points, int mostPoints) {
        List<Point> best = IntStream.range(0, points.size())
                .boxed()
                .filter(place -> points.get(place).positions() > 0)
                .sorted(Comparator.comparingDouble(
                                (Integer place) -> -points.get(place).ratio())
                        .thenComparing(Comparator.naturalOrder()))
                .map(points::get)
                .toList();
        var bought = new ArrayList<Bought>();
        bought.add(new Bought(0, 0, 0));
        double money = 0;
        double positions = 0;
        for (int i = 0; i < best.size(); i++) {
            money += best.get(i).money();
            positions += best.get(i).positions();
            long before = (long) i * (mostPoints - 1) / best.size();
            long after = (i + 1L) * (mostPoints - 1) / best.size();
            if (after > before) {
                bought.add(new Bought(money, positions, i + 1));
            }
        }
        return List.copyOf(bought);
    }

    /** Returns whether the last corner is above the line from the corner before it, or the origin, to the next point. */
    private static boolean isAbove(List<Point> points, List<Integer> corners, Point next) {
        Point last = points.get(corners.get(corners.size() - 1));
        boolean first = corners.size() == 1;
        double money = first ? 0 : points.get(corners.get(corners.size() - 2)).money();
        double positions =
                first ? 0 : points.get(corners.get(corners.size() - 2)).positions();
        return (last.positions() - positions) * (next.money() - money)
                > (next.positions() - positions) * (last.money() - money);
    }
}
