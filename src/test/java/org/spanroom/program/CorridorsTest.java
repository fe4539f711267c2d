package org.spanroom.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.program.Corridor;
import org.spanroom.model.program.Costs;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.NewDuctOffer;
import org.spanroom.model.program.SectionOffer;
import org.spanroom.model.program.VaultPlace;
import org.spanroom.model.program.Way;
import org.spanroom.model.program.WayStep;

class CorridorsTest {
    private static final LocalDate DAY = LocalDate.of(2026, 11, 29);
    private static final NewDuctOffer NEW = new NewDuctOffer(9, costs(50_000), costs(5_000), 60);

    private static Costs costs(double money) {
        return new Costs(money, new MoneyRange(0.9 * money, money, 1.2 * money));
    }

    /** A section with one duct. */
    private static SectionOffer section(String bank, int from, int to, int now, int after, double money) {
        String id = bank + ":" + from + ":" + to;
        Optional<DuctOffer.Recovery> recovery = after > now
                ? Optional.of(new DuctOffer.Recovery(costs(money), 4, 5, Optional.empty(), OptionalLong.of(-1L)))
                : Optional.empty();
        var duct = new DuctOffer(id, bank + "-1", now, after, OptionalInt.empty(), "", recovery);
        return new SectionOffer(id, bank, from, to, 100, List.of(duct), NEW, Optional.empty());
    }

    /** Vaults on a grid of ten columns, about 100 m apart. */
    private static DuctNetwork network(int vaults, List<SectionOffer> sections) {
        List<VaultPlace> places = IntStream.range(0, vaults)
                .mapToObj(vault -> new VaultPlace("V" + vault, -127 + 0.001 * (vault % 10), 38 + 0.001 * row(vault)))
                .toList();
        return new DuctNetwork(places, sections, 64, DAY);
    }

    private static int row(int vault) {
        return vault / 10;
    }

    private static List<String> ids(Corridor corridor) {
        return corridor.way().steps().stream().map(step -> step.section().id()).toList();
    }

    /** A street: free, recover, free, recover, free. What is free at its ends needs no crew; between them it belongs to the corridor. */
    @Test
    void aCorridorBeginsAndEndsWithARecovery() {
        DuctNetwork street = network(
                6,
                List.of(
                        section("B1", 0, 1, 4, 4, 0),
                        section("B1", 1, 2, 0, 9, 8_000),
                        section("B1", 3, 2, 3, 3, 0),
                        section("B1", 3, 4, 1, 6, 2_000),
                        section("B1", 5, 4, 4, 4, 0)));

        List<Corridor> corridors = new Corridors(street, 2).ranked();

        assertThat(corridors).hasSize(1);
        Corridor only = corridors.get(0);
        assertThat(ids(only)).isIn(List.of("B1:1:2", "B1:3:2", "B1:3:4"), List.of("B1:3:4", "B1:3:2", "B1:1:2"));
        // Narrowest: 0 today; afterwards the free section's 3.
        assertThat(only.gainedPositions()).isEqualTo(3);
        assertThat(only.metersPerMoney()).isCloseTo(3 * 300 / 10_000.0, within(1e-12));
        assertThat(only.isIsland()).isFalse();
    }

    /** At the vault in the middle a bank goes round the corner; another bank would go straight on. */
    @Test
    void aBankGoesOnRoundACornerAndOtherBanksOnlyStraightOn() {
        DuctNetwork crossing = network(
                22,
                List.of(
                        section("B1", 10, 11, 0, 9, 1_000),
                        section("B1", 11, 21, 0, 9, 1_000),
                        section("B2", 11, 12, 0, 9, 1_000),
                        section("B3", 1, 11, 0, 9, 1_000)));

        List<Corridor> corridors = new Corridors(crossing, 1).ranked();

        assertThat(corridors)
                .extracting(CorridorsTest::ids)
                .anySatisfy(ids -> assertThat(ids).containsExactlyInAnyOrder("B1:10:11", "B1:11:21"));
        // B2 and B3 meet at a right angle, so that each is an island.
        assertThat(corridors.stream().filter(Corridor::isIsland).map(CorridorsTest::ids))
                .containsExactlyInAnyOrder(List.of("B2:11:12"), List.of("B3:1:11"));
    }

    @Test
    void aRingIsOneCorridor() {
        DuctNetwork ring = network(
                12,
                List.of(
                        section("B1", 0, 1, 0, 9, 1_000),
                        section("B1", 1, 11, 0, 9, 1_000),
                        section("B1", 11, 10, 0, 9, 1_000),
                        section("B1", 10, 0, 0, 9, 1_000)));

        List<Corridor> corridors = new Corridors(ring, 1).ranked();

        assertThat(corridors).hasSize(1);
        assertThat(ids(corridors.get(0))).hasSize(4).doesNotHaveDuplicates();
    }

    static LongStream seeds() {
        return LongStream.range(0, 200);
    }

    /** Laws of corridors on networks of any shape: parallel sections, rings, dead ends. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void corridorsAreDisjointRunsWithoutNewBuild(long seed) {
        var random = new Random(seed);
        int vaults = 2 + random.nextInt(20);
        int cables = 1 + random.nextInt(4);
        var sections = new ArrayList<SectionOffer>();
        for (int i = 0; i < 40; i++) {
            int from = random.nextInt(vaults);
            int to = random.nextInt(vaults);
            int now = random.nextInt(5);
            int after = now + Math.max(0, random.nextInt(10) - 3);
            if (from != to) {
                sections.add(section("B" + i % 7 + (i / 7 % 3), from, to, now, after, 500 + random.nextInt(9_000)));
            }
        }
        DuctNetwork network = network(vaults, sections);

        List<Corridor> corridors = new Corridors(network, cables).ranked();

        Set<WayStep> seen = new HashSet<>();
        for (Corridor corridor : corridors) {
            List<WayStep> steps = corridor.way().steps();
            assertThat(steps.get(0).action()).isEqualTo(WayStep.Action.RECOVER);
            assertThat(steps.get(steps.size() - 1).action()).isEqualTo(WayStep.Action.RECOVER);
            for (int i = 0; i < steps.size(); i++) {
                assertThat(steps.get(i).action()).isNotEqualTo(WayStep.Action.BUILD);
                assertThat(steps.get(i).section().widthPositions()).isGreaterThanOrEqualTo(cables);
                if (i > 0) {
                    assertThat(steps.get(i).from()).isEqualTo(steps.get(i - 1).to());
                }
                assertThat(seen.add(steps.get(i))).isTrue();
            }
        }
        assertThat(corridors).isSortedAccordingTo((a, b) -> Double.compare(b.metersPerMoney(), a.metersPerMoney()));
        long recovered = IntStream.range(0, sections.size())
                .filter(i -> SectionSteps.find(sections.get(i), cables)
                        .filter(step -> step.action() == WayStep.Action.RECOVER)
                        .isPresent())
                .count();
        assertThat(corridors.stream()
                        .mapToLong(corridor -> corridor.recovered().size())
                        .sum())
                .isEqualTo(recovered);
    }

    /** Two towns joined by one section: each way between hubs on either side passes it, and it is the narrowest. */
    @Test
    void theOnlyBridgeIsFirstNeeded() {
        DuctNetwork towns = network(
                6,
                List.of(
                        section("B1", 0, 1, 9, 9, 0),
                        section("B2", 1, 2, 9, 9, 0),
                        section("B3", 2, 3, 2, 4, 7_000),
                        section("B4", 3, 4, 9, 9, 0),
                        section("B5", 4, 5, 9, 9, 0)));

        var needed = new FirstNeeded(towns, 3, List.of(0, 1, 4, 5));

        assertThat(needed.pairs()).isEqualTo(6);
        assertThat(needed.ways("B3:2:3")).isEqualTo(4);
        assertThat(needed.narrowest("B3:2:3")).isEqualTo(4);
        assertThat(needed.narrowest("B2:1:2")).isZero();
        assertThat(needed.ways("B1:0:1")).isEqualTo(3);
        assertThat(Corridors.hubs(towns, 2)).containsExactly(1, 2);
    }

    @Test
    void aWayAndItsReverseShareAllTheirLength() {
        SectionOffer only = section("B1", 0, 1, 3, 3, 0);
        WayStep step = SectionSteps.find(only, 2).orElseThrow();
        var way = new Way(2, List.of(step));

        assertThat(way.sharedM(way)).isEqualTo(way.lengthM());
    }
}
