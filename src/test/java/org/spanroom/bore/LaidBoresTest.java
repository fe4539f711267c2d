package org.spanroom.bore;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.network.BoreShape;

/** What is soon known to fit is arranged without overlap, is what the search says too, and holds in every wider bore. */
class LaidBoresTest {
    static LongStream seeds() {
        return LongStream.range(0, 120);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void whatIsLaidIsAnArrangementAndTheSearchAgrees(long seed) {
        PackingTask task = mixed(seed);
        var laid = new LaidBores(task);
        var packer = new Packer();
        boolean narrower = false;
        for (double fillRatio : new double[] {0.95, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.15, 0.05}) {
            PackingTask asked = task.filling(fillRatio);

            boolean goes = laid.goInto(asked);

            assertThat(goes || !narrower)
                    .as("a wider bore gets no worse an answer")
                    .isTrue();
            assertThat(new LaidBores(task).goInto(asked)).as("asked alone").isEqualTo(goes);
            assertThat(laid.narrowest(asked).isPresent()).isEqualTo(goes);
            if (goes) {
                Packed found = laid.narrowest(asked).orElseThrow();
                assertThat(asked.isMetBy(found.centersMm())).isTrue();
                assertThat(found.leastBoreMm()).isLessThanOrEqualTo(asked.boreMm());
                assertThat(packer.pack(asked).outcome()).isEqualTo(PackingOutcome.FITS);
            }
            assertThat(packer.outcome(asked, Work.withoutEnd()))
                    .isEqualTo(packer.pack(asked).outcome());
            narrower = goes;
        }
        assertThat(narrower).as("a bore that is hardly filled").isTrue();
    }

    /** Two circles need the sum of their diameters in a round bore; in a square one their sum of radii times 1 + 1 / sqrt 2. */
    @ParameterizedTest(name = "{0}: {1} mm and {2} mm need {3} mm")
    @CsvSource({"ROUND, 30, 20, 50", "ROUND, 25, 25, 50", "SQUARE, 20, 20, 34.1421356", "SQUARE, 40, 2, 40"})
    void oneOrTwoCirclesAreKnownToFitInTheirLeastBore(BoreShape shape, double one, double other, double leastMm) {
        var two = PackingTask.of(shape, leastMm, one, other);

        assertThat(new LaidBores(two).goInto(two.in(leastMm + 1e-6))).isTrue();
        assertThat(new LaidBores(two).goInto(two.in(leastMm - 1e-6))).isFalse();
        var single = PackingTask.of(shape, one, one);
        assertThat(new LaidBores(single).goInto(single.in(one + 1e-6))).isTrue();
        assertThat(new LaidBores(single).goInto(single.in(one - 1e-6))).isFalse();
    }

    /** Three wide circles leave gaps in which a sleeve's first cell would have no neighbor. */
    @Test
    void sleevesAreLaidInTheOpenSpace() {
        double[] diametersMm = {42.164, 42.164, 42.164, 15.748, 13.7, 13.7, 13.7};
        var task = PackingTask.jointed(BoreShape.ROUND, 125.4, diametersMm, new int[] {0, 0, 0, 0, 1, 1, 1}, 2);

        assertThat(Laying.lay(task)).isEmpty();
        assertThat(task.isMetBy(Laying.layCellsAbove(task))).isTrue();
        assertThat(new LaidBores(task).goInto(task)).isTrue();
    }

    @Test
    void crowdsAreNotLaid() {
        double[] diametersMm = DoubleStream.generate(() -> 10).limit(151).toArray();
        var task = PackingTask.of(BoreShape.ROUND, 10_000, diametersMm);

        assertThat(new LaidBores(task).goInto(task)).isFalse();
    }

    /** Every second set has sleeves of three cells. */
    private static PackingTask mixed(long seed) {
        var random = new SplittableRandom(seed);
        int loose = 1 + random.nextInt(7);
        int cells = seed % 2 == 0 ? 3 * random.nextInt(4) : 0;
        double[] diametersMm = DoubleStream.concat(
                        DoubleStream.generate(() -> 10 + 30 * random.nextDouble())
                                .limit(loose),
                        DoubleStream.generate(() -> 13.7).limit(cells))
                .toArray();
        int[] sleeves = IntStream.range(0, loose + cells)
                .map(i -> i < loose ? 0 : 1 + (i - loose) / 3)
                .toArray();
        BoreShape shape = random.nextInt(4) == 0 ? BoreShape.SQUARE : BoreShape.ROUND;
        return PackingTask.jointed(shape, 1, diametersMm, sleeves, 2);
    }
}
