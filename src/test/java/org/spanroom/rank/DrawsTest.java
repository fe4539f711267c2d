package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Random;
import java.util.function.DoublePredicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Checks the draws against what is defined of an equidistributed set, and against independent draws of the Java library. */
class DrawsTest {
    private static final int SPANS = 400;

    /** One number in each equal part: of 64 samples from a multiple of 64 on, and of every smaller or larger power of two. */
    @ParameterizedTest(name = "unknown {0}, {1} samples")
    @CsvSource({"0, 64", "1, 64", "2, 64", "0, 16", "1, 16", "2, 16", "0, 4096", "1, 4096", "2, 4096"})
    void everyUnknownIsEquidistributed(int place, int samples) {
        for (int seed = 1; seed <= 5; seed++) {
            for (String id : new String[] {"S-1", "S-2", "Größe 4/7"}) {
                var draws = new Draws(seed, id);
                for (int block = 0; block < 3; block++) {
                    var met = new BitSet(samples);
                    for (int sample = 0; sample < samples; sample++) {
                        double value = draws.at(place, block * samples + sample);
                        assertThat(value).isBetween(0.0, Math.nextDown(1.0));
                        met.set((int) (value * samples));
                    }
                    assertThat(met.cardinality()).isEqualTo(samples);
                }
            }
        }
    }

    /** Rectangles of equal area, of every shape: a point in each of 64 for the first two unknowns, one or two halves of it for the others. */
    @ParameterizedTest(name = "unknowns {0} and {1}: {2} parts")
    @CsvSource({"0, 1, 64", "0, 2, 16", "1, 2, 16"})
    void pairsOfUnknownsFillTheSquareEvenly(int one, int other, int parts) {
        var draws = new Draws(3, "S-9");
        for (int columns = 1; columns <= parts; columns *= 2) {
            int rows = parts / columns;
            int[] met = new int[parts];
            for (int sample = 0; sample < 64; sample++) {
                met[((int) (draws.at(one, sample) * columns)) * rows + (int) (draws.at(other, sample) * rows)]++;
            }
            assertThat(Arrays.stream(met).max().orElseThrow()).isLessThanOrEqualTo(64 / parts * 2);
            if (parts == 64) {
                assertThat(met).containsOnly(1);
            }
        }
    }

    /** The error of a chance beside that of independent draws: sqrt(p (1 - p) / n), any textbook on statistics. */
    @ParameterizedTest(name = "unknown {0}, chance {1}, {2} samples")
    @CsvSource({
        "0, 0.5, 64",
        "1, 0.5, 64",
        "2, 0.5, 64",
        "0, 0.06, 64",
        "1, 0.03, 64",
        "2, 0.02, 64",
        "0, 0.84, 64",
        "1, 0.37, 64",
        "2, 0.37, 64",
        "0, 0.37, 100",
        "1, 0.37, 50",
        "0, 0.4142, 4096",
        "1, 0.4142, 4096",
        "2, 0.4142, 4096"
    })
    void aChanceOfOneUnknownIsFarCloserThanThatOfIndependentDraws(int place, double chance, int samples) {
        double independent = Math.sqrt(chance * (1 - chance) / samples);

        double error = errorOf(samples, (draws, sample) -> draws.at(place, sample) < chance, chance);

        assertThat(error).isLessThan((samples % 64 == 0 ? 0.5 : 0.6) * independent);
        assertThat(error).isLessThan(1.01 / Math.min(samples, 64));
    }

    @ParameterizedTest(name = "unknowns {0} and {1}, {2} x {3}")
    @CsvSource({
        "0, 1, 0.5, 0.5",
        "0, 2, 0.5, 0.5",
        "1, 2, 0.5, 0.5",
        "0, 1, 0.8, 0.3",
        "0, 2, 0.8, 0.3",
        "1, 2, 0.8, 0.3",
        "0, 2, 0.71, 0.06",
        "1, 2, 0.25, 0.94"
    })
    void aChanceOfTwoUnknownsIsCloserThanThatOfIndependentDraws(int one, int other, double first, double second) {
        double chance = first * second;
        double independent = Math.sqrt(chance * (1 - chance) / 64);

        double error = errorOf(
                64, (draws, sample) -> draws.at(one, sample) < first && draws.at(other, sample) < second, chance);

        assertThat(error).isLessThan(0.7 * independent);
    }

    /** Drawings of rates take turns by the number of the sample: of one turn the friction is as mixed as it is of all. */
    @ParameterizedTest
    @ValueSource(ints = {2, 3, 8, 16})
    void noTurnOfSamplesMeetsOnePartOfTheInterval(int turns) {
        double spread = 0;
        double product = 0;
        for (int span = 0; span < SPANS; span++) {
            var draws = new Draws(1, "span-" + span);
            double sum = 0;
            int count = 0;
            for (int sample = 1; sample < 64; sample += turns) {
                sum += draws.at(0, sample);
                count++;
            }
            double mean = sum / count;
            spread += (mean - 0.5) * (mean - 0.5) * 12 * count;
            product += (draws.at(0, 1) - 0.5) * (draws.at(0, 1 + turns) - 0.5) * 12;
        }
        // Independent draws: the variance of a mean of n is 1/(12 n), and two draws have no correlation.
        assertThat(spread / SPANS).isLessThan(1.3);
        assertThat(product / SPANS).isEqualTo(0, within(0.2));
    }

    @Test
    void spansAndSeedsDrawIndependently() {
        double spans = 0;
        double seeds = 0;
        for (int i = 0; i < SPANS; i++) {
            double value = new Draws(1, "span-" + i).at(0, 0) - 0.5;
            spans += value * (new Draws(1, "span-" + (i + 1)).at(0, 0) - 0.5) * 12;
            seeds += value * (new Draws(2, "span-" + i).at(0, 0) - 0.5) * 12;
        }
        assertThat(spans / SPANS).isEqualTo(0, within(0.15));
        assertThat(seeds / SPANS).isEqualTo(0, within(0.15));
    }

    /** Kolmogorov's distance of 4096 places inside their 64ths from even ones: 1.63/sqrt(n) is passed once in a hundred. */
    @Test
    void numbersAreEvenInsideTheirPart() {
        var draws = new Draws(5, "S-3");
        double[] places = new double[4096];
        for (int sample = 0; sample < places.length; sample++) {
            double value = draws.at(1, sample % 64 + 64 * (sample / 64)) * 64;
            places[sample] = value - Math.floor(value);
        }
        Arrays.sort(places);
        double farthest = 0;
        for (int i = 0; i < places.length; i++) {
            farthest = Math.max(farthest, Math.abs(places[i] - (i + 0.5) / places.length));
        }
        assertThat(farthest).isLessThan(1.63 / 64);
    }

    @Test
    void theSameSeedSpanAndSampleGiveTheSame() {
        var draws = new Draws(7, "S");
        double first = draws.at(2, 17);
        draws.at(0, 3);

        assertThat(draws.at(2, 17)).isEqualTo(first);
        assertThat(new Draws(7, "S").at(2, 17)).isEqualTo(first);
        assertThat(new Draws(8, "S").at(2, 17)).isNotEqualTo(first);
        assertThat(new Draws(7, "T").at(2, 17)).isNotEqualTo(first);
        assertThat(draws.at(1, 17)).isNotEqualTo(first);
    }

    /** The test itself: independent draws have the error that it holds ours to. */
    @Test
    void independentDrawsHaveTheErrorThatTheoryGivesThem() {
        var random = new Random(1);
        DoublePredicate isBelow = value -> value < 0.25;
        double squares = 0;
        for (int span = 0; span < 4000; span++) {
            double share = random.doubles(64).filter(isBelow).count() / 64.0;
            squares += (share - 0.25) * (share - 0.25);
        }
        assertThat(Math.sqrt(squares / 4000)).isEqualTo(Math.sqrt(0.25 * 0.75 / 64), within(0.002));
    }

    private interface Event {
        boolean happens(Draws draws, int sample);
    }

    private static double errorOf(int samples, Event event, double chance) {
        double squares = 0;
        for (int span = 0; span < SPANS; span++) {
            var draws = new Draws(1, "span-" + span);
            int count = 0;
            for (int sample = 0; sample < samples; sample++) {
                count += event.happens(draws, sample) ? 1 : 0;
            }
            double error = count / (double) samples - chance;
            squares += error * error;
        }
        return Math.sqrt(squares / SPANS);
    }

    /** All numbers at once against each by itself. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void flippingAllAtOnceFlipsEach(long seed) {
        var random = new Random(seed);
        byte[] all = new byte[64];
        for (int round = 0; round < 100; round++) {
            long flips = random.nextLong();
            Draws.flipAll(flips, all);
            for (int six = 0; six < all.length; six++) {
                assertThat((int) all[six]).isEqualTo(Draws.flipped(six, flips));
            }
        }
    }

    /** Numbers of samples in any order against those in their order. */
    @Test
    void theOrderOfAskingDoesNotShow() {
        var inOrder = new Draws(3, "span");
        var jumping = new Draws(3, "span");
        var random = new Random(3);
        int[] turns = new int[4096];
        Arrays.setAll(turns, inOrder::turn);
        for (int round = 0; round < 10_000; round++) {
            int sample = random.nextInt(turns.length);
            assertThat(jumping.turn(sample)).isEqualTo(turns[sample]);
        }
    }

    /** Of each 64 samples one lies in each part; the same as going through all samples finds. */
    @ParameterizedTest(name = "unknown {0}")
    @ValueSource(ints = {0, 1, 2})
    void theSampleOfAPartIsTheOneWhosePartThatIs(int place) {
        for (int name = 0; name < 20; name++) {
            var draws = new Draws(name, "span-" + name);
            for (int block = 0; block < 64; block++) {
                for (int part = 0; part < Draws.PARTS; part++) {
                    int sample = draws.sampleInPart(place, block, part);
                    assertThat(sample / Draws.PARTS).isEqualTo(block);
                    assertThat(draws.part(place, draws.turn(sample))).isEqualTo(part);
                }
            }
        }
    }
}
