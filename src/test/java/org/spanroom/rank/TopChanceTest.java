package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.pull.FrictionUse;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.rank.UncertaintySettings;

/** Checks the screen before drawing against the draws themselves: it may leave a sample open, but never settles one wrongly. */
class TopChanceTest {
    private static final int SAMPLES = UncertaintySettings.FIELD_CHECK_SAMPLES;
    private static final double LEAST_CHANGE_RATIO =
            ShippedConfig.get().uncertainty().leastChangeRatio();

    /** The pull gives up to 20 points, less the more it is used; the first quantity and the saving count as they are. */
    private static final Simulation SIMULATION = new Simulation(
            ShippedConfig.get().uncertainty(),
            (place, quantity) -> place == 1 ? 20 / (1 + quantity / 50) : quantity,
            1,
            2,
            (fromPercent, toPercent) -> 20 / (1 + fromPercent / 50),
            (fromRatio, toRatio) -> toRatio);

    /** By drawing all 4,096 samples of 150 spans, with thresholds and savings that take turns after 1, 64, 96 and 100 samples. */
    @ParameterizedTest(name = "{0} thresholds")
    @ValueSource(ints = {1, 64, 96, 100})
    void noSampleIsAtTheTopThatIsNotOpen(int thresholds) {
        var random = new Random(thresholds);
        int settled = 0;
        int tops = 0;
        for (int number = 0; number < 150; number++) {
            SpanOutlook span = span(random, number);
            double[] least = random.doubles(thresholds, 20, 60).toArray();
            TopChance chance = TopChance.of(SIMULATION, span, least, SAMPLES);
            SpanSamples samples = SIMULATION.samples(span);
            for (int sample = 0; sample < SAMPLES; sample++) {
                int situation = samples.take(sample);
                boolean open = chance.isOpen(sample) && chance.isOpen(situation, sample);
                boolean top = TopScores.isTop(samples.scorePoints(), least[sample % thresholds]);
                assertThat(open || !top).as("%s, sample %s", span, sample).isTrue();
                settled += open ? 0 : 1;
                tops += top ? 1 : 0;
            }
        }
        assertThat(settled).isGreaterThan(20 * SAMPLES);
        assertThat(tops).isGreaterThan(20 * SAMPLES);
    }

    @Test
    void theMostOfASpanIsNoLessThanInAnySampleAndHardlyMore() {
        var random = new Random(5);
        for (int number = 0; number < 500; number++) {
            SpanOutlook span = span(random, number);
            double most = Stream.of(SIMULATION.mostPoints(span, SAMPLES))
                    .flatMapToDouble(DoubleStream::of)
                    .max()
                    .orElseThrow();
            assertThat(SIMULATION.mostPoints(span)).isBetween(most, most + 1e-6);
        }
    }

    /**
     * Spans come one after another, as in a run, and the top is known at the end only: whatever was settled before has less chance to be at
     * the top, by all samples, than a check must change.
     */
    @Test
    void whatIsSettledEarlyIsSettledInTheEnd() {
        var random = new Random(7);
        var soFar = new TopScores(SIMULATION.scores(span(random, 0)).bySample().length, 20);
        var spans = new ArrayList<SpanOutlook>();
        var settledEarly = new ArrayList<SpanOutlook>();
        for (int number = 0; number < 600; number++) {
            SpanOutlook span = span(random, number);
            spans.add(span);
            soFar.add(SIMULATION.scores(span).bySample());
            if (!FieldCheckFinder.mayFind(SIMULATION, span, SIMULATION.mostPoints(span), soFar, LEAST_CHANGE_RATIO)) {
                settledEarly.add(span);
            }
        }
        double[] least = soFar.thresholds();

        assertThat(settledEarly).hasSizeBetween(200, 599);
        assertThat(settledEarly)
                .allSatisfy(span -> assertThat(topRatio(span, least)).isLessThan(LEAST_CHANGE_RATIO));
        assertThat(spans).anySatisfy(span -> assertThat(topRatio(span, least)).isGreaterThan(0.5));
    }

    /** What the run keeps of a span to settle it in the end: the most points that it can have. */
    @Test
    void aSpanWhoseMostPointsAreBelowTheTopIsNeverInIt() {
        var random = new Random(11);
        var soFar = new TopScores(SIMULATION.scores(span(random, 0)).bySample().length, 20);
        var spans = new ArrayList<SpanOutlook>();
        for (int number = 0; number < 600; number++) {
            spans.add(span(random, number));
            soFar.add(SIMULATION.scores(spans.get(number)).bySample());
        }
        double[] thresholds = soFar.thresholds();

        List<SpanOutlook> below = spans.stream()
                .filter(span -> SIMULATION.mostPoints(span) < TopScores.leastPoints(thresholds))
                .toList();

        assertThat(below).hasSizeBetween(100, 580);
        assertThat(below)
                .allSatisfy(span -> assertThat(topRatio(span, thresholds)).isZero());
    }

    /** A span whose scores reach the top in no sample has no chance that its row could show, also while not all spans are known. */
    @Test
    void aSpanThatIsAtNoTopSoFarIsAtNoneInTheEnd() {
        var random = new Random(8);
        var soFar = new TopScores(64, 5);
        var none = new ArrayList<double[]>();
        for (int number = 0; number < 500; number++) {
            double[] scores = random.doubles(64, 0, 100 + random.nextInt(20)).toArray();
            soFar.add(scores);
            if (!soFar.isAnyTop(scores)) {
                none.add(scores);
            }
        }

        assertThat(none)
                .isNotEmpty()
                .allSatisfy(scores -> assertThat(TopScores.topRatio(scores, soFar.thresholds()))
                        .isZero());
    }

    private static double topRatio(SpanOutlook span, double[] least) {
        SpanSamples samples = SIMULATION.samples(span);
        int tops = 0;
        for (int sample = 0; sample < SAMPLES; sample++) {
            samples.take(sample);
            tops += TopScores.isTop(samples.scorePoints(), least[sample % least.length]) ? 1 : 0;
        }
        return tops / (double) SAMPLES;
    }

    private static SpanOutlook span(Random random, int number) {
        var situations = new ArrayList<SpanOutlook.Situation>();
        int count = 1 + random.nextInt(3);
        for (int i = 0; i < count; i++) {
            double[] savings =
                    random.doubles(random.nextBoolean() ? 0 : 64, 0, 9).toArray();
            situations.add(new SpanOutlook.Situation(
                    0, 0, 1.0 / count, new double[] {random.nextInt(45), 50, 3}, random.nextInt(4) > 0, savings));
        }
        double dryRatio = 0.2 + random.nextDouble();
        var use = FrictionUse.of(LimitKind.INNERDUCT_STRENGTH, dryRatio / 2, dryRatio, 3 * dryRatio);
        return new SpanOutlook("s" + number, List.copyOf(situations), use, 0.1);
    }
}
