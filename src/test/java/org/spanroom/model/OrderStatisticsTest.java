package org.spanroom.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against sorting all. */
class OrderStatisticsTest {
    /** Values spread evenly, in a heap with outliers, in steps with ties, all equal, of both signs, and far apart. */
    @ParameterizedTest(name = "{0} values")
    @ValueSource(ints = {1, 2, 3, 8, 63, 64, 65, 200})
    void everyPlaceHasWhatSortingHasThere(int count) {
        var random = new Random(count);
        var statistics = new OrderStatistics();
        for (int round = 0; round < 1200; round++) {
            double[] sample = sample(random, count, round % 6);
            double[] sorted = sample.clone();
            Arrays.sort(sorted);
            statistics.load(sample);
            for (int asked = 0; asked < 8; asked++) {
                int place = random.nextInt(count);
                assertThat(statistics.at(place)).isEqualTo(sorted[place]);
                double share = random.nextDouble();
                assertThat(statistics.quantile(share)).isEqualTo(Quantile.inUnit(sorted, share));
            }
            assertThat(statistics.quantile(0)).isEqualTo(sorted[0]);
            assertThat(statistics.quantile(1)).isEqualTo(sorted[count - 1]);
        }
    }

    @Test
    void valuesWithoutABoundAreSortedToo() {
        var statistics = new OrderStatistics();
        statistics.load(new double[] {3, Double.POSITIVE_INFINITY, 1, Double.NEGATIVE_INFINITY, Double.NaN, 2});

        assertThat(statistics.at(0)).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(statistics.at(3)).isEqualTo(3);
        assertThat(statistics.at(5)).isNaN();
        statistics.load(new double[] {3, Double.NaN, 1, 4, 5, 2});
        assertThat(statistics.at(4)).isEqualTo(5);
        assertThat(statistics.at(5)).isNaN();
        statistics.load(new double[] {Double.MAX_VALUE, -Double.MAX_VALUE, 1});
        assertThat(statistics.at(1)).isEqualTo(1);
        statistics.load(new double[] {Double.MIN_VALUE, 0, 2 * Double.MIN_VALUE});
        assertThat(statistics.at(1)).isEqualTo(Double.MIN_VALUE);
    }

    private static double[] sample(Random random, int count, int kind) {
        double[] sample = new double[count];
        Arrays.setAll(sample, i -> switch (kind) {
            case 0 -> 1000 * random.nextDouble();
            case 1 -> random.nextInt(20) == 0 ? 0 : 60 + random.nextGaussian();
            case 2 -> random.nextInt(5);
            case 3 -> 7;
            case 4 -> random.nextGaussian();
            default -> Math.exp(20 * random.nextGaussian());
        });
        return sample;
    }
}
