package org.spanroom.bore;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.corpus.PublishedPackings;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.network.BoreShape;

/** A law: a wider bore never gets a worse answer, and no answer depends on what was asked before it or on which thread asks. */
class MonotonePackingTest {
    private static final int EFFORT = 3;
    private static final List<PackingOutcome> FROM_WORST =
            List.of(PackingOutcome.DOES_NOT_FIT, PackingOutcome.UNDECIDED, PackingOutcome.FITS);

    @ParameterizedTest(name = "{0}")
    @MethodSource("sets")
    void aWiderBoreNeverGetsAWorseAnswer(String name, PackingTask set) {
        List<Double> bores = bores(set);
        Map<Double, Packed> upward = answers(set, bores);

        PackingOutcome before = PackingOutcome.DOES_NOT_FIT;
        for (Packed packed : upward.values()) {
            assertThat(FROM_WORST.indexOf(packed.outcome())).isGreaterThanOrEqualTo(FROM_WORST.indexOf(before));
            before = packed.outcome();
        }
        assertThat(before).isEqualTo(PackingOutcome.FITS);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("sets")
    void neitherTheOrderOfQuestionsNorThreadsChangeAnAnswer(String name, PackingTask set) {
        List<Double> bores = new ArrayList<>(bores(set));
        Map<Double, Packed> upward = answers(set, bores);
        Collections.shuffle(bores, new Random(1));
        Map<Double, Packed> shuffled = answers(set, bores);
        var packer = new Packer(EFFORT);
        Map<Double, Packed> together = new ConcurrentHashMap<>();
        bores.parallelStream().forEach(boreMm -> together.put(boreMm, packer.pack(set.in(boreMm))));

        for (double boreMm : bores.subList(0, 12)) {
            Packed alone = new Packer(EFFORT).pack(set.in(boreMm));
            for (Packed other : List.of(upward.get(boreMm), shuffled.get(boreMm), together.get(boreMm))) {
                assertThat(other.outcome()).isEqualTo(alone.outcome());
                assertThat(other.leastBoreMm()).isEqualTo(alone.leastBoreMm());
                assertThat(other.centersMm()).isEqualTo(alone.centersMm());
            }
        }
    }

    /** Published radius of 11 equal circles, in {@link PublishedPackings}: from it on they fit. */
    @Test
    void elevenCirclesFitInEveryBoreWiderThanTheBest() {
        var packer = new Packer();
        var eleven = PackingTask.of(
                BoreShape.ROUND, 1, DoubleStream.generate(() -> 20).limit(11).toArray());
        double bestMm = 20 * PublishedPackings.roundRatio(11);

        for (int k = 1; k <= 40; k++) {
            assertThat(packer.pack(eleven.in(bestMm * (1 + 0.00025 * k))).outcome())
                    .isEqualTo(PackingOutcome.FITS);
        }
    }

    private static Map<Double, Packed> answers(PackingTask set, List<Double> bores) {
        var packer = new Packer(EFFORT);
        var answers = new TreeMap<Double, Packed>();
        bores.forEach(boreMm -> answers.put(boreMm, packer.pack(set.in(boreMm))));
        return answers;
    }

    /** From what areas allow to what the first starts find, most of them near to the best. */
    private static List<Double> bores(PackingTask set) {
        double wideMm = 2 * LeastBore.quickHalfMm(set);
        return IntStream.rangeClosed(-44, 4)
                .mapToObj(k -> wideMm * (1 + 0.02 * (k / 8.0) * Math.abs(k) / 44))
                .toList();
    }

    static Stream<Arguments> sets() {
        var sets = new ArrayList<Arguments>();
        for (BoreShape shape : List.of(BoreShape.ROUND, BoreShape.SQUARE)) {
            for (int count : new int[] {5, 9, 11, 15, 18}) {
                double[] equal = DoubleStream.generate(() -> 20).limit(count).toArray();
                sets.add(Arguments.of(count + " equal, " + shape, PackingTask.of(shape, 1, equal)));
            }
            for (long seed = 0; seed < 12; seed++) {
                sets.add(mixed(shape, seed));
            }
        }
        return sets.stream();
    }

    /** Every third set has sleeves. */
    private static Arguments mixed(BoreShape shape, long seed) {
        var random = new SplittableRandom(seed);
        double[] diametersMm = DoubleStream.generate(() -> 12 + 20 * random.nextDouble())
                .limit(3 + random.nextInt(8))
                .toArray();
        int cells = seed % 3 == 0 ? 6 : 0;
        double[] all = DoubleStream.concat(
                        DoubleStream.of(diametersMm),
                        DoubleStream.generate(() -> 13.7).limit(cells))
                .toArray();
        int[] sleeves = IntStream.range(0, all.length)
                .map(i -> i < diametersMm.length ? 0 : 1 + (i - diametersMm.length) / 3)
                .toArray();
        return Arguments.of(
                "mixed " + seed + ", " + cells + " cells, " + shape, PackingTask.jointed(shape, 1, all, sleeves, 2));
    }
}
