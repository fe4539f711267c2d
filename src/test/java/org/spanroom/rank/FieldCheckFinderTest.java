package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Answer;
import org.spanroom.model.effort.VaultAccess;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.VaultSite;
import org.spanroom.model.pull.FrictionUse;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.rank.FieldCheck;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.ScoringSettings;
import org.spanroom.model.rank.UncertaintySettings;
import org.spanroom.model.rank.Unknown;

/**
 * The value of knowing, worked by hand from the chances that a span is given: by how much less often the decision is wrong.
 * A score is the number of cables plus the percent used where a case says so; the top begins at 5 points.
 */
class FieldCheckFinderTest {
    private static final double[] TOP_FROM_5 = {5};
    private static final FrictionUse EASY = used(1.0, 1.0, 1.0);
    private static final double NOISE = 0.01;
    private static final double LEAST_CHANGE_RATIO =
            ShippedConfig.get().uncertainty().leastChangeRatio();
    private static final VaultAccess ACCESS = new VaultAccess(
            ShippedConfig.get().vaultKinds(), ShippedConfig.get().rates());

    /** In the top unless it is blocked, with a chance of 0.3: knowing that saves those 0.3; nothing else matters. */
    @Test
    void whereABlockedDuctAloneDecidesOnlyItsConditionIsWorthALook() {
        List<FieldCheck> checks = byCables()
                .find(() -> ranked(HandMade.sound()), outlook(0.3, EASY, cables(0, 0, 1, 9)))
                .checks();

        assertThat(checks).extracting(FieldCheck::unknown).containsExactly(Unknown.CONDITION);
        assertThat(checks.get(0).topRatio()).isEqualTo(0.7, within(NOISE));
        assertThat(checks.get(0).changeRatio()).isEqualTo(0.3, within(NOISE));
    }

    /** Tighter sizes, with a chance of 0.4, or one additional cable, with the same chance, leave three cables: out of the top. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({"SIZES, 1, 0", "CONTENTS, 0, 1"})
    void whereASituationDecidesItIsWorthALook(Unknown unknown, int sizes, int contents) {
        SpanOutlook span = outlook(0, EASY, cables(0, 0, 0.6, 9), cables(sizes, contents, 0.4, 3));

        List<FieldCheck> checks =
                byCables().find(() -> ranked(HandMade.sound()), span).checks();

        assertThat(checks).extracting(FieldCheck::unknown).containsExactly(unknown);
        assertThat(checks.get(0).topRatio()).isEqualTo(0.6, within(NOISE));
        assertThat(checks.get(0).changeRatio()).isEqualTo(0.4, within(NOISE));
    }

    /**
     * In the top in the worse half of all states of friction. Knowing in which fifth it lies, four decisions are right and the middle
     * one half of the time: 0.9, where without it 0.5 were.
     */
    @Test
    void whereFrictionDecidesItsFifthIsWorthFourTenths() {
        var finder = finder(simulation((place, quantity) -> place == 1 ? quantity : 0), TOP_FROM_5);

        List<FieldCheck> checks = finder.find(
                        () -> ranked(HandMade.sound()), outlook(0, used(2.5, 5.0, 10.0), cables(0, 0, 1, 0)))
                .checks();

        assertThat(checks).extracting(FieldCheck::unknown).containsExactly(Unknown.FRICTION);
        assertThat(checks.get(0).topRatio()).isEqualTo(0.5, within(NOISE));
        assertThat(checks.get(0).changeRatio()).isEqualTo(0.4, within(NOISE));
    }

    /** Thresholds take turns as samples do: in one of four the span is in the top whatever it is like. */
    @Test
    void eachSampleHasItsOwnThreshold() {
        var finder = finder(simulation((place, quantity) -> place == 0 ? quantity : 0), new double[] {5, 5, 5, 2});
        SpanOutlook span = outlook(0, EASY, cables(0, 0, 0.6, 9), cables(1, 0, 0.4, 3));

        FieldCheck check =
                finder.find(() -> ranked(HandMade.sound()), span).checks().get(0);

        // 0.6 + 0.4 / 4; knowing the sizes leaves a quarter of the 0.4 wrong.
        assertThat(check.topRatio()).isEqualTo(0.7, within(NOISE));
        assertThat(check.changeRatio()).isEqualTo(0.9 - 0.7, within(NOISE));
    }

    @Test
    void whatIsCertainIsNotWorthALook() {
        assertThat(byCables()
                        .find(() -> ranked(HandMade.sound()), outlook(0.008, EASY, cables(0, 0, 1, 9)))
                        .checks())
                .isEmpty();
    }

    /** Without a least change too: how many spans are open must not depend on what was known when a span was looked at first. */
    @Test
    void whatNoKnowledgeCanChangeIsNotOpenWhateverTheLeastChange() {
        var finder =
                new FieldCheckFinder(simulation((place, quantity) -> place == 0 ? quantity : 0), TOP_FROM_5, 0, ACCESS);

        assertThat(finder.find(() -> ranked(HandMade.sound()), outlook(0, EASY, cables(0, 0, 1, 3)))
                        .open())
                .isFalse();
        assertThat(finder.find(() -> ranked(HandMade.sound()), outlook(0, EASY, cables(0, 0, 1, 9)))
                        .open())
                .isFalse();
        assertThat(finder.find(() -> ranked(HandMade.sound()), outlook(0.3, EASY, cables(0, 0, 1, 9)))
                        .open())
                .isTrue();
    }

    /**
     * Where a blocked duct alone decides, the expected change is the chance that it is blocked. At the shipped chance of a duct that is
     * recorded as sound all of 200 spans have the check: a limit of the same size took it or left it by the noise of the samples.
     */
    @Test
    void aChangeOfTheSizeOfAChanceIsListedForEverySpan() {
        double chanceRatio = ShippedConfig.get().uncertainty().blockedRatio();
        for (int number = 0; number < 200; number++) {
            var span = new SpanOutlook("span " + number, List.of(cables(0, 0, 1, 9)), EASY, chanceRatio);

            assertThat(byCables().find(() -> ranked(HandMade.sound()), span).checks())
                    .as(span.spanId())
                    .extracting(FieldCheck::unknown)
                    .containsExactly(Unknown.CONDITION);
        }
    }

    /**
     * A coin that has nothing to do with the span decides: whatever knowing seems to change is noise of the samples. Without the rule of
     * its standard error, and with no least change, the noise of half of the coins would be listed.
     * Two standard errors let through at most one in 44 of such checks (normal distribution), so 18 of 800; 110 of 8 000 were measured.
     */
    @Test
    void whatStandsWithinItsSamplingErrorIsNotListed() {
        int listed = 0;
        for (int coin = 0; coin < 400; coin++) {
            var random = new Random(coin);
            double[] thresholds = random.doubles(UncertaintySettings.FIELD_CHECK_SAMPLES)
                    .map(toss -> toss < 0.5 ? 5 : 10)
                    .toArray();
            var finder = new FieldCheckFinder(
                    simulation((place, quantity) -> place == 0 ? quantity : 0), thresholds, 1e-9, ACCESS);
            SpanOutlook span = outlook(0, EASY, cables(0, 0, 0.6, 9), cables(1, 0, 0.4, 9));
            listed += finder.find(() -> ranked(HandMade.sound()), span).checks().size();
        }
        assertThat(listed).as("of 400 coins, by two unknowns that have states").isLessThanOrEqualTo(18);
    }

    /** The crew's cautions over everything that they are based on. */
    @Test
    void eachRowCarriesTheCautionsForItsVault() {
        for (Service service : Service.values()) {
            for (String kind : List.of("", "maintenance hole", "handhole", "Pull Box")) {
                for (String surface : List.of("", "roadway", "asphalt", "no such word", "sidewalk", "grass")) {
                    for (Answer water : Answer.values()) {
                        for (int circuits : new int[] {-1, 0, 12}) {
                            for (boolean flooded : new boolean[] {false, true}) {
                                assertCrewCautions(service, kind, surface, water, circuits, flooded);
                            }
                        }
                    }
                }
            }
        }
    }

    private static void assertCrewCautions(
            Service service, String kind, String surface, Answer water, int circuits, boolean flooded) {
        HandMade one = HandMade.sound();
        one.contents = HandMade.holding(service);
        one.fromKind = kind;
        one.toKind = kind;
        one.fromSite = new VaultSite(OptionalDouble.empty(), water, surface, Answer.UNKNOWN);
        one.toSite = one.fromSite;
        one.flooded = flooded;
        one.circuits = circuits < 0 ? OptionalInt.empty() : OptionalInt.of(circuits);
        var expected = new ArrayList<String>();
        if (service != Service.DEAD) {
            expected.add(
                    "live cable: restrain it; do not exceed the hold force or bend tighter than the minimum radius");
        }
        if (!kind.equals("handhole") && !kind.equals("Pull Box")) {
            expected.add("confined-space entry");
        }
        if (circuits > 0) {
            expected.add("circuits at risk: 12");
        }
        if (flooded || water == Answer.YES) {
            expected.add("water: discharge it where permitted, then test the air again");
        }
        if (!surface.equals("sidewalk") && !surface.equals("grass")) {
            expected.add("cover in the roadway: traffic control");
        }

        FieldCheck check = byCables()
                .find(() -> ranked(one), outlook(0.3, EASY, cables(0, 0, 1, 9)))
                .checks()
                .get(0);

        assertThat(check.cautions()).isEqualTo(expected);
    }

    @Test
    void anEmbargoWhoseGateIsOpenIsACautionForTheCrew() {
        HandMade one = HandMade.sound();
        one.embargo = Optional.of(LocalDate.of(2027, 3, 31));
        ScoringSettings open = ShippedConfig.get().scoring().withGates(Map.of("embargo", false));
        RankedSpan ranked = new Ranking(open, ShippedConfig.get().room())
                .rank(List.of(one.assessed()))
                .get(0);

        assertThat(byCables()
                        .find(() -> ranked, outlook(0.3, EASY, cables(0, 0, 1, 9)))
                        .checks()
                        .get(0)
                        .cautions())
                .contains("embargo: do not disturb the cables");
    }

    @Test
    void frictionIsTriedAtTheBetterEnd() {
        HandMade fromA = HandMade.sound();
        fromA.percentAtA = 20;
        var finder = finder(simulation((place, quantity) -> place == 1 ? quantity : 0), TOP_FROM_5);
        SpanOutlook span = outlook(0, used(2.5, 5.0, 10.0), cables(0, 0, 1, 0));

        assertThat(finder.find(() -> ranked(HandMade.sound()), span)
                        .checks()
                        .get(0)
                        .vault()
                        .id())
                .isEqualTo("V2");
        assertThat(finder.find(() -> ranked(fromA), span)
                        .checks()
                        .get(0)
                        .vault()
                        .id())
                .isEqualTo("V1");
    }

    /** Water is worse than the roadway, and both together are worst; where neither end is easier it is the first. */
    @ParameterizedTest(name = "{0} {1}, {2} {3}: {4}")
    @CsvSource({
        "NO, verge, NO, verge, V1",
        "NO, roadway, NO, verge, V2",
        "NO, verge, NO, roadway, V1",
        "YES, verge, NO, roadway, V2",
        "NO, Roadway, YES, verge, V1",
        "NO, asphalt, NO, verge, V2",
        "NO, , NO, verge, V2",
        "NO, no such word, NO, sidewalk, V2",
        "YES, roadway, YES, verge, V2",
        "YES, roadway, YES, roadway, V1"
    })
    void allElseIsLookedAtFromTheEasierVault(
            Answer waterAtA, String surfaceAtA, Answer waterAtB, String surfaceAtB, String vault) {
        HandMade one = HandMade.sound();
        one.fromSite = site(waterAtA, surfaceAtA);
        one.toSite = site(waterAtB, surfaceAtB);

        FieldCheck check = byCables()
                .find(() -> ranked(one), outlook(0.3, EASY, cables(0, 0, 1, 9)))
                .checks()
                .get(0);

        assertThat(check.vault().id()).isEqualTo(vault);
    }

    @Test
    void theLargestChangeIsFirstThenTheBetterRankThenTheUnknown() {
        RankedSpan first = ranked(HandMade.named("first"), OptionalInt.of(1));
        RankedSpan second = ranked(HandMade.named("second"), OptionalInt.of(2));
        RankedSpan none = ranked(HandMade.named("none"), OptionalInt.empty());

        assertThat(Stream.of(
                                check(none, Unknown.SIZES, 0.1),
                                check(second, Unknown.SIZES, 0.1),
                                check(first, Unknown.CONDITION, 0.1),
                                check(first, Unknown.FRICTION, 0.1),
                                check(second, Unknown.CONTENTS, 0.2))
                        .sorted(FieldCheckFinder.MOST_CHANGE_FIRST)
                        .map(check -> check.span().span().id() + " " + check.unknown()))
                .containsExactly("second CONTENTS", "first FRICTION", "first CONDITION", "second SIZES", "none SIZES");
    }

    private static VaultSite site(Answer water, String surface) {
        return new VaultSite(OptionalDouble.empty(), water, surface == null ? "" : surface, Answer.UNKNOWN);
    }

    private static FieldCheck check(RankedSpan span, Unknown unknown, double changeRatio) {
        return new FieldCheck(span, unknown, 0.5, changeRatio, span.span().from(), List.of());
    }

    private static FieldCheckFinder byCables() {
        return finder(simulation((place, quantity) -> place == 0 ? quantity : 0), TOP_FROM_5);
    }

    private static FieldCheckFinder finder(Simulation simulation, double[] thresholds) {
        return new FieldCheckFinder(simulation, thresholds, LEAST_CHANGE_RATIO, ACCESS);
    }

    private static Simulation simulation(Simulation.Points points) {
        return new Simulation(ShippedConfig.get().uncertainty(), points, 1, 2);
    }

    private static SpanOutlook outlook(
            double blockedRatio, FrictionUse usedPercents, SpanOutlook.Situation... situations) {
        return new SpanOutlook("s", List.of(situations), usedPercents, blockedRatio);
    }

    private static SpanOutlook.Situation cables(int sizes, int contents, double chanceRatio, double cables) {
        return new SpanOutlook.Situation(
                sizes, contents, chanceRatio, new double[] {cables, 0, 0}, true, new double[] {});
    }

    private static RankedSpan ranked(HandMade one) {
        return ranked(one, OptionalInt.of(1));
    }

    private static RankedSpan ranked(HandMade one, OptionalInt rank) {
        var ranking =
                new Ranking(ShippedConfig.get().scoring(), ShippedConfig.get().room());
        return new RankedSpan(rank, one.assessed(), ranking.score(one.assessed()));
    }

    private static FrictionUse used(double lubricatedPercent, double dryPercent, double badPercent) {
        return FrictionUse.of(
                LimitKind.INNERDUCT_STRENGTH, lubricatedPercent / 100, dryPercent / 100, badPercent / 100);
    }
}
