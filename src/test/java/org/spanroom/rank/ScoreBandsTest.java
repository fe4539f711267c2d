package org.spanroom.rank;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ScoreBandsTest {
    @Test
    void aSpanThatBeatsTheFirstInAThirdOfTheDrawsIsInItsBand() {
        // against the first: the second wins 1 of 3, the third none, so that it begins a band
        List<double[]> scores =
                List.of(new double[] {80, 80, 80}, new double[] {70, 70, 90}, new double[] {60, 60, 60}, new double[] {
                    50, 50, 61
                });

        assertEquals(List.of(1, 1, 2, 2), ScoreBands.of(scores).bandOfSpan());
    }

    @Test
    void itIsTheFirstOfTheBandThatCountsNotTheSpanAbove() {
        // the third beats the second in 1 of 3 draws, but the first in none
        List<double[]> scores =
                List.of(new double[] {80, 80, 80}, new double[] {70, 70, 90}, new double[] {60, 75, 60});

        assertEquals(List.of(1, 1, 2), ScoreBands.of(scores).bandOfSpan());
    }

    @Test
    void aDrawOfTheSameScoreCountsHalf() {
        double[] first = {80, 80, 0, 0, 80, 80};
        double[] twice = {70, 70, 0, 0, 70, 90}; // 1 won and 2 ties of 6: a third
        double[] once = {70, 70, 1, 0, 70, 70}; // 1 won and 1 tie of 6: a quarter

        assertEquals(2 / 6.0, ScoreBands.beatShareRatio(twice, first));
        assertEquals(1.5 / 6, ScoreBands.beatShareRatio(once, first));
        assertEquals(
                List.of(1, 1, 2), ScoreBands.of(List.of(first, twice, once)).bandOfSpan());
    }

    @Test
    void spansOfTheSameScoresAreOneBand() {
        List<double[]> scores = List.of(new double[] {0, 5}, new double[] {0, 5}, new double[] {0, 5});

        ScoreBands.Bands bands = ScoreBands.of(scores);

        assertEquals(List.of(1, 1, 1), bands.bandOfSpan());
        assertEquals(2, bands.samples());
        assertEquals(1.0 / 3, bands.shareRatio());
    }

    @Test
    void noSpansHaveNoBands() {
        assertEquals(List.of(), ScoreBands.of(List.of()).bandOfSpan());
    }

    @Test
    void spansMustHaveTheSameNumberOfSamples() {
        assertThrows(
                IllegalArgumentException.class, () -> ScoreBands.of(List.of(new double[] {1, 2}, new double[] {1})));
        assertThrows(IllegalArgumentException.class, () -> ScoreBands.of(List.of(new double[] {}, new double[] {})));
    }

    /** The definition word by word, from shares of all pairs. */
    @Test
    void randomBandsAreThoseOfTheDefinition() {
        var random = new Random(3);
        for (int round = 0; round < 200; round++) {
            List<double[]> scores = random(random);
            double[][] shares = shares(scores);
            List<Integer> bands = ScoreBands.of(scores).bandOfSpan();
            int first = 0;
            for (int span = 0; span < scores.size(); span++) {
                boolean begins = span == 0 || !bands.get(span).equals(bands.get(span - 1));
                first = begins && span > 0 ? checkBegins(shares, first, span) : first;
                assertEquals(span == 0 ? 1 : bands.get(span - 1) + (begins ? 1 : 0), bands.get(span));
                assertEquals(!begins, span > first && shares[span][first] >= 1.0 / 3);
            }
        }
    }

    private static int checkBegins(double[][] shares, int first, int span) {
        assertEquals(true, shares[span][first] < 1.0 / 3);
        return span;
    }

    private static List<double[]> random(Random random) {
        List<double[]> scores = new ArrayList<>();
        int samples = 1 + random.nextInt(30);
        int spans = 2 + random.nextInt(12);
        for (int span = 0; span < spans; span++) {
            double middle = 40 - 2 * span;
            // whole numbers, so that there are ties
            scores.add(random.ints(samples, -6, 7)
                    .mapToDouble(off -> Math.max(0, middle + off))
                    .toArray());
        }
        return scores;
    }

    private static double[][] shares(List<double[]> scores) {
        double[][] shares = new double[scores.size()][scores.size()];
        for (int one = 0; one < shares.length; one++) {
            for (int other = 0; other < shares.length; other++) {
                double won = 0;
                for (int sample = 0; sample < scores.get(one).length; sample++) {
                    won += (1 + Math.signum(scores.get(one)[sample] - scores.get(other)[sample])) / 2;
                }
                shares[one][other] = won / scores.get(one).length;
            }
        }
        return shares;
    }
}
