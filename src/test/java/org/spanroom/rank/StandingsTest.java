package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.function.IntBinaryOperator;
import java.util.function.IntToLongFunction;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.model.network.IdOrder;

class StandingsTest {
    /** Against sorting by definition; many points are equal or differ in their last bits only. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theOrderIsThatOfPointsThenIdsAndTheExcludedComeLast(long seed) {
        var random = new Random(seed);
        int count = random.nextInt(3000);
        var standings = new Standings(count);
        double[] points = new double[count];
        for (int span = 0; span < count; span++) {
            points[span] = random.nextInt(40) + (random.nextBoolean() ? 0 : random.nextInt(4) * 0x1p-47);
            if (random.nextInt(5) == 0) {
                points[span] = -1;
                standings.excluded(span);
            } else {
                standings.ranked(span, points[span]);
            }
        }
        List<Integer> expected = IntStream.range(0, count)
                .boxed()
                .sorted(Comparator.<Integer>comparingDouble(span -> -points[span])
                        .thenComparing(span -> "id" + span))
                .toList();

        assertThat(standings.bestFirst(ids(span -> ("id" + span).charAt(2), (a, b) -> ("id" + a).compareTo("id" + b))))
                .containsExactly(expected.stream().mapToInt(Integer::intValue).toArray());
        assertThat(IntStream.range(0, count)).allMatch(span -> standings.isExcluded(span) == (points[span] < 0));
        assertThat(standings.countRanked())
                .isEqualTo(IntStream.range(0, count)
                        .filter(span -> points[span] >= 0)
                        .count());
    }

    @Test
    void aMillionWithoutARankAreInTheOrderOfTheirIds() {
        int count = 1_100_000;
        var standings = new Standings(count);
        for (int span = 0; span < count; span++) {
            standings.excluded(span);
        }
        // Ids that jump about: a prime that does not divide the count takes each place once.
        IntUnaryOperator id = span -> (int) (span * 1_000_003L % count);

        int[] order = standings.bestFirst(
                ids(span -> id.applyAsInt(span) / 7, (a, b) -> Integer.compare(id.applyAsInt(a), id.applyAsInt(b))));

        assertThat(IntStream.range(0, count).allMatch(i -> id.applyAsInt(order[i]) == i))
                .isTrue();
        assertThat(standings.size()).isEqualTo(count);
    }

    private static IdOrder ids(IntToLongFunction leading, IntBinaryOperator compare) {
        return new IdOrder() {
            @Override
            public long leadingOfId(int number) {
                return leading.applyAsLong(number);
            }

            @Override
            public int compareIds(int number, int other) {
                return compare.applyAsInt(number, other);
            }
        };
    }

    static LongStream seeds() {
        return LongStream.range(0, 50);
    }
}
