package org.spanroom.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Answer;
import org.spanroom.model.Term;
import org.spanroom.model.effort.VaultAccess;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultSite;
import org.spanroom.model.survey.StratumEstimate;
import org.spanroom.model.survey.SurveySettings;
import org.spanroom.model.survey.SurveyStop;

class SurveyPlannerTest {
    private static final SurveySettings SHIPPED = ShippedConfig.get().survey();

    private static List<SurveyStop> plan(SurveySettings settings, List<SurveySpan> spans, List<Vault> vaults) {
        var access = new VaultAccess(
                ShippedConfig.get().vaultKinds(), ShippedConfig.get().rates());
        return new SurveyPlanner(settings, access, (vault, ducts) -> List.of(ducts.size() + " ducts"))
                .plan(spans, vaults);
    }

    private static SurveySettings visits(int vaults) {
        return new SurveySettings(vaults, SHIPPED.roadwayWorthRatio(), SHIPPED.wetWorthRatio());
    }

    private static Vault vault(int number, String surface, Answer water) {
        var site = new VaultSite(OptionalDouble.empty(), water, surface, Answer.UNKNOWN);
        return new Vault(number, "V" + number, number * 1e-3, 50, List.of(), OptionalDouble.empty(), "vault", site);
    }

    private static List<Vault> vaults(int count) {
        return IntStream.range(0, count)
                .mapToObj(number -> vault(number, "sidewalk", Answer.NO))
                .toList();
    }

    private static Duct duct(String id, int year, String owner, Contents contents, Condition condition) {
        return new Duct(
                id,
                "",
                BoreShape.ROUND,
                100,
                "pvc",
                "",
                false,
                contents,
                false,
                condition,
                "",
                owner,
                OptionalInt.of(year),
                Set.of(Term.CONDITION));
    }

    private static SurveySpan open(String id, int year, String owner, int from, int to, double worth) {
        return new SurveySpan(duct(id, year, owner, Contents.UNKNOWN, Condition.UNKNOWN), from, to, worth, false);
    }

    /** A network as odd as they come: hubs, lone vaults, spans from a vault to itself, recorded and collapsed ducts among the others. */
    private static List<SurveySpan> odd(Random random, int vaults) {
        var spans = new ArrayList<SurveySpan>();
        for (int i = 0; i < 300; i++) {
            int from = (int) (vaults * Math.pow(random.nextDouble(), 3));
            int to = random.nextInt(vaults);
            int year = 1950 + random.nextInt(60);
            String owner = List.of("A", "a ", "B", "", "C").get(random.nextInt(5));
            Contents contents = random.nextInt(4) == 0 ? new Contents(List.of(), List.of(), true) : Contents.UNKNOWN;
            Condition condition = random.nextInt(10) == 0 ? Condition.COLLAPSED : Condition.SOUND;
            spans.add(new SurveySpan(
                    duct("D" + i, year, owner, contents, condition),
                    from,
                    to,
                    10 + 500 * random.nextDouble(),
                    random.nextBoolean()));
        }
        return spans;
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
    void whatAStopSaysIsWhatIsSeenThere(int seed) {
        List<Vault> vaults = vaults(60);
        List<SurveySpan> spans = odd(new Random(seed), 60);
        List<SurveySpan> open = spans.stream()
                .filter(span -> !span.duct().contents().known() && span.duct().condition() != Condition.COLLAPSED)
                .toList();

        List<SurveyStop> stops = plan(SHIPPED, spans, vaults);

        assertThat(stops).hasSize(SHIPPED.vaults());
        var seen = new HashSet<SurveySpan>();
        var strata = new HashSet<String>();
        var opened = new HashSet<String>();
        for (SurveyStop stop : stops) {
            int place = Integer.parseInt(stop.vault().id().substring(1));
            List<SurveySpan> here = open.stream()
                    .filter(span -> span.from() == place || span.to() == place)
                    .toList();
            int before = seen.size();
            seen.addAll(here);
            assertThat(opened.add(stop.vault().id())).isTrue();
            assertThat(stop.ducts())
                    .containsExactlyInAnyOrderElementsOf(
                            here.stream().map(span -> span.duct().id()).toList());
            assertThat(stop.spansShown()).isEqualTo(seen.size() - before).isPositive();
            assertThat(stop.spansSeen()).isEqualTo(seen.size());
            assertThat(stop.spansUnrecorded()).isEqualTo(open.size());
            assertThat(stop.cautions()).containsExactly(here.size() + " ducts");
            stop.estimates().forEach(found -> strata.add(found.stratum()));
            stop.estimates().forEach(found -> assertThat(found.seen()).isBetween(1, found.spans()));
        }
        // More strata than visits: the smallest are put together, so that each is visited.
        assertThat(strata).hasSizeBetween(2, SHIPPED.vaults());
        int inStrata = stops.stream()
                .flatMap(stop -> stop.estimates().stream())
                .collect(
                        HashMap<String, Integer>::new,
                        (map, one) -> map.put(one.stratum(), one.spans()),
                        HashMap::putAll)
                .values()
                .stream()
                .mapToInt(Integer::intValue)
                .sum();
        assertThat(inStrata).isEqualTo(open.size());
    }

    /**
     * Where a vault shows one span only, visits end up as by Neyman: in proportion to N S, here to the worth of the strata, for S is the same
     * where nothing is recorded (Cochran, Sampling Techniques, section 5.5, from memory).
     */
    @ParameterizedTest
    @CsvSource({"20, 60, 30, 10", "30, 10, 10, 10", "12, 90, 20, 10", "25, 50, 20, 30"})
    void visitsAreAllottedAsByNeyman(int visits, int first, int second, int third) {
        int[] worths = {first, second, third};
        var spans = new ArrayList<SurveySpan>();
        for (int stratum = 0; stratum < 3; stratum++) {
            for (int i = 0; i < 40; i++) {
                int place = spans.size();
                spans.add(open("D" + place, 1960 + 10 * stratum, "A", place, place, worths[stratum]));
            }
        }

        List<SurveyStop> stops = plan(visits(visits), spans, vaults(spans.size()));

        double sum = first + second + third;
        for (int stratum = 0; stratum < 3; stratum++) {
            String decade = 1960 + 10 * stratum + "s";
            long allotted = stops.stream()
                    .filter(stop -> stop.estimates().get(0).stratum().startsWith(decade))
                    .count();
            assertThat((double) allotted).isCloseTo(visits * worths[stratum] / sum, within(1.0));
        }
    }

    /** What is recorded of like spans shows how much there is to learn: where nearly all gain, little. */
    @Test
    void lessIsVisitedWhereTheRecordedOnesAreAlike() {
        var spans = new ArrayList<SurveySpan>();
        for (int i = 0; i < 80; i++) {
            spans.add(open("D" + i, i < 40 ? 1960 : 1970, "A", i, i, 100));
        }
        for (int i = 0; i < 200; i++) {
            var recorded = duct(
                    "R" + i, i < 100 ? 1960 : 1970, "A", new Contents(List.of(), List.of(), true), Condition.SOUND);
            spans.add(new SurveySpan(recorded, 0, 1, 100, i < 100 || i % 2 == 0));
        }

        List<SurveyStop> stops = plan(visits(20), spans, vaults(80));

        assertThat(stops.stream()
                        .filter(stop -> stop.estimates().get(0).stratum().startsWith("1960s")))
                .hasSizeBetween(1, 6);
    }

    /** Of two vaults that show the same the one beside the roadway comes first, and of those the dry one; much more to see outweighs it. */
    @Test
    void easyAccessIsPreferred() {
        List<Vault> vaults = List.of(
                vault(0, "roadway", Answer.NO),
                vault(1, "", Answer.NO),
                vault(2, "sidewalk", Answer.YES),
                vault(3, "verge", Answer.NO));
        var spans = new ArrayList<SurveySpan>();
        for (int vault = 0; vault < 4; vault++) {
            spans.add(open("D" + vault, 1960, "A", vault, vault, 100));
        }

        assertThat(plan(visits(1), spans, vaults).get(0).vault().id()).isEqualTo("V3");
        assertThat(plan(visits(1), spans.subList(0, 3), vaults).get(0).vault().id())
                .isEqualTo("V2");
        assertThat(plan(visits(2), spans.subList(0, 2), vaults))
                .extracting(SurveyStop::inRoadway)
                .containsExactly(true, true);
        for (int more = 0; more < 6; more++) {
            spans.add(open("M" + more, 1970 + 10 * (more % 3), "A", 0, 0, 100));
        }
        assertThat(plan(visits(4), spans, vaults).get(0).vault().id()).isEqualTo("V0");
    }

    @Test
    void whereAllIsRecordedOrNoVisitIsAskedForThereIsNoPlan() {
        var recorded = new SurveySpan(
                duct("D", 1960, "A", new Contents(List.of(), List.of(), true), Condition.SOUND), 0, 1, 1, true);

        assertThat(plan(SHIPPED, List.of(recorded), vaults(2))).isEmpty();
        assertThat(plan(SHIPPED, List.of(), vaults(2))).isEmpty();
        assertThat(plan(visits(0), List.of(open("D", 1960, "A", 0, 1, 1)), vaults(2)))
                .isEmpty();
    }

    /** Against the hypergeometric distribution itself, whose variance of a share is P Q / n (N - n) / (N - 1). */
    @ParameterizedTest
    @CsvSource({"40, 10", "40, 39", "200, 50", "1000, 100"})
    void theMarginHoldsForSamplesThatAreDrawn(int all, int seen) {
        double marginRatio = Precision.marginRatio(seen, all);
        var random = new Random(7);
        int inside = 0;
        int trials = 4000;
        for (int trial = 0; trial < trials; trial++) {
            int left = all / 2;
            int hits = 0;
            for (int i = 0; i < seen; i++) {
                if (random.nextDouble() * (all - i) < left) {
                    left--;
                    hits++;
                }
            }
            inside += Math.abs(hits / (double) seen - 0.5) <= marginRatio + 1e-9 ? 1 : 0;
        }
        // Whole numbers make the steps of a small sample coarse.
        assertThat(inside / (double) trials).isBetween(0.90, 1.0);
    }

    @Test
    void theMarginShrinksFromHalfToNothing() {
        assertThat(Precision.marginRatio(0, 9)).isEqualTo(StratumEstimate.MOST_RATIO);
        assertThat(Precision.marginRatio(9, 9)).isZero();
        assertThat(Precision.marginRatio(1, 1)).isZero();
        double before = StratumEstimate.MOST_RATIO;
        for (int seen = 1; seen <= 50; seen++) {
            double now = Precision.marginRatio(seen, 50);
            assertThat(now).isLessThanOrEqualTo(before);
            before = now;
        }
        // 1.96 sqrt(0.25 / 100), the textbook figure of an unlimited population.
        assertThat(Precision.marginRatio(100, 100_000_000)).isCloseTo(0.098, within(1e-4));
    }
}
