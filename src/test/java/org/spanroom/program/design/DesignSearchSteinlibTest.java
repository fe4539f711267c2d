package org.spanroom.program.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Source of instances and optima: SteinLib, set B; see the README beside them. */
class DesignSearchSteinlibTest {
    static Stream<String> names() {
        return IntStream.rangeClosed(1, 18).mapToObj("b%02d"::formatted);
    }

    @ParameterizedTest
    @MethodSource("names")
    void findsTheOptimum(String name) {
        DesignProblem problem = SteinlibInstance.read(name);

        DesignSearch.Result result =
                new DesignSearch(problem).run(SearchSettings.DEFAULT, ManyThreads.SPREAD, () -> false);

        assertThat(DesignChecker.problems(problem, result.design())).isEmpty();
        assertThat(result.unserved()).isEmpty();
        assertThat(result.design().workMoney()).isCloseTo(SteinlibInstance.optimum(name), within(1e-9));
    }
}
