package org.spanroom.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanroom.program.NetworkBuilder.ON_DATE;
import static org.spanroom.program.NetworkBuilder.duct;
import static org.spanroom.program.NetworkBuilder.free;
import static org.spanroom.program.NetworkBuilder.newDuct;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.PathObjective;
import org.spanroom.model.program.Way;
import org.spanroom.model.program.WayStep;

/** Ways worked by hand. */
class WayFinderTest {
    private static List<String> spans(Way way) {
        return way.steps().stream()
                .map(step -> step.duct().map(duct -> duct.spanId()).orElse("new"))
                .toList();
    }

    private static List<Way> ways(DuctNetwork network, int cables, int to, PathObjective objective, int most) {
        return new WayFinder(network, cables).find(0, to, objective, most);
    }

    private static Way best(DuctNetwork network, int cables, int to, PathObjective objective) {
        return ways(network, cables, to, objective, 1).get(0);
    }

    /** A detour over empty ducts costs nothing; the short way needs a crew. */
    @Test
    void freePositionsAreWorthADetourWhereCostCounts() {
        DuctNetwork network = new NetworkBuilder(3)
                .section(0, 2, 100, duct("direct", 1, 9, 5_000))
                .section(0, 1, 400, free("e1", 6))
                .section(2, 1, 400, free("e2", 6))
                .build();

        assertThat(spans(best(network, 2, 2, PathObjective.COST))).containsExactly("e1", "e2");
        assertThat(best(network, 2, 2, PathObjective.COST).steps())
                .extracting(WayStep::forward)
                .containsExactly(true, false);
        assertThat(spans(best(network, 2, 2, PathObjective.LENGTH))).containsExactly("direct");
        assertThat(spans(best(network, 1, 2, PathObjective.COST))).containsExactly("direct");
        assertThat(ways(network, 7, 1, PathObjective.COST, 3)).isEmpty();
    }

    /** Sections of two banks between the same vaults are two ways; of one length and no cost, both. */
    @Test
    void parallelSectionsAreAlternatives() {
        DuctNetwork network = new NetworkBuilder(2)
                .section(0, 1, 100, free("a", 2))
                .section(1, 0, 90, free("b", 2))
                .section(0, 1, 95, duct("c", 0, 2, 10))
                .build();

        assertThat(ways(network, 2, 1, PathObjective.COST, 5))
                .extracting(WayFinderTest::spans)
                .containsExactly(List.of("b"), List.of("a"), List.of("c"));
        assertThat(ways(network, 2, 1, PathObjective.COST, 2)).hasSize(2);
    }

    /** However many ways are asked for, those there are come, and soon. */
    @Test
    void aThousandAlternativesAreNotLookedForForever() {
        var builder = new NetworkBuilder(2);
        for (int bank = 0; bank < 40; bank++) {
            builder.section(0, 1, 100 + bank, duct("d" + bank, 0, 2, 1_000 + bank));
        }

        assertThat(ways(builder.build(), 2, 1, PathObjective.COST, 1000)).hasSize(40);
    }

    /** Cheap spans around a block do not make a way pass a vault twice. */
    @Test
    void noWayPassesAVaultTwice() {
        DuctNetwork network = new NetworkBuilder(4)
                .section(0, 1, 100, free("a", 2))
                .section(1, 2, 0, free("b", 2))
                .section(2, 1, 0, free("c", 2))
                .section(1, 3, 100, duct("d", 0, 2, 10))
                .build();

        assertThat(ways(network, 2, 3, PathObjective.COST, 9))
                .extracting(WayFinderTest::spans)
                .containsExactly(List.of("a", "d"));
    }

    /** Two spans that fail in the same two of four draws leave one half, not a quarter; in different ones, nothing. */
    @Test
    void chancesOfAWayAreJointNotMultiplied() {
        DuctNetwork same = chain(0b0011, 0b0011);
        DuctNetwork different = chain(0b0011, 0b1100);

        assertThat(best(same, 2, 2, PathObjective.COST).feasibleRatio(4)).hasValue(0.5);
        assertThat(best(different, 2, 2, PathObjective.COST).feasibleRatio(4)).hasValue(0);
        assertThat(best(same, 2, 2, PathObjective.COST).feasibleRatio(0)).isEmpty();
    }

    private static DuctNetwork chain(long first, long second) {
        return new NetworkBuilder(3)
                .section(0, 1, 100, duct("a", 0, 2, 10, 0, first))
                .section(1, 2, 100, duct("b", 0, 2, 10, 0, second))
                .build();
    }

    /** Of 64 samples and more, the first 64 count; of fewer, bits beyond them do not. */
    @Test
    void theShareIsOfTheSamplesThatTheMaskHas() {
        Way way = best(chain(-1L, -1L >>> 32), 2, 2, PathObjective.COST);

        assertThat(way.feasibleRatio(64)).hasValue(0.5);
        assertThat(way.feasibleRatio(1000)).hasValue(0.5);
        assertThat(way.feasibleRatio(40)).hasValue(0.8);
        assertThat(way.feasibleRatio(20)).hasValue(1);
    }

    @Test
    void aRecoveryThatWasNotSimulatedHasNoChance() {
        DuctNetwork network = new NetworkBuilder(2)
                .section(0, 1, 100, duct("a", 0, 2, 10, 0, Optional.empty(), OptionalLong.empty()))
                .build();

        assertThat(best(network, 2, 1, PathObjective.CHANCE).feasibleRatio(4)).isEmpty();
    }

    /** The day on which permits are issued or the day after an embargo, whichever is later; the last of the way's steps decides. */
    @Test
    void theEarliestDayIsThatOfTheLastPermitAndEmbargo() {
        LocalDate march = LocalDate.of(2027, 3, 1);
        DuctNetwork network = new NetworkBuilder(4)
                .section(0, 1, 100, duct("a", 0, 2, 10, 10, Optional.of(march), OptionalLong.of(15)))
                .section(1, 2, 100, duct("b", 0, 2, 10, 20, 15))
                .section(2, 3, 100, newDuct(9, 500, 100, 90))
                .build();

        assertThat(best(network, 2, 1, PathObjective.COST).earliest(ON_DATE)).isEqualTo(march);
        assertThat(best(network, 2, 2, PathObjective.COST).earliest(ON_DATE)).isEqualTo(march);
        assertThat(best(network, 2, 2, PathObjective.COST).leadDays()).isEqualTo(20);
        assertThat(best(network, 2, 3, PathObjective.COST).earliest(ON_DATE)).isEqualTo(ON_DATE.plusDays(90));
        assertThat(best(network, 2, 3, PathObjective.COST).earliest(march)).isEqualTo(march.plusDays(90));
        assertThat(best(network, 2, 3, PathObjective.COST).siteHours()).isEqualTo(4);
    }

    /** A past embargo and free positions under one are no reason to wait. */
    @Test
    void pastEmbargoesDoNotCount() {
        DuctNetwork network = new NetworkBuilder(2)
                .section(0, 1, 100, duct("a", 1, 2, 10, 5, Optional.of(LocalDate.of(2026, 3, 1)), OptionalLong.of(15)))
                .build();

        assertThat(best(network, 2, 1, PathObjective.COST).earliest(ON_DATE)).isEqualTo(ON_DATE.plusDays(5));
        assertThat(best(network, 1, 1, PathObjective.COST).earliest(ON_DATE)).isEqualTo(ON_DATE);
    }

    /** In one section the dearer duct can begin sooner, and another is more likely to work. */
    @Test
    void theObjectiveChoosesAmongTheDuctsOfASection() {
        DuctNetwork network = new NetworkBuilder(2)
                .section(
                        0,
                        1,
                        100,
                        duct("cheap", 0, 2, 100, 60, 0b0001),
                        duct("soon", 0, 2, 300, 10, 0b0001),
                        duct("safe", 0, 2, 200, 90, 0b1111))
                .build();

        assertThat(spans(best(network, 2, 1, PathObjective.COST))).containsExactly("cheap");
        assertThat(spans(best(network, 2, 1, PathObjective.DAYS))).containsExactly("soon");
        assertThat(spans(best(network, 2, 1, PathObjective.CHANCE))).containsExactly("safe");
        assertThat(spans(best(network, 2, 1, new PathObjective(1, 0, 5, 0)))).containsExactly("soon");
        assertThat(spans(best(network, 2, 1, new PathObjective(1, 0, 1, 0)))).containsExactly("cheap");
    }

    /** The ranges of a way are the sums of those of its steps: all spans share the rates of a draw. */
    @Test
    void costsOfAWayAreSums() {
        Way way = best(chain(15, 15), 2, 2, PathObjective.COST);

        assertThat(way.costs().money()).isEqualTo(20);
        assertThat(way.costs().range().lowMoney()).isCloseTo(16, within(1e-9));
        assertThat(way.costs().range().highMoney()).isCloseTo(26, within(1e-9));
    }

    /** Widths without new build: 9, 2 and 0; a section that has to be built is the narrowest. */
    @Test
    void theBindingSectionIsThatOfTheFewestPositions() {
        DuctNetwork network = new NetworkBuilder(4)
                .section(0, 1, 100, duct("a", 2, 9, 10), free("a2", 3))
                .section(1, 2, 100, free("b", 2))
                .section(2, 3, 100, newDuct(9, 500, 100, 90))
                .build();

        assertThat(best(network, 2, 2, PathObjective.COST).binding().section().id())
                .isEqualTo("S1");
        assertThat(best(network, 2, 3, PathObjective.COST).binding().section().id())
                .isEqualTo("S2");
        assertThat(best(network, 2, 1, PathObjective.COST).binding().section().widthPositions())
                .isEqualTo(9);
    }
}
