package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.model.Quantile;
import org.spanroom.model.pull.FrictionUse;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.rank.UncertaintySettings;

/** Checks the draws against what probability theory says of them, with a score that is one of the quantities. */
class SimulationTest {
    private static final double[] NO_SAVINGS = {};

    @Test
    void theMeanOfATriangularFrictionIsItsMiddle() {
        Simulation simulation = simulation(4096, (place, quantity) -> place == 1 ? quantity : 0);
        SpanOutlook flat = span("s", 0, used(50.0, 100.0, 200.0), situation(1, 3));

        double[] used = simulation.scores(flat).bySample();

        // Log-linear between 50 and 200 with 100 in the middle: the logarithm is triangular around log 100. Variance of
        // a
        // triangular distribution on 0 to 1 about its middle: 1/24 (any textbook on statistics).
        double mean = Arrays.stream(used).map(Math::log).average().orElseThrow();
        double variance = Arrays.stream(used)
                .map(value -> Math.pow(Math.log(value) - mean, 2))
                .average()
                .orElseThrow();
        assertThat(mean).isEqualTo(Math.log(100), within(0.002));
        assertThat(variance).isEqualTo(Math.pow(Math.log(4), 2) / 24, within(0.002));
    }

    @Test
    void chancesOfSituationsAndOfABlockedDuctComeOutAsGiven() {
        Simulation simulation = simulation(8192, (place, quantity) -> place == 0 ? quantity : 0);
        SpanOutlook span = span("s", 0.1, used(50.0, 50.0, 50.0), situation(0.7, 9), situation(0.3, 6));

        Simulation.Scores scores = simulation.scores(span);

        assertThat(share(scores.bySample(), 0)).isEqualTo(0.1, within(0.01));
        assertThat(share(scores.bySample(), 9)).isEqualTo(0.63, within(0.01));
        assertThat(share(scores.bySample(), 6)).isEqualTo(0.27, within(0.01));
        assertThat(scores.feasibleRatio()).isEqualTo(0.9, within(0.01));
    }

    @Test
    void aPullThatFailsInHalfOfTheStatesIsFeasibleInTheOtherHalf() {
        Simulation simulation = simulation(4096, (place, quantity) -> place == 0 ? quantity : 0);

        double feasible = simulation
                .scores(span("s", 0, used(50.0, 100.0, 200.0), situation(1, 3)))
                .feasibleRatio();

        assertThat(feasible).isEqualTo(0.5, within(0.01));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
    void sixtyFourSamplesComeCloserThanIndependentOnesWould(int seed) {
        var settings = settings(64, seed);
        var simulation = new Simulation(settings, (place, quantity) -> place == 0 ? quantity : 0, 1, 2);
        double squares = 0;
        int spans = 200;
        for (int i = 0; i < spans; i++) {
            double chance = share(
                    simulation
                            .scores(span("span-" + i, 0.25, used(50.0, 50.0, 50.0), situation(1, 1)))
                            .bySample(),
                    0);
            squares += (chance - 0.25) * (chance - 0.25);
        }
        // Independent draws have a standard error of sqrt(0.25 x 0.75 / 64) = 0.054.
        assertThat(Math.sqrt(squares / spans)).isLessThan(0.027);
    }

    /** By hand on a logarithmic scale: half way from 100 to 400 is 200, half way from 50 to 100 is 50 times the root of 2. */
    @ParameterizedTest(name = "at {0}: {1} %")
    @CsvSource({"0, 50", "0.25, 70.7107", "0.5, 100", "0.75, 200", "1, 400"})
    void limitUseIsInterpolatedBetweenTheThreeStates(double place, double percent) {
        assertThat(UseCurve.of(used(50.0, 100.0, 400.0)).percentAt(place)).isEqualTo(percent, within(1e-4));
    }

    /** By hand: three scores, a quarter of the way is half way between the first two. */
    @ParameterizedTest(name = "share {0}: {1}")
    @CsvSource({"0, 10", "0.25, 15", "0.5, 20", "0.75, 30", "1, 40"})
    void aQuantileLiesBetweenTwoScores(double share, double points) {
        assertThat(Quantile.inUnit(new double[] {10, 20, 40}, share)).isEqualTo(points, within(1e-12));
    }

    @Test
    void aLimitThatIsUsedInFullIsStillKept() {
        Simulation simulation = simulation(64, (place, quantity) -> 1);

        assertThat(simulation
                        .scores(span("s", 0, used(100.0, 100.0, 100.0), situation(1, 3)))
                        .feasibleRatio())
                .isEqualTo(1);
    }

    @Test
    void whereNoRoomIsGainedTheScoreIsNothingAndTheSpanNotFeasible() {
        var none = new SpanOutlook.Situation(0, 0, 1, new double[] {5, 5, 5}, false, NO_SAVINGS);

        Simulation.Scores scores =
                simulation(64, (place, quantity) -> quantity).scores(span("s", 0, used(1.0, 1.0, 1.0), none));

        assertThat(scores.bySample()).containsOnly(0);
        assertThat(scores.feasibleRatio()).isZero();
    }

    /** Room 7, ease 40 % whatever the friction, and the saving of the sample's rates: 1, 2 or 3 by turns. */
    @Test
    void theSavingsOfTheSamplesTakeTurns() {
        var varied = new SpanOutlook.Situation(0, 0, 1, new double[] {7, 90, 50}, true, new double[] {1, 2, 3});
        SpanOutlook one = span("s", 0, used(40.0, 40.0, 40.0), varied);

        double[] all = simulation(9, (place, quantity) -> quantity).scores(one).bySample();
        double[] fixedSaving = simulation(9, (place, quantity) -> quantity)
                .scores(span("s", 0, used(40.0, 40.0, 40.0), situation(1, 7)))
                .bySample();

        assertThat(all).containsExactly(new double[] {48, 49, 50, 48, 49, 50, 48, 49, 50}, within(1e-9));
        assertThat(fixedSaving).containsOnly(new double[] {47}, within(1e-9));
    }

    /** What is no criterion does not vary: its place is -1. What is may have any place, the first too. */
    @ParameterizedTest(name = "ease at {0}, saving at {1}: {2} points in the first sample")
    @CsvSource({"-1, -1, 147", "1, -1, 97", "0, -1, 180", "-1, 0, 141", "0, 2, 131"})
    void onlyWhatIsACriterionVaries(int easePlace, int savingPlace, double points) {
        var varied = new SpanOutlook.Situation(0, 0, 1, new double[] {7, 90, 50}, true, new double[] {1, 2, 3});

        double[] bySample = new Simulation(settings(9, 1), (place, quantity) -> quantity, easePlace, savingPlace)
                .scores(span("s", 0, used(40.0, 40.0, 40.0), varied))
                .bySample();

        assertThat(bySample[0]).isEqualTo(points, within(1e-9));
        assertThat(bySample[1] - bySample[0]).isEqualTo(savingPlace < 0 ? 0 : 1, within(1e-9));
    }

    @Test
    void theSameSpanDrawsTheSameWhateverWasDrawnBefore() {
        SpanOutlook span = span("a", 0.1, used(50.0, 80.0, 150.0), situation(0.5, 9), situation(0.5, 6));
        Simulation simulation = simulation(64, (place, quantity) -> place < 2 ? quantity : 0);
        double[] alone = simulation.scores(span).bySample();

        simulation.scores(span("b", 0.1, used(5.0, 8.0, 15.0), situation(1, 3)));

        assertThat(simulation.scores(span).bySample()).isEqualTo(alone);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void topThresholdsAreThoseOfSorting(long seed) {
        var random = new Random(seed);
        int samples = 7;
        int top = (int) seed;
        List<double[]> spans = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            spans.add(random.doubles(samples, 0, 100).map(Math::rint).toArray());
        }
        var one = new TopScores(samples, top);
        var two = new TopScores(samples, top);
        for (int i = 0; i < spans.size(); i++) {
            (i % 3 == 0 ? one : two).add(spans.get(i));
        }
        one.addAll(two);

        for (int sample = 0; sample < samples; sample++) {
            int column = sample;
            List<Double> sorted =
                    new ArrayList<>(spans.stream().map(scores -> scores[column]).toList());
            sorted.sort(Collections.reverseOrder());
            assertThat(one.thresholds()[sample]).isEqualTo(sorted.get(top - 1));
        }
    }

    @Test
    void aScoreIsAmongTheTopWhereItReachesItsSamplesThreshold() {
        assertThat(TopScores.topRatio(new double[] {1, 5, 3, 7, 0, 5.9, 2, 6.1}, new double[] {1, 6}))
                .isEqualTo(5 / 8.0);
        // Where the top has free places everything gets in but what has no points at all.
        assertThat(TopScores.isTop(0, 0)).isFalse();
        assertThat(TopScores.isTop(0.1, 0)).isTrue();
        var two = new TopScores(1, 3);
        two.add(new double[] {5});
        two.add(new double[] {4});
        assertThat(two.thresholds()).containsExactly(0);
    }

    /** By drawing: no sample of 200 spans of one to three situations scores more than the most that is said of it. */
    @Test
    void noSampleScoresMoreThanTheMostThatItCan() {
        var random = new Random(3);
        Simulation.Points points = (place, quantity) -> place == 1 ? 20 / (1 + quantity / 50) : quantity;
        var simulation = new Simulation(settings(256, 1), points, 1, 2, (from, to) -> 20 / (1 + from / 50));
        int reached = 0;
        for (int i = 0; i < 200; i++) {
            var situations = new SpanOutlook.Situation[1 + random.nextInt(3)];
            for (int k = 0; k < situations.length; k++) {
                situations[k] = new SpanOutlook.Situation(
                        0,
                        0,
                        1.0 / situations.length,
                        new double[] {random.nextInt(50), 50, 3},
                        random.nextInt(4) > 0,
                        random.nextBoolean()
                                ? NO_SAVINGS
                                : random.doubles(1 + random.nextInt(64), 0, 9).toArray());
            }
            SpanOutlook span = span("s" + i, 0.1, used(random.nextInt(60), 60.0, 130.0), situations);

            double[][] most = simulation.mostPoints(span, 256);
            double[] scores = simulation.scores(span).bySample();

            for (int sample = 0; sample < scores.length; sample++) {
                double mostPoints = mostOfAny(most, sample);
                assertThat(scores[sample]).isLessThanOrEqualTo(mostPoints);
                reached += scores[sample] > 0.9 * mostPoints ? 1 : 0;
            }
        }
        assertThat(reached).isGreaterThan(1000);
    }

    /** The two radii keep no span out of the ranking, so that they fail no pull here either; they count in the score as they do there. */
    @ParameterizedTest
    @EnumSource(
            value = LimitKind.class,
            names = {"INNERDUCT_BEND_RADIUS", "VAULT_EXIT_RADIUS"})
    void aRadiusThatExcludesNothingLowersTheScoreAndNotTheChance(LimitKind radius) {
        Simulation simulation = simulation(4096, (place, quantity) -> place == 1 ? quantity : 0);
        FrictionUse strength = used(50.0, 100.0, 200.0);
        FrictionUse tight = strength.max(FrictionUse.of(radius, 2.5, 2.5, 2.5));

        Simulation.Scores alone = simulation.scores(span("s", 0, strength, situation(1, 3)));
        Simulation.Scores both = simulation.scores(span("s", 0, tight, situation(1, 3)));

        assertThat(alone.feasibleRatio()).isEqualTo(0.5, within(0.01));
        assertThat(both.feasibleRatio()).isEqualTo(alone.feasibleRatio());
        assertThat(both.feasibleDraws()).isEqualTo(alone.feasibleDraws());
        assertThat(both.bySample()).containsOnly(new double[] {250}, within(1e-9));
    }

    /** The same samples one after another, as the field checks draw them. */
    @Test
    void aSampleByItselfIsFeasibleWhereAllTogetherAre() {
        Simulation simulation = simulation(64, (place, quantity) -> 0);
        FrictionUse tight =
                used(50.0, 100.0, 200.0).max(FrictionUse.of(LimitKind.INNERDUCT_BEND_RADIUS, 1.5, 1.5, 1.5));
        SpanOutlook span = span("s", 0, tight, situation(1, 3));

        long together = simulation.scores(span).feasibleDraws();

        SpanSamples samples = simulation.samples(span);
        long oneByOne = 0;
        for (int sample = 0; sample < 64; sample++) {
            samples.take(sample);
            samples.scorePoints();
            oneByOne |= samples.isFeasible() ? 1L << sample : 0;
        }
        assertThat(oneByOne).isEqualTo(together).isNotZero();
    }

    private static double mostOfAny(double[][] bySituation, int sample) {
        return Arrays.stream(bySituation)
                .mapToDouble(points -> points[sample])
                .max()
                .orElseThrow();
    }

    private static double share(double[] values, double value) {
        return Arrays.stream(values).filter(v -> v == value).count() / (double) values.length;
    }

    private static Simulation simulation(int samples, Simulation.Points points) {
        return new Simulation(settings(samples, 1), points, 1, 2);
    }

    private static UncertaintySettings settings(int samples, int seed) {
        return new UncertaintySettings(true, seed, samples, 20, 0.06, 0.5, 0.03, 0.25, 0.02, 0.06, 0.013, 0.1, 0.9);
    }

    /** A situation whose first quantity is given; the second is the utilization, the third the saving. */
    private static SpanOutlook.Situation situation(double chance, double quantity) {
        return new SpanOutlook.Situation(0, 0, chance, new double[] {quantity, 0, 0}, true, NO_SAVINGS);
    }

    private static SpanOutlook span(
            String id, double blocked, FrictionUse utilization, SpanOutlook.Situation... situations) {
        return new SpanOutlook(id, List.of(situations), utilization, blocked);
    }

    /** One limit, in percent, when lubricated, dry and bad. */
    private static FrictionUse used(double lubricatedPercent, double dryPercent, double badPercent) {
        return FrictionUse.of(
                LimitKind.INNERDUCT_STRENGTH, lubricatedPercent / 100, dryPercent / 100, badPercent / 100);
    }
}
