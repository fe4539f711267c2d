package org.spanroom.output.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The frontier of cost and positions, against its definition tried on every point, and budgets against every choice of spans. */
class FrontierTest {
    @Test
    void aWorkedExample() {
        List<Frontier.Point> points = List.of(
                new Frontier.Point(10, 5, 0),
                new Frontier.Point(20, 12, 1),
                new Frontier.Point(30, 13, 2),
                new Frontier.Point(60, 16, 3),
                new Frontier.Point(70, 16, 4),
                new Frontier.Point(40, 13.5, 5),
                new Frontier.Point(5, 0, 6));

        // From the origin the second has 0.6 for 1; 13 is on no line above; then (60 - 20) gains 4, more than (30 - 20)
        // gains 1 at 0.1.
        assertEquals(
                List.of(1, 2, 3),
                Frontier.hull(List.of(
                        new Frontier.Point(10, 5, 0),
                        new Frontier.Point(20, 12, 1),
                        new Frontier.Point(30, 14, 2),
                        new Frontier.Point(60, 16, 3))));
        assertEquals(List.of(1, 3), Frontier.hull(points));
        assertEquals(List.of(), Frontier.hull(List.of(new Frontier.Point(5, 0, 0))));
    }

    static IntStream seeds() {
        return IntStream.range(0, 300);
    }

    private static List<Frontier.Point> points(int seed) {
        var random = new Random(seed);
        var points = new ArrayList<Frontier.Point>();
        int count = 1 + random.nextInt(9);
        for (int i = 0; i < count; i++) {
            points.add(new Frontier.Point(1 + random.nextInt(12), random.nextInt(9), i));
        }
        return points;
    }

    /** A point is a corner unless another is as good and as cheap, or a line between two others, or from the origin, reaches it. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void cornersAreThePointsThatNoMixtureReaches(int seed) {
        List<Frontier.Point> points = points(seed);
        var corners = new ArrayList<Integer>();
        for (int i = 0; i < points.size(); i++) {
            if (isCorner(points, i)) {
                corners.add(i);
            }
        }
        corners.sort((one, other) ->
                Double.compare(points.get(one).money(), points.get(other).money()));

        assertEquals(corners, Frontier.hull(points));
    }

    private static boolean isCorner(List<Frontier.Point> points, int place) {
        Frontier.Point tried = points.get(place);
        if (tried.positions() == 0) {
            return false;
        }
        var others = new ArrayList<Frontier.Point>();
        others.add(new Frontier.Point(0, 0, -1));
        for (int i = 0; i < points.size(); i++) {
            Frontier.Point other = points.get(i);
            boolean same = other.money() == tried.money() && other.positions() == tried.positions();
            if (same && i < place) {
                return false;
            }
            if (!same) {
                others.add(other);
                if (other.money() <= tried.money() && other.positions() >= tried.positions()) {
                    return false;
                }
            }
        }
        for (Frontier.Point left : others) {
            for (Frontier.Point right : others) {
                if (left.money() < tried.money() && right.money() > tried.money()) {
                    double share = (tried.money() - left.money()) / (right.money() - left.money());
                    if (left.positions() + share * (right.positions() - left.positions())
                            >= tried.positions() - 1e-12) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    /** At its own cost, what is taken first is the best of all choices. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void noChoiceOfTheSameCostGainsMore(int seed) {
        List<Frontier.Point> points = points(seed);
        List<Frontier.Bought> bought = Frontier.cumulative(points, points.size() + 1);

        for (Frontier.Bought prefix : bought) {
            double most = 0;
            for (int choice = 0; choice < 1 << points.size(); choice++) {
                double money = 0;
                double positions = 0;
                for (int i = 0; i < points.size(); i++) {
                    if ((choice >> i & 1) == 1) {
                        money += points.get(i).money();
                        positions += points.get(i).positions();
                    }
                }
                most = money <= prefix.money() ? Math.max(most, positions) : most;
            }
            assertEquals(most, prefix.positions(), 1e-9);
        }
        assertTrue(Frontier.cumulative(points, 3).size() <= 3);
        assertEquals(
                bought.get(bought.size() - 1),
                Frontier.cumulative(points, 2)
                        .get(Frontier.cumulative(points, 2).size() - 1));
    }
}
