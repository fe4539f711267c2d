package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.pull.FrictionUse;
import org.spanroom.model.pull.LimitKind;

/** Checks what is drawn lazily against the whole numbers of the draws. */
class SpanSamplesTest {
    private static final int SEED = ShippedConfig.get().uncertainty().seed();
    private static final Simulation SIMULATION =
            new Simulation(ShippedConfig.get().uncertainty(), (place, quantity) -> quantity, 1, 2);

    /** Chances in whole parts of 64, where a part ends exactly at the border of two situations, and any others. */
    @ParameterizedTest(name = "in parts of {0}")
    @ValueSource(ints = {2, 64, 100, 4096, 1_000_003})
    void whatAPartDecidesIsWhatTheNumberDecides(int parts) {
        var random = new Random(parts);
        for (int number = 0; number < 60; number++) {
            SpanOutlook span = span(random, number, parts);
            var draws = new Draws(SEED, span.spanId());
            SpanSamples samples = SIMULATION.samples(span);
            for (int sample = 0; sample < 4096; sample++) {
                assertThat(samples.take(sample)).isEqualTo(situation(span, draws.at(1, sample)));
                assertThat(samples.isBlocked()).isEqualTo(draws.at(2, sample) < span.blockedRatio());
                assertThat(samples.betterFrictionRatio()).isEqualTo(draws.at(0, sample));
            }
        }
    }

    /** Bit for bit, of spans with several situations of which some gain no room, more or less blocked, of more or fewer samples. */
    @ParameterizedTest(name = "{0} samples")
    @ValueSource(ints = {8, 63, 64, 65, 300})
    void allAtOnceAreWhatEachIsAlone(int count) {
        var random = new Random(count);
        for (int number = 0; number < 200; number++) {
            SpanOutlook span = span(random, number, 50);
            double[] scorePoints = new double[count];
            boolean[] isFeasible = new boolean[count];
            SIMULATION.samples(span).scoreAll(scorePoints, isFeasible);
            SpanSamples samples = SIMULATION.samples(span);
            for (int sample = 0; sample < count; sample++) {
                samples.take(sample);
                assertThat(scorePoints[sample]).isEqualTo(samples.scorePoints());
                assertThat(isFeasible[sample]).isEqualTo(samples.isFeasible());
            }
        }
    }

    @ParameterizedTest(name = "in parts of {0}")
    @ValueSource(ints = {2, 64, 100, 1_000_003})
    void noOtherPartLeadsToASituation(int parts) {
        var random = new Random(parts);
        for (int number = 0; number < 60; number++) {
            SpanOutlook span = span(random, number, parts);
            SpanSamples samples = SIMULATION.samples(span);
            var draws = new Draws(SEED, span.spanId());
            boolean[] wanted = new boolean[span.situations().size()];
            for (int i = 0; i < wanted.length; i++) {
                wanted[i] = random.nextBoolean();
            }
            int[] found = samples.partsOf(wanted);
            for (int sample = 0; sample < 4096; sample++) {
                if (wanted[samples.take(sample)]) {
                    assertThat(found).contains(draws.part(1, draws.turn(sample)));
                }
            }
        }
    }

    private static int situation(SpanOutlook span, double drawn) {
        double sum = 0;
        for (int i = 0; i < span.situations().size(); i++) {
            sum += span.situations().get(i).chanceRatio();
            if (drawn < sum) {
                return i;
            }
        }
        return 0;
    }

    private static SpanOutlook span(Random random, int number, int parts) {
        var situations = new ArrayList<SpanOutlook.Situation>();
        int left = parts;
        while (left > 0) {
            int taken = situations.size() == 4 ? left : 1 + random.nextInt(left);
            situations.add(new SpanOutlook.Situation(
                    0,
                    0,
                    taken / (double) parts,
                    new double[] {1 + situations.size(), 50, 3},
                    random.nextInt(5) > 0,
                    random.doubles(random.nextInt(3) * 32L, 0, 10).toArray()));
            left -= taken;
        }
        double blockedRatio = random.nextInt(parts + 1) / (double) parts;
        var use = FrictionUse.of(LimitKind.INNERDUCT_STRENGTH, 0.2, 0.4, 0.8 + random.nextDouble())
                .max(FrictionUse.of(LimitKind.CABLE_HOLD, 0.3, 0.35, 0.5));
        return new SpanOutlook("s" + number, situations, use, blockedRatio);
    }
}
