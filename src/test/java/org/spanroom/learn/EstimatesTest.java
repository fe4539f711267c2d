package org.spanroom.learn;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.model.learn.LearnSettings;
import org.spanroom.model.learn.RatioEstimate;

/** The median, its bootstrap interval and the shrinkage, against exact distributions and crews whose true ratio is known. */
class EstimatesTest {
    private static final LearnSettings SETTINGS = LearnSettings.STANDARD;

    /**
     * The median of a resample of an odd number n = 2m - 1 of values exceeds the k-th value if at most m - 1 of its members are among
     * the first k: a binomial distribution, which gives the interval without drawing (Efron 1979, from memory).
     */
    @ParameterizedTest
    @ValueSource(ints = {5, 9, 15, 25})
    void theIntervalIsThatOfTheExactDistributionOfResampledMedians(int spans) {
        double[] ratios = new double[spans];
        for (int i = 0; i < spans; i++) {
            ratios[i] = 1 + i;
        }
        Bootstrap.Interval interval = Bootstrap.ofMedian(ratios, 0.9, 200_000, 7);

        int lowest = exactQuantile(spans, 0.05);
        int highest = exactQuantile(spans, 0.95);
        assertEquals(lowest, interval.lowRatio(), 1e-9);
        assertEquals(highest, interval.highRatio(), 1e-9);
    }

    /** Returns the least k for which a resampled median is at most the k-th value with at least this chance. */
    private static int exactQuantile(int spans, double chance) {
        int middle = (spans + 1) / 2;
        for (int k = 1; k <= spans; k++) {
            double atMost = 0;
            for (int among = middle; among <= spans; among++) {
                atMost += binomial(spans, among, k / (double) spans);
            }
            if (atMost >= chance) {
                return k;
            }
        }
        throw new IllegalStateException();
    }

    private static double binomial(int of, int count, double chance) {
        double ways = 1;
        for (int i = 1; i <= count; i++) {
            ways *= (of - count + i) / (double) i;
        }
        return ways * Math.pow(chance, count) * Math.pow(1 - chance, of - count);
    }

    /**
     * Crews whose spans scatter about a true ratio: the interval of 90 % holds it about that often, of few spans less often, as the
     * percentile method is known to do. Its ends are order statistics k and n + 1 - k, between which a median is with the chance
     * {@code 1 - 2 P(B(n, 1/2) < k)}: 75 % for 3 spans, 88 % for 7, 82 % for 9, 88 % for 15, 90 % for 99.
     */
    @ParameterizedTest(name = "{0} spans, true ratio {1}")
    @CsvSource({"3, 1.4, 0.75", "7, 1.4, 0.875", "9, 1.4, 0.82", "15, 0.7, 0.88", "99, 1.0, 0.9"})
    void theIntervalHoldsTheTrueRatioAboutAsOftenAsItSays(int spans, double trueRatio, double expectedRatio) {
        var random = new SplittableRandom(20_270_331);
        int crews = 2000;
        int held = 0;
        for (int crew = 0; crew < crews; crew++) {
            double[] ratios = crew(random, spans, trueRatio);
            Bootstrap.Interval interval = Bootstrap.ofMedian(ratios, 0.9, 400, crew);
            held += interval.lowRatio() <= trueRatio && trueRatio <= interval.highRatio() ? 1 : 0;
        }
        double heldRatio = held / (double) crews;
        assertEquals(expectedRatio, heldRatio, 0.03);
    }

    /** Lognormal, with a factor of about 1.35 between typical spans. */
    private static double[] crew(RandomGenerator random, int spans, double trueRatio) {
        double[] ratios = new double[spans];
        Arrays.setAll(ratios, i -> trueRatio * Math.exp(0.3 * random.nextGaussian()));
        return ratios;
    }

    @Test
    void aThirdOfWildReportsHardlyMovesTheEstimate() {
        var random = new SplittableRandom(5);
        double[] ratios = crew(random, 90, 1.2);
        RatioEstimate clean = Estimates.of(ratios, 0, SETTINGS);
        for (int i = 0; i < 15; i++) {
            ratios[i] = 19;
            ratios[i + 15] = 0.06;
        }
        RatioEstimate wild = Estimates.of(ratios, 0, SETTINGS);

        assertEquals(1.2, clean.medianRatio(), 0.15);
        assertEquals(clean.medianRatio(), wild.medianRatio(), 0.15);
    }

    @Test
    void theMedianIsFollowedByItsWeightInLogarithms() {
        RatioEstimate estimate = Estimates.of(new double[] {1.5, 1.5, 1.5, 1.5, 1.5}, 0, SETTINGS);

        assertEquals(0.5, estimate.weightRatio(), 0);
        assertEquals(Math.sqrt(1.5), estimate.learnedRatio(), 1e-12);
        assertEquals(Math.sqrt(1 / 1.5), estimate.inverse().learnedRatio(), 1e-12);
        assertEquals(
                5.0 / 25,
                Estimates.of(new double[] {1, 1, 1, 1, 1}, 15, SETTINGS).weightRatio(),
                0);
    }

    /** Reports as planned keep the middle bit for bit and draw both limits toward it. */
    @ParameterizedTest
    @ValueSource(ints = {3, 4, 14, 100})
    void reportsAsPlannedOnlyNarrow(int spans) {
        double[] ratios = new double[spans];
        Arrays.fill(ratios, 1);
        RatioEstimate estimate = Estimates.of(ratios, 0, SETTINGS);

        assertEquals(1, estimate.learnedRatio(), 0);
        assertEquals(1, estimate.lowRatio(), 0);
        assertEquals(1, estimate.highRatio(), 0);
        double low = estimate.lowOverValueRatio(0.5);
        double high = estimate.highOverValueRatio(2);
        assertTrue(low > 0.5 && low < 1, "low " + low);
        assertTrue(high < 2 && high > 1, "high " + high);
        assertEquals(1, low * high, 1e-12);
        assertEquals(0, estimate.lowOverValueRatio(0), 0);
    }

    /** Ratios that fill a triangle about 1 in logarithms have its ends as their spread. */
    @Test
    void theSpreadOfATriangleIsItsEnds() {
        int spans = 20_001;
        double[] ratios = new double[spans];
        for (int i = 0; i < spans; i++) {
            double share = i / (spans - 1.0);
            double end = share < 0.5 ? Math.log(0.6) : Math.log(1.9);
            ratios[i] = Math.exp(end * (1 - Math.sqrt(2 * Math.min(share, 1 - share))));
        }
        RatioEstimate estimate = Estimates.of(ratios, 0, new LearnSettings(5, 3, 20, 1, 100, 0.9));

        assertEquals(0.6, estimate.lowSpreadRatio(), 1e-3);
        assertEquals(1.9, estimate.highSpreadRatio(), 1e-3);
    }

    @Test
    void theSameSeedGivesTheSameInterval() {
        double[] ratios = {0.8, 1.1, 1.3, 0.9, 2.4, 1.7};
        double[] reversed = {1.7, 2.4, 0.9, 1.3, 1.1, 0.8};

        assertEquals(Bootstrap.ofMedian(ratios, 0.9, 4000, 1), Bootstrap.ofMedian(reversed, 0.9, 4000, 1));
    }
}
