package org.spanroom.program.annual;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.spanroom.program.design.Bin;
import org.spanroom.program.design.Demand;
import org.spanroom.program.design.DesignProblem;
import org.spanroom.program.design.NewDucts;
import org.spanroom.program.design.Piece;

/**
 * Two pieces in a row and one connection over both: the first has a bin that task 0 recovers for 2 cables, the second one free position and new
 * ducts from year 1 on that use 10 money, further ones 4.
 */
class ServedCheckerTest {
    private static final YearProblem PROBLEM = problem();

    private static YearProblem problem() {
        var first = new Piece(0, 1, 50, List.of(new Bin(0, 2, 5)), NewDucts.NONE);
        var second = new Piece(1, 2, 50, List.of(new Bin(1, 1, 0)), new NewDucts(2, 10, 4, 2));
        var network = new DesignProblem(3, List.of(first, second), List.of(new Demand(0, 2, 2, 100)));
        var connections = new Connections(
                network,
                List.of(List.of(0), List.of(-1)),
                List.of(2, 1),
                List.of(List.of(0.0), List.of(10.0)),
                List.of(new Wish(List.of(50.0, 40.0), true, 1)));
        var task = new Task(List.of(1.0, 1.0), 0, List.of(5.0), 0, 1, false, List.of());
        return new YearProblem(List.of(List.of(20.0), List.of(20.0)), List.of(task), 0, Optional.of(connections));
    }

    private static List<String> problems(
            int yearOfTask, Optional<YearPlan.Served> served, List<Integer> built, double value, double... uses) {
        Map<Integer, List<Integer>> ducts = built.isEmpty() ? Map.of() : Map.of(1, built);
        return YearPlanChecker.problems(
                PROBLEM,
                new YearPlan(
                        List.of(yearOfTask), List.of(served), ducts, value, List.of(List.of(uses[0]), List.of(uses[1]))));
    }

    private static Optional<YearPlan.Served> served(int year, int secondBin) {
        return Optional.of(new YearPlan.Served(year, List.of(0, 1), List.of(0, secondBin)));
    }

    @Test
    void rightPlanHasNoFaults() {
        assertEquals(List.of(), problems(0, served(1, 1), List.of(1), 41, 5, 10));
        assertEquals(List.of(), problems(1, served(1, 2), List.of(1, 1), 41, 0, 19));
    }

    @Test
    void faultsOfServiceAreSeen() {
        assertEquals(List.of("demand 0 is a must and not served"), problems(0, Optional.empty(), List.of(), 1, 5, 0));
        assertEquals(
                List.of("demand 0 is served in year 0, its way is there from 1"),
                problems(0, served(0, 1), List.of(1), 51, 5, 10));
        assertEquals(
                List.of("demand 0 is served in year 1, its way is there from 2"),
                problems(YearPlan.NEVER, served(1, 1), List.of(1), 40, 0, 10));
        assertEquals(
                List.of("demand 0 is served in year 1, its way is there from 2"),
                problems(0, served(1, 0), List.of(1), 41, 5, 10));
        var halfWay = Optional.of(new YearPlan.Served(1, List.of(0), List.of(0)));
        assertEquals(
                List.of("demand 0 ends at place 1, not 2"), problems(0, halfWay, List.of(), 41, 5, 0));
    }

    @Test
    void faultsOfNewDuctsAreSeen() {
        assertEquals(
                List.of("piece 1: a duct built in year 0, not from 1 on"),
                problems(0, served(1, 1), List.of(0), 41, 15, 0));
        assertEquals(
                List.of("piece 1: 3 ducts built of at most 2"),
                problems(0, served(1, 1), List.of(1, 1, 1), 41, 5, 18));
        assertEquals(
                List.of("year 1, resource 0: use 10.0, recalculated 14.0"),
                problems(0, served(1, 1), List.of(1, 1), 41, 5, 10));
    }
}
