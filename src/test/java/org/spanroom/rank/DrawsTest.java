package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Holds the draws to the generator of the Java library, whose finalizer is SplitMix64's, and to the root of their recurrence. */
class DrawsTest {
    /** What {@link SplittableRandom} adds before it mixes, the odd number nearest to 2^64 over the golden ratio. */
    private static final long STEP = 0x9E3779B97F4A7C15L;

    @ParameterizedTest(name = "seed {0}, span {1}")
    @CsvSource({"1, S-1", "1, S-2", "2, S-1", "77, Größe 4/7"})
    void everySequenceBeginsAtAShiftByNameAndSeedAndGoesOnByAPowerOfTheRoot(int seed, String spanId) {
        var draws = new Draws(seed, spanId);

        long hash = mixed(STEP * (seed + 1L));
        for (byte octet : spanId.getBytes(StandardCharsets.UTF_8)) {
            hash = mixed(hash ^ (octet & 0xFF));
        }
        for (int place = 0; place < 4; place++) {
            double shift = new SplittableRandom(hash).nextDouble();
            hash = new SplittableRandom(hash).nextLong();
            double step = Math.pow(root(), -(place + 1));
            for (int sample = 0; sample < 100; sample++) {
                double expected = (shift + (sample + 1) * step) % 1;
                assertThat(draws.at(place, sample)).isCloseTo(expected, within(1e-12));
            }
        }
    }

    private static long mixed(long bits) {
        return new SplittableRandom(bits - STEP).nextLong();
    }

    /** The root of x^5 = x + 1, by halving. */
    private static double root() {
        double low = 1;
        double high = 2;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (Math.pow(middle, 5) < middle + 1) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
