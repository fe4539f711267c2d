package org.spanroom.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Checks quantiles of samples that are only arranged, against sorted ones and against a published default. */
class QuantileTest {
    private static final double[] SHARES = {0, 0.1, 0.1, 0.5, 0.77, 0.9, 1};

    /** Random samples, with many equal values in every other one, and with some values that are not known in the last. */
    @ParameterizedTest(name = "{0} values")
    @ValueSource(ints = {1, 2, 3, 7, 63, 64, 65, 1000})
    void arrangedSamplesHaveTheQuantilesOfSortedOnes(int size) {
        var random = new Random(size);
        for (int round = 0; round < 200; round++) {
            int values = round % 2 == 0 ? Integer.MAX_VALUE : 5;
            double[] sample = random.ints(size, 0, values).asDoubleStream().toArray();
            if (round == 199) {
                sample[size / 2] = Double.NaN;
            }
            double[] sorted = sample.clone();
            Arrays.sort(sorted);
            double[] arranged = sample.clone();

            Quantile.arrange(arranged, SHARES);

            assertThat(quantiles(arranged)).containsExactly(quantiles(sorted));
            Arrays.sort(arranged);
            assertThat(arranged).containsExactly(sorted);
        }
    }

    /** Samples that are sorted, turned around, or rise and fall, which slow down a careless selection. */
    @Test
    void orderedSamplesAreArrangedToo() {
        double[] rising = DoubleStream.iterate(0, value -> value + 1).limit(2000).toArray();
        double[] falling = DoubleStream.iterate(1999, value -> value - 1).limit(2000).toArray();
        for (double[] sample : new double[][] {rising, falling}) {
            double[] arranged = sample.clone();

            Quantile.arrange(arranged, SHARES);

            assertThat(quantiles(arranged)).containsExactly(quantiles(rising));
        }
    }

    /** The default of R: quantile(1:10, c(0.1, 0.25, 0.9)) gives 1.9, 3.25 and 9.1 (from memory). */
    @Test
    void quantilesAreOfTypeSeven() {
        double[] sample = {7, 1, 10, 4, 2, 9, 3, 8, 6, 5};
        Quantile.arrange(sample, 0.1, 0.25, 0.9);

        assertThat(Quantile.inUnit(sample, 0.1)).isCloseTo(1.9, within(1e-12));
        assertThat(Quantile.inUnit(sample, 0.25)).isCloseTo(3.25, within(1e-12));
        assertThat(Quantile.inUnit(sample, 0.9)).isCloseTo(9.1, within(1e-12));
    }

    private static double[] quantiles(double[] sample) {
        return Arrays.stream(SHARES).map(share -> Quantile.inUnit(sample, share)).toArray();
    }
}
