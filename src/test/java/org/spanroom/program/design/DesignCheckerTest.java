package org.spanroom.program.design;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class DesignCheckerTest {
    private static final DesignProblem PROBLEM = new DesignProblem(
            3,
            List.of(
                    new Piece(0, 1, 10, List.of(new Bin(1, 4, 70)), new NewDucts(2, 300, 20, 1)),
                    new Piece(2, 1, 10, List.of(new Bin(9, 9, 0)), NewDucts.NONE)),
            List.of(new Demand(0, 2, 3, 500), new Demand(0, 1, 1, 40)));
    private static final Design.Use FREE = use(Map.of(0, 0), List.of(), 0, 0);
    private static final Design.Use RECOVERED = use(Map.of(0, 0), List.of(0), 0, 70);

    @Test
    void findsNothingWrongWithWhatIsRight() {
        assertThat(problems(List.of(List.of(0, 1), List.of()), Map.of(0, RECOVERED, 1, FREE), 70, 40))
                .isEmpty();
    }

    static Stream<Arguments> wrong() {
        List<List<Integer>> ways = List.of(List.of(0, 1), List.of());
        return Stream.of(
                Arguments.of("jumps", List.of(List.of(1, 0), List.of()), Map.of(0, RECOVERED, 1, FREE), 70, 40),
                Arguments.of("ends at place 1", List.of(List.of(0), List.of()), Map.of(0, RECOVERED), 70, 40),
                Arguments.of("twice", List.of(List.of(0, 0, 0, 1), List.of()), Map.of(0, RECOVERED, 1, FREE), 70, 40),
                Arguments.of("uses are of", ways, Map.of(0, RECOVERED), 70, 40),
                Arguments.of("uses are of", List.of(List.of(), List.of()), Map.of(0, FREE), 0, 540),
                Arguments.of("takes 1", ways, Map.of(0, use(Map.of(0, 0), List.of(), 0, 0), 1, FREE), 0, 40),
                Arguments.of("takes 2", ways, Map.of(0, use(Map.of(0, 1), List.of(), 1, 300), 1, FREE), 300, 40),
                Arguments.of("takes 0", ways, Map.of(0, use(Map.of(0, 1), List.of(0), 0, 70), 1, FREE), 70, 40),
                Arguments.of("placed are", ways, Map.of(0, use(Map.of(1, 0), List.of(), 0, 0), 1, FREE), 0, 40),
                Arguments.of("of at most 1", ways, Map.of(0, use(Map.of(0, 0), List.of(0), 2, 390), 1, FREE), 390, 40),
                Arguments.of("bin twice", ways, Map.of(0, use(Map.of(0, 0), List.of(0, 0), 0, 140), 1, FREE), 140, 40),
                Arguments.of("money 60", ways, Map.of(0, use(Map.of(0, 0), List.of(0), 0, 60), 1, FREE), 60, 40),
                Arguments.of("work 71", ways, Map.of(0, RECOVERED, 1, FREE), 71, 40),
                Arguments.of("prizes 0", ways, Map.of(0, RECOVERED, 1, FREE), 70, 0),
                Arguments.of("1 ways", List.of(List.of(0, 1)), Map.of(0, RECOVERED, 1, FREE), 70, 40));
    }

    @ParameterizedTest(name = "{index}: {0}")
    @MethodSource("wrong")
    void saysWhatIsWrong(
            String part, List<List<Integer>> ways, Map<Integer, Design.Use> uses, double work, double unserved) {
        assertThat(problems(ways, uses, work, unserved)).anyMatch(problem -> problem.contains(part));
    }

    private static Design.Use use(Map<Integer, Integer> binOf, List<Integer> recovered, int built, double money) {
        return new Design.Use(binOf, recovered, built, money);
    }

    private static List<String> problems(
            List<List<Integer>> ways, Map<Integer, Design.Use> uses, double work, double unserved) {
        return DesignChecker.problems(PROBLEM, new Design(ways, uses, work, unserved));
    }
}
