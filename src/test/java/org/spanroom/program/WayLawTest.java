package org.spanroom.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanroom.program.NetworkBuilder.ON_DATE;
import static org.spanroom.program.NetworkBuilder.duct;
import static org.spanroom.program.NetworkBuilder.free;
import static org.spanroom.program.NetworkBuilder.newDuct;

import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.PathObjective;
import org.spanroom.model.program.SectionOffer;
import org.spanroom.model.program.Way;

/** The ways that are found, against all simple ways and all choices of ducts on small seeded networks. */
class WayLawTest {
    private static final int SAMPLES = 12;
    private static final int CABLES = 3;

    /** What one choice of ducts along one simple way comes to, calculated here from the offers. */
    private record Figures(double money, double lengthM, long days, long draws) {
        Figures plus(double moreMoney, double moreM, long otherDays, long otherDraws) {
            return new Figures(money + moreMoney, lengthM + moreM, Math.max(days, otherDays), draws & otherDraws);
        }

        double value(PathObjective objective) {
            double missingPercent = 100 - 100.0 * Long.bitCount(draws) / SAMPLES;
            return objective.weightPerMoney() * money
                    + objective.weightPerM() * lengthM
                    + objective.weightPerDays() * days
                    + objective.weightPerPercent() * missingPercent;
        }
    }

    static LongStream seeds() {
        return LongStream.range(0, 300);
    }

    private static DuctNetwork network(Random random) {
        int vaults = 4 + random.nextInt(5);
        var builder = new NetworkBuilder(vaults).samples(SAMPLES);
        int sections = vaults + random.nextInt(vaults);
        for (int section = 0; section < sections; section++) {
            int from = random.nextInt(vaults);
            int to = (from + 1 + random.nextInt(vaults - 1)) % vaults;
            var ducts = new ArrayList<DuctOffer>();
            for (int place = random.nextInt(4); place > 0; place--) {
                ducts.add(randomDuct(section + "-" + place, random));
            }
            double lengthM = random.nextInt(5) == 0 ? 50 : 20 + 100 * random.nextDouble();
            builder.section(
                    from,
                    to,
                    lengthM,
                    newDuct(random.nextInt(3) * CABLES, 5_000 + 9_000 * random.nextDouble(), 900, random.nextInt(99)),
                    ducts.toArray(DuctOffer[]::new));
        }
        return builder.build();
    }

    private static DuctOffer randomDuct(String spanId, Random random) {
        int now = random.nextInt(5) - 1;
        int after = now + random.nextInt(7);
        if (now < 0 || after <= now) {
            return free(spanId, Math.max(0, now));
        }
        long some = random.nextLong();
        long draws = some | random.nextLong();
        return duct(
                spanId,
                now,
                after,
                random.nextInt(4) == 0 ? 3_000 : 1_000 + 6_000 * random.nextDouble(),
                random.nextInt(60),
                random.nextInt(4) == 0 ? Optional.of(ON_DATE.plusDays(random.nextInt(200))) : Optional.empty(),
                OptionalLong.of(draws));
    }

    private static List<Figures> all(DuctNetwork network, int from, int to) {
        var found = new ArrayList<Figures>();
        walk(network, from, to, new HashSet<>(Set.of(from)), new Figures(0, 0, 0, (1L << SAMPLES) - 1), found);
        return found;
    }

    private static void walk(
            DuctNetwork network, int at, int to, Set<Integer> passed, Figures soFar, List<Figures> found) {
        if (at == to) {
            found.add(soFar);
            return;
        }
        for (SectionOffer section : network.sections()) {
            if ((section.from() == at || section.to() == at) && passed.add(section.other(at))) {
                for (Figures next : through(section, soFar)) {
                    walk(network, section.other(at), to, passed, next, found);
                }
                passed.remove(section.other(at));
            }
        }
    }

    /** Free positions where there are any; else every duct that could be recovered; else a new one. */
    private static List<Figures> through(SectionOffer section, Figures soFar) {
        if (section.ducts().stream().anyMatch(duct -> duct.positionsNow() >= CABLES)) {
            return List.of(soFar.plus(0, section.lengthM(), 0, -1L));
        }
        List<Figures> recovered = section.ducts().stream()
                .filter(duct -> duct.positionsAfter() >= CABLES)
                .map(duct -> duct.recovery().orElseThrow())
                .map(recovery -> soFar.plus(
                        recovery.costs().money(),
                        section.lengthM(),
                        Math.max(
                                recovery.leadDays(),
                                recovery.notBefore()
                                        .map(day -> ChronoUnit.DAYS.between(ON_DATE, day))
                                        .orElse(0L)),
                        recovery.feasibleDraws().orElseThrow()))
                .toList();
        if (!recovered.isEmpty()) {
            return recovered;
        }
        return section.newDuct().positions() >= CABLES
                ? List.of(soFar.plus(
                        section.newDuct().first().money(),
                        section.lengthM(),
                        section.newDuct().leadDays(),
                        -1L))
                : List.of();
    }

    private static final List<PathObjective> EXACT = List.of(
            PathObjective.COST,
            PathObjective.LENGTH,
            PathObjective.DAYS,
            new PathObjective(1, 20, 0, 0),
            new PathObjective(1, 0, 50, 0),
            new PathObjective(0, 1, 0.5, 0),
            new PathObjective(0.01, 3, 2, 0));

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void noWayIsBetterThanTheFirst(long seed) {
        DuctNetwork network = network(new Random(seed));
        var finder = new WayFinder(network, CABLES);
        int to = network.vaults().size() - 1;
        List<Figures> all = all(network, 0, to);

        for (PathObjective objective : EXACT) {
            List<Way> ways = finder.find(0, to, objective, 1);
            assertThat(ways).as("%s", objective).hasSize(all.isEmpty() ? 0 : 1);
            if (!all.isEmpty()) {
                double least = all.stream()
                        .mapToDouble(figures -> figures.value(objective))
                        .min()
                        .orElseThrow();
                assertThat(finder.value(ways.get(0), objective))
                        .as("%s", objective)
                        .isCloseTo(least, within(1e-4));
            }
        }
    }

    /** Of ways that cost the same, the shortest: many cost nothing. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void tiesAreBrokenByLength(long seed) {
        DuctNetwork network = network(new Random(seed));
        int to = network.vaults().size() - 1;
        List<Figures> all = all(network, 0, to);
        if (all.isEmpty()) {
            assertThat(new WayFinder(network, CABLES).findCheapest(0, to)).isEmpty();
            return;
        }
        double least = all.stream().mapToDouble(Figures::money).min().orElseThrow();
        double shortestM = all.stream()
                .filter(figures -> figures.money() <= least + 1e-6)
                .mapToDouble(Figures::lengthM)
                .min()
                .orElseThrow();

        Way way = new WayFinder(network, CABLES).findCheapest(0, to).orElseThrow();

        assertThat(way.costs().money()).isCloseTo(least, within(1e-4));
        assertThat(way.lengthM()).isCloseTo(shortestM, within(1e-3));
    }

    /** One pass for several vaults finds the very ways that one pass for each finds. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void waysToSeveralVaultsAreThoseToEach(long seed) {
        DuctNetwork network = network(new Random(seed));
        var finder = new WayFinder(network, CABLES);
        List<Integer> to = IntStream.range(1, network.vaults().size()).boxed().toList();

        assertThat(finder.findCheapest(0, to))
                .isEqualTo(
                        to.stream().map(vault -> finder.findCheapest(0, vault)).toList());
    }

    /** A chance is no sum, so that the best way is not proved; it is never worse than the cheapest and the shortest. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void chanceIsNeverWorseThanThatOfTheWaysForOtherObjectives(long seed) {
        DuctNetwork network = network(new Random(seed));
        var finder = new WayFinder(network, CABLES);
        int to = network.vaults().size() - 1;
        List<Figures> all = all(network, 0, to);
        if (all.isEmpty()) {
            return;
        }
        for (PathObjective objective :
                List.of(PathObjective.CHANCE, new PathObjective(1, 0, 0, 60), new PathObjective(1, 5, 20, 90))) {
            double found = finder.value(finder.find(0, to, objective, 1).get(0), objective);
            for (PathObjective other : List.of(PathObjective.COST, PathObjective.LENGTH)) {
                assertThat(found)
                        .as("%s, best for %s", objective, other)
                        .isLessThanOrEqualTo(
                                finder.value(finder.find(0, to, other, 1).get(0), objective) + 1e-9);
            }
            double least = all.stream()
                    .mapToDouble(figures -> figures.value(objective))
                    .min()
                    .orElseThrow();
            assertThat(found).as("%s, enumerated", objective).isGreaterThanOrEqualTo(least - 1e-6);
        }
    }

    /** Whatever is asked for: ways are whole, in order, and each shares at most half of its length with every better one. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void alternativesAreWholeSortedAndApart(long seed) {
        DuctNetwork network = network(new Random(seed));
        var finder = new WayFinder(network, CABLES);
        int to = network.vaults().size() - 1;

        for (PathObjective objective : EXACT) {
            List<Way> ways = finder.find(0, to, objective, 4);
            assertThat(ways).hasSizeLessThanOrEqualTo(4);
            for (int place = 0; place < ways.size(); place++) {
                Way way = ways.get(place);
                assertThat(way.steps().get(0).from()).isZero();
                assertThat(way.steps().get(way.steps().size() - 1).to()).isEqualTo(to);
                for (int step = 1; step < way.steps().size(); step++) {
                    assertThat(way.steps().get(step).from())
                            .isEqualTo(way.steps().get(step - 1).to());
                }
                for (int better = 0; better < place; better++) {
                    assertThat(finder.value(ways.get(better), objective))
                            .isLessThanOrEqualTo(finder.value(way, objective) + 1e-9);
                    assertThat(way.sharedM(ways.get(better))).isLessThanOrEqualTo(way.lengthM() / 2);
                }
            }
        }
    }
}
