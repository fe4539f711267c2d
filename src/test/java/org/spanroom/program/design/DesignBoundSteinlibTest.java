package org.spanroom.program.design;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.pipeline.NativeSolver;
import org.spanroom.program.bound.BoundSettings;
import org.spanroom.program.bound.DesignBound;

/** Source of instances and optima: SteinLib, set B; see the README beside them. */
class DesignBoundSteinlibTest {
    private static final BoundSettings SETTINGS =
            BoundSettings.DEFAULT.withSteps(200).withCases(10);

    static Stream<String> names() {
        return IntStream.rangeClosed(1, 18).mapToObj("b%02d"::formatted);
    }

    /** All weights are whole, so a bound rounded up is one too. */
    @ParameterizedTest
    @MethodSource("names")
    void boundReachesTheOptimumAndIsNotAboveIt(String name) {
        DesignProblem problem = SteinlibInstance.read(name);
        double optimum = SteinlibInstance.optimum(name);
        boolean hasLibrary = NativeSolver.load().isEmpty();

        DesignBound bound = DesignBound.of(problem, SETTINGS, optimum, hasLibrary, Spread.ON_ONE_THREAD, () -> false);

        assertThat(bound.pricesMoney()).isLessThanOrEqualTo(optimum);
        if (hasLibrary) {
            assertThat(Math.ceil(bound.money())).isEqualTo(optimum);
        }
    }
}
