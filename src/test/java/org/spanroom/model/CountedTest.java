package org.spanroom.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CountedTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    0    | 0 zones
                    1    | 1 zone
                    2    | 2 zones
                    1200 | 1,200 zones
                    -1   | -1 zones
                    """)
    void oneHasTheSingularAndAllOthersThePlural(long count, String words) {
        assertThat(Counted.of(count, "zone")).isEqualTo(words);
    }

    @Test
    void irregularNounsAndVerbsFollowTheCount() {
        assertThat(Counted.of(1, "vertex", "vertices")).isEqualTo("1 vertex");
        assertThat(Counted.of(4, "vertex", "vertices")).isEqualTo("4 vertices");
        assertThat(Counted.form(1, "is", "are")).isEqualTo("is");
        assertThat(Counted.form(0, "is", "are")).isEqualTo("are");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    -0.0    | 2 | 0.00     | 0.00
                    -0.004  | 2 | 0.00     | 0.00
                    0.004   | 2 | 0.00     | 0.00
                    -0.005  | 2 | -0.01    | -0.01
                    -0.4    | 0 | 0        | 0
                    12.345  | 2 | 12.35    | +12.35
                    -4797.2 | 0 | -4,797   | -4,797
                    4797.2  | 0 | 4,797    | +4,797
                    """)
    void whatRoundsToZeroHasNoSign(double value, int decimals, String fixed, String signed) {
        assertThat(Counted.fixed(value, decimals)).isEqualTo(fixed);
        assertThat(Counted.signed(value, decimals)).isEqualTo(signed);
    }

    /** The figures read back are within half of the last decimal, whatever the size and the sign. */
    @Test
    void figuresAreTheNumberAndNeverMinusZero() {
        var random = new Random(5);
        for (int round = 0; round < 2_000; round++) {
            int decimals = random.nextInt(5);
            double value = random.nextGaussian() * Math.pow(10, random.nextInt(12) - 6);
            String figures = Counted.fixed(value, decimals);
            assertThat(figures).doesNotMatch("-0[.0]*");
            assertThat(Counted.signed(value, decimals)).doesNotMatch("[-+]0[.0]*");
            double tolerance = 0.5 * Math.pow(10, -decimals) * (1 + 1e-9);
            assertThat(Math.abs(Double.parseDouble(figures.replace(",", "")) - value))
                    .as("%s as %s", value, figures)
                    .isLessThanOrEqualTo(tolerance);
        }
    }
}
