package org.spanroom.output.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChartTest {
    @ParameterizedTest
    @CsvSource({
        "1, 1, 1",
        "1.01, 2, 1",
        "2, 2, 2",
        "4.9, 5, 2",
        "5, 5, 5",
        "6, 10, 5",
        "9.99, 10, 5",
        "143, 200, 100",
        "0.03, 0.05, 0.02",
        "100, 100, 100"
    })
    void stepsAreOneTwoOrFiveTimesAPowerOfTen(double value, double above, double below) {
        assertThat(RoundNumbers.above(value)).isCloseTo(above, within(1e-12));
        assertThat(RoundNumbers.below(value)).isCloseTo(below, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "200, 200", "0.5, 0.5", "0.00025, 0.0003", "12.50, 12.5", "1000, 1000"})
    void numbersAreWrittenPlainly(double value, String words) {
        assertThat(RoundNumbers.plain(value)).isEqualTo(words);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0, 10, 10, true",
        "0, 5, 10, 5, true",
        "0, 20, 20, 20, false",
        "4, 4, 5, 5, true",
        "0, 9, 9, 0, true",
        "0, 3, 3, 0, false",
        "-5, 5, 1, 5, false"
    })
    void aLineCrossesABoxOrMissesIt(double x1, double y1, double x2, double y2, boolean crosses) {
        var box = new Box(2, 2, 8, 8);

        assertThat(box.isCrossedBy(new double[] {x1, y1}, new double[] {x2, y2}))
                .isEqualTo(crosses);
        assertThat(box.isCrossedBy(new double[] {x2, y2}, new double[] {x1, y1}))
                .isEqualTo(crosses);
    }
}
