package org.spanroom.program.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PieceCostTest {
    private static final double INFINITE = Double.POSITIVE_INFINITY;

    @Test
    void cablesOfADemandStayTogether() {
        var cost = new PieceCost(List.of(new Bin(4, 4, 0), new Bin(4, 4, 0)), NewDucts.NONE);

        assertThat(cost.money(0, 0, 1, 2)).as("3, 3 and 2 cables, 8 positions").isEqualTo(INFINITE);
        assertThat(cost.money(0, 2, 0, 2)).isZero();
        assertThatThrownBy(() -> cost.use(Map.of(0, 3, 1, 3, 2, 2))).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void anEmptyDuctIsUsedBeforeRecovery() {
        var cost = new PieceCost(List.of(new Bin(0, 3, 0), new Bin(3, 3, 0), new Bin(0, 3, 500)), NewDucts.NONE);

        assertThat(cost.use(Map.of(7, 3))).isEqualTo(new Design.Use(Map.of(7, 1), List.of(), 0, 0));
    }

    @Test
    void ofOneCostRecoveryGoesBeforeNewBuildAndFewBinsBeforeMany() {
        var cost = new PieceCost(
                List.of(new Bin(0, 1, 50), new Bin(0, 1, 50), new Bin(0, 2, 100)), new NewDucts(4, 100, 10, 2));

        assertThat(cost.use(Map.of(0, 1, 1, 1))).isEqualTo(new Design.Use(Map.of(0, 2, 1, 2), List.of(2), 0, 100));
    }

    @Test
    void freePositionsAreFilledBeforeThoseThatAreRecovered() {
        var cost = new PieceCost(List.of(new Bin(0, 3, 80), new Bin(1, 1, 0)), NewDucts.NONE);

        assertThat(cost.use(Map.of(4, 3, 9, 1))).isEqualTo(new Design.Use(Map.of(4, 0, 9, 1), List.of(0), 0, 80));
    }

    @Test
    void newDuctsShareATrench() {
        var cost = new PieceCost(List.of(), new NewDucts(3, 1000, 200, 2));

        assertThat(cost.money(0, 0, 0, 1)).isEqualTo(1000);
        assertThat(cost.money(0, 0, 2)).isEqualTo(1200);
        assertThat(cost.money(0, 0, 3)).isEqualTo(INFINITE);
        assertThat(cost.mostCables()).isEqualTo(3);
        assertThat(cost.use(Map.of(0, 2, 1, 2)).binOf()).isEqualTo(Map.of(0, 0, 1, 1));
    }

    /** Against every placement of every demand in every bin. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1000, 2000, 3000})
    void isTheLeastOfAllPlacements(int firstSeed) {
        for (int seed = firstSeed; seed < firstSeed + 1000; seed++) {
            var random = new SplittableRandom(seed);
            List<Bin> bins = bins(random, random.nextInt(0, 5));
            var more = random.nextBoolean()
                    ? NewDucts.NONE
                    : new NewDucts(
                            random.nextInt(0, 6), random.nextInt(0, 40), random.nextInt(0, 20), random.nextInt(0, 4));
            int widest = random.nextInt(1, 7);
            var cablesOf = new TreeMap<Integer, Integer>();
            IntStream.range(0, random.nextInt(0, 6))
                    .forEach(each -> cablesOf.put(3 * each, random.nextInt(1, widest + 1)));
            var cost = new PieceCost(bins, more);

            double least =
                    leastOfAll(bins, more, new ArrayList<>(cablesOf.values()), 0, new int[bins.size() + more.most()]);

            assertThat(cost.money(counts(cablesOf))).as("seed %d", seed).isEqualTo(least);
            if (least < INFINITE) {
                assertThat(problems(bins, more, cablesOf, cost.use(cablesOf), least))
                        .as("seed %d", seed)
                        .isEmpty();
            }
        }
    }

    /** Many cables, several sizes: a minute of enumeration would not do. */
    @Test
    void thirtyDemandsOnEightBinsTakeNoTime() {
        for (int seed = 0; seed < 50; seed++) {
            var random = new SplittableRandom(seed);
            var cost = new PieceCost(bins(random, 8), new NewDucts(6, 900, 100, 8));
            var cablesOf = new TreeMap<Integer, Integer>();
            IntStream.range(0, 30).forEach(each -> cablesOf.put(each, random.nextInt(1, 4)));

            double money = cost.money(counts(cablesOf));

            assertThat(money).isLessThan(INFINITE);
            assertThat(problems(
                            bins(new SplittableRandom(seed), 8),
                            new NewDucts(6, 900, 100, 8),
                            cablesOf,
                            cost.use(cablesOf),
                            money))
                    .isEmpty();
        }
    }

    /** The same cost whether options are listed or found bin by bin: bins that gain nothing to speak of make the list too long. */
    @Test
    void manyBinsCostTheSameAsFew() {
        for (int seed = 0; seed < 300; seed++) {
            var random = new SplittableRandom(seed);
            List<Bin> few = bins(random, 4);
            var many = new ArrayList<>(few);
            IntStream.range(0, 14).forEach(each -> many.add(new Bin(0, 1, 1_000_000)));
            var more = new NewDucts(random.nextInt(3, 6), random.nextInt(0, 60), random.nextInt(0, 20), 5);
            var counts = new int[] {0, random.nextInt(0, 6), random.nextInt(0, 5), random.nextInt(0, 3)};

            double money = new PieceCost(few, more).money(counts);

            assertThat(OptionLadder.isShort(few, more)).isTrue();
            assertThat(OptionLadder.isShort(many, more)).isFalse();
            assertThat(new PieceCost(many, more).money(counts))
                    .as("seed %d", seed)
                    .matches(found -> money < INFINITE ? found == money : found >= 1_000_000);
        }
    }

    private static List<Bin> bins(SplittableRandom random, int count) {
        return IntStream.range(0, count)
                .mapToObj(each -> {
                    int now = random.nextInt(0, 4);
                    int gained = random.nextInt(0, 6);
                    return new Bin(now, now + gained, gained == 0 ? 0 : random.nextInt(0, 30));
                })
                .toList();
    }

    private static int[] counts(Map<Integer, Integer> cablesOf) {
        var counts = new int[8];
        cablesOf.values().forEach(cables -> counts[cables]++);
        return counts;
    }

    private static double leastOfAll(List<Bin> bins, NewDucts more, List<Integer> cables, int next, int[] load) {
        if (next == cables.size()) {
            return money(bins, more, load);
        }
        double least = INFINITE;
        for (int bin = 0; bin < load.length; bin++) {
            load[bin] += cables.get(next);
            least = Math.min(least, leastOfAll(bins, more, cables, next + 1, load));
            load[bin] -= cables.get(next);
        }
        return least;
    }

    private static double money(List<Bin> bins, NewDucts more, int[] load) {
        double money = 0;
        for (int bin = 0; bin < bins.size(); bin++) {
            Bin each = bins.get(bin);
            money += load[bin] > each.after() ? INFINITE : load[bin] > each.now() ? each.money() : 0;
        }
        int[] added = Arrays.copyOfRange(load, bins.size(), load.length);
        int built = (int) Arrays.stream(added).filter(each -> each > 0).count();
        return Arrays.stream(added).anyMatch(each -> each > more.positions()) ? INFINITE : money + more.money(built);
    }

    private static List<String> problems(
            List<Bin> bins, NewDucts more, Map<Integer, Integer> cablesOf, Design.Use use, double least) {
        var problems = new ArrayList<String>();
        var load = new int[bins.size() + more.most()];
        cablesOf.forEach((demand, cables) -> load[use.binOf().get(demand)] += cables);
        List<Integer> over = IntStream.range(0, bins.size())
                .filter(bin -> load[bin] > bins.get(bin).now())
                .boxed()
                .toList();
        if (!use.recovered().equals(over)) {
            problems.add("recovered " + use.recovered() + ", needed " + over);
        }
        if (use.money() != least || money(bins, more, load) != least) {
            problems.add(use + " costs " + money(bins, more, load) + ", not " + least);
        }
        if (!use.binOf().keySet().equals(cablesOf.keySet())) {
            problems.add("places " + use.binOf() + " of " + cablesOf);
        }
        return problems;
    }
}
