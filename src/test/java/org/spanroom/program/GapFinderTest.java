package org.spanroom.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanroom.program.NetworkBuilder.duct;
import static org.spanroom.program.NetworkBuilder.free;
import static org.spanroom.program.NetworkBuilder.newDuct;

import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.Gap;
import org.spanroom.model.program.VaultPlace;

/** Why no way joins two vaults. */
class GapFinderTest {
    static LongStream seeds() {
        return LongStream.range(0, 200);
    }

    /** The most cables: the narrowest section decides on a way, the widest way between ways. */
    @Test
    void theWidestWayIsThatWithTheWidestBottleneck() {
        DuctNetwork network = new NetworkBuilder(3)
                .section(0, 1, 10, free("a", 9))
                .section(1, 2, 10, free("b", 1), duct("c", 0, 4, 5))
                .section(0, 2, 10, newDuct(3, 5, 5, 0))
                .build();

        assertThat(new GapFinder(network).find(0, 2)).isEqualTo(new Gap(true, 4, Optional.empty()));
    }

    /** Whatever the widths are: as many as the best way takes, found here section by section from the widest down. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theWidestIsThatAtWhichWidestSectionsJoin(long seed) {
        var random = new Random(seed);
        var builder = new NetworkBuilder(6);
        for (int section = 0; section < 12; section++) {
            int from = random.nextInt(6);
            builder.section(
                    from,
                    (from + 1 + random.nextInt(5)) % 6,
                    10,
                    newDuct(random.nextInt(9), 5, 5, 0),
                    free("f" + section, random.nextInt(4)),
                    duct("r" + section, 0, 1 + random.nextInt(12), 5));
        }
        DuctNetwork network = builder.build();
        int[] island = {0, 1, 2, 3, 4, 5};
        int expected = 0;
        for (int width = 13; width > 0 && expected == 0; width--) {
            for (var section : network.sections()) {
                int widest =
                        Math.max(section.widthPositions(), section.newDuct().positions());
                int old = island[section.from()];
                for (int vault = 0; vault < 6 && widest >= width; vault++) {
                    island[vault] = island[vault] == old ? island[section.to()] : island[vault];
                }
            }
            expected = island[0] == island[5] ? width : 0;
        }

        assertThat(new GapFinder(network).find(0, 5).widestCables()).isEqualTo(expected);
    }

    @Test
    void sectionsThatTakeNothingStillJoin() {
        DuctNetwork network =
                new NetworkBuilder(2).section(0, 1, 10, free("a", 0)).build();

        assertThat(new GapFinder(network).find(0, 1)).isEqualTo(new Gap(true, 0, Optional.empty()));
    }

    /** Islands that end at one place have a gap of 0 m, and are not joined for that. */
    @Test
    void islandsAtOnePlaceAreNotJoined() {
        DuctNetwork network = new NetworkBuilder(4)
                .section(0, 1, 10, free("a", 1))
                .section(2, 3, 10, free("b", 1))
                .place(1, -30, 40)
                .place(2, -30, 40)
                .place(0, -30.01, 40)
                .place(3, -29.99, 40)
                .build();

        Gap gap = new GapFinder(network).find(0, 3);

        assertThat(gap.isJoined()).isFalse();
        assertThat(gap.ends()).contains(new Gap.Ends(1, 2, 0));
    }

    @Test
    void vaultsWithoutAPlaceAreLeftOut() {
        DuctNetwork network = new NetworkBuilder(4)
                .section(0, 1, 10, free("a", 1))
                .place(0, Double.NaN, Double.NaN)
                .place(3, Double.NaN, Double.NaN)
                .build();

        assertThat(new GapFinder(network).find(0, 2).ends().orElseThrow().from())
                .isEqualTo(1);
        assertThat(new GapFinder(network).find(0, 3)).isEqualTo(new Gap(false, 0, Optional.empty()));
        assertThat(new GapFinder(network).find(3, 0).ends()).isEmpty();
    }

    /** Against every pair, with the geodesic of GeographicLib: the distance to 1 %, so that a tie within it may fall either way. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theEndsAreTheNearestPair(long seed) {
        var random = new Random(seed);
        int split = 1 + random.nextInt(7);
        var builder = new NetworkBuilder(8);
        double latDeg = random.nextInt(140) - 70;
        for (int vault = 0; vault < 8; vault++) {
            builder.place(vault, 20 + 0.02 * random.nextDouble(), latDeg + 0.02 * random.nextDouble());
            if (vault > 0 && vault != split) {
                builder.section(vault, vault - 1, 10, free("f" + vault, 1));
            }
        }
        DuctNetwork network = builder.build();

        Gap.Ends ends = new GapFinder(network).find(7, 0).ends().orElseThrow();

        double leastM = Double.POSITIVE_INFINITY;
        for (int one = split; one < 8; one++) {
            for (int other = 0; other < split; other++) {
                leastM = Math.min(leastM, geodesicM(network, one, other));
            }
        }
        assertThat(ends.from()).isGreaterThanOrEqualTo(split);
        assertThat(ends.to()).isLessThan(split);
        assertThat(geodesicM(network, ends.from(), ends.to())).isCloseTo(leastM, within(0.01 * leastM));
        assertThat(ends.gapM()).isCloseTo(leastM, within(0.01 * leastM));
    }

    private static double geodesicM(DuctNetwork network, int one, int other) {
        VaultPlace a = network.vaults().get(one);
        VaultPlace b = network.vaults().get(other);
        return Geodesic.WGS84.Inverse(a.latDeg(), a.lonDeg(), b.latDeg(), b.lonDeg()).s12;
    }
}
