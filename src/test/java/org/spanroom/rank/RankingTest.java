package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Answer;
import org.spanroom.model.network.Condition;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.FrictionUse;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.CriterionInfo;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.Score;
import org.spanroom.model.rank.ScoringSettings;

class RankingTest {
    private static final ScoringSettings SETTINGS = scoring(Map.of(
            "room_gained", criterion(0.6, Map.of(0.0, 0.0, 3.0, 0.5, 6.0, 0.8, 9.0, 1.0)),
            "length", criterion(0.2, Map.of(0.0, 0.0, 60.0, 0.5, 183.0, 1.0)),
            "ease_bends", criterion(0.2, Map.of(0.0, 1.0, 90.0, 0.7, 180.0, 0.3, 360.0, 0.0))));

    private final Ranking ranking = new Ranking(SETTINGS, ShippedConfig.get().room());

    /** Worked by hand on the curve (0, 1), (90, 0.7), (180, 0.3), (360, 0). */
    @ParameterizedTest(name = "{0} degrees are worth {1}")
    @CsvSource({"-5, 1", "0, 1", "45, 0.85", "90, 0.7", "135, 0.5", "180, 0.3", "270, 0.15", "360, 0", "500, 0"})
    void curveIsReadPiecewiseLinearly(double quantity, double value) {
        var curve = new ValueCurve(new TreeMap<>(Map.of(0.0, 1.0, 90.0, 0.7, 180.0, 0.3, 360.0, 0.0)));

        assertThat(curve.valueAt(quantity)).isCloseTo(value, within(1e-12));
    }

    @Test
    void curveIsConstantBeyondItsLastPoint() {
        var rising = new ValueCurve(new TreeMap<>(Map.of(0.0, 0.2, 10.0, 1.0)));

        assertThat(rising.valueAt(25)).isEqualTo(1);
        assertThat(rising.valueAt(-1)).isEqualTo(0.2);
        assertThat(rising.valueAt(5)).isCloseTo(0.6, within(1e-12));
    }

    /** Worked by hand: 0.6 x 0.5 for 3 cables, 0.2 x 0.85 for 45 degrees, 0.2 x 0.5 for 60 m. */
    @Test
    void scoreIsTheWeightedSumOfItsParts() {
        var score = ranking.score(assessment("a", 3, 60, 45));

        assertThat(score.totalPoints()).isCloseTo(30 + 17 + 10, within(1e-9));
        assertThat(score.parts())
                .extracting(Score.Part::criterion)
                .containsExactly("room_gained", "ease_bends", "length");
        assertThat(score.part(2).points()).isCloseTo(10, within(1e-9));
        assertThat(ranking.weighted())
                .extracting(CriterionInfo::key)
                .containsExactly("room_gained", "ease_bends", "length");
        assertThat(score.placeOf(Criterion.LENGTH.info())).isEqualTo(2);
        assertThat(score.placeOf(Criterion.SAVING.info())).isEqualTo(-1);
        assertThat(ranking.weighsSaving()).isFalse();
        assertThat(score.part(1).points()).isCloseTo(17, within(1e-9));
        assertThat(ranking.points(new double[] {0, 45, 0})).isCloseTo(17, within(1e-9));
        // A simulation in which nothing varies gives the same points.
        var certain = new SpanOutlook.Situation(0, 0, 1, new double[] {3, 45, 60}, true, new double[] {});
        assertThat(ranking.simulation(ShippedConfig.get().uncertainty())
                        .scores(new SpanOutlook(
                                "a", List.of(certain), FrictionUse.of(LimitKind.INNERDUCT_STRENGTH, 0.5, 0.5, 0.5), 0))
                        .bySample())
                .containsOnly(new double[] {57}, within(1e-9));
    }

    @Test
    void equalScoresAreOrderedByIdAndExcludedSpansComeLastWithoutARank() {
        var collapsed = HandMade.named("a");
        collapsed.condition = Condition.COLLAPSED;

        var ranked = ranking.rank(List.of(collapsed.assessed(), assessment("c", 3, 60, 0), assessment("b", 3, 60, 0)));

        assertThat(ids(ranked)).containsExactly("b", "c", "a");
        assertThat(ranked)
                .extracting(RankedSpan::rank)
                .containsExactly(OptionalInt.of(1), OptionalInt.of(2), OptionalInt.empty());
    }

    /** 400 degrees are worth nothing by the only criterion: still a rank, before what is excluded. */
    @Test
    void aSpanWithoutAPointRanksBeforeAnExcludedOne() {
        var collapsed = HandMade.named("a");
        collapsed.condition = Condition.COLLAPSED;
        var byBends = new Ranking(
                scoring(Map.of("ease_bends", SETTINGS.criteria().get("ease_bends"))),
                ShippedConfig.get().room());

        var ranked = byBends.rank(List.of(collapsed.assessed(), assessment("b", 3, 60, 400)));

        assertThat(ids(ranked)).containsExactly("b", "a");
        assertThat(ranked.get(0).score().totalPoints()).isZero();
        assertThat(ranked).extracting(RankedSpan::rank).containsExactly(OptionalInt.of(1), OptionalInt.empty());
    }

    /** B is the better end (50 %, A 80 %), and its anchor is A: where A holds no cable, A is worked from; where neither does, B is reported. */
    @ParameterizedTest(name = "hold at A {0}, at B {1}: dry {2} %")
    @CsvSource({"YES, YES, 50", "NO, YES, 80", "NO, NO, 50"})
    void useByFrictionIsThatOfTheEndThatIsWorkedFrom(Answer atA, Answer atB, double dryPercent) {
        var one = HandMade.sound();
        one.fromSite = HandMade.hold(atA);
        one.toSite = HandMade.hold(atB);

        FrictionUse use = ranking.useByFriction(one.assessed());

        assertThat(100 * use.mostRatio(Friction.LUBRICATED)).isCloseTo(dryPercent / 2, within(1e-9));
        assertThat(100 * use.mostRatio(Friction.DRY)).isCloseTo(dryPercent, within(1e-9));
        assertThat(100 * use.mostRatio(Friction.BAD)).isCloseTo(1.2 * dryPercent, within(1e-9));
    }

    /** The given criteria, with all else as shipped. */
    private static ScoringSettings scoring(Map<String, ScoringSettings.Criterion> criteria) {
        ScoringSettings shipped = ShippedConfig.get().scoring();
        return new ScoringSettings(
                criteria,
                shipped.gates(),
                shipped.unknownConsentExcludes(),
                shipped.hardVaultKinds(),
                shipped.hardVaultSurfaces(),
                shipped.knowledge());
    }

    @Test
    void shippedScoringNamesEveryCriterion() {
        assertThat(ShippedConfig.get().scoring().criteria())
                .containsOnlyKeys(
                        Ranking.criteria().stream().map(CriterionInfo::key).toList());
    }

    @Test
    void unknownCriterionIsRefusedByName() {
        var settings = scoring(Map.of("lenght", new ScoringSettings.Criterion(1, new TreeMap<>(Map.of(0.0, 1.0)))));

        assertThatThrownBy(() -> new Ranking(settings, ShippedConfig.get().room()))
                .hasMessageContaining("lenght")
                .hasMessageContaining("length");
    }

    @Test
    void aCriterionWithoutWeightIsNoPartOfTheScore() {
        var criteria = new TreeMap<>(SETTINGS.criteria());
        criteria.put("length", criterion(0, Map.of(0.0, 1.0)));

        Score score = new Ranking(scoring(criteria), ShippedConfig.get().room()).score(assessment("a", 3, 60, 45));

        assertThat(score.parts()).extracting(Score.Part::criterion).containsExactly("room_gained", "ease_bends");
        // Worked by hand: 0.6 x 0.5 and 0.2 x 0.85, of weights that add up to 0.8.
        assertThat(score.totalPoints()).isCloseTo(100 * 0.47 / 0.8, within(1e-9));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void weightsCountAsSharesOfTheirSum(long seed) {
        var sevenfold = new TreeMap<String, ScoringSettings.Criterion>();
        ShippedConfig.get()
                .scoring()
                .criteria()
                .forEach((key, one) -> sevenfold.put(key, criterion(7 * one.weightRatio(), one.curve())));
        var shipped =
                new Ranking(ShippedConfig.get().scoring(), ShippedConfig.get().room());
        var scaled = new Ranking(scoring(sevenfold), ShippedConfig.get().room());
        Assessment one = random(new Random(seed), 0);

        assertThat(scaled.score(one).totalPoints()).isCloseTo(shipped.score(one).totalPoints(), within(1e-9));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void quantitiesAloneGiveTheVerySamePoints(long seed) {
        var shipped =
                new Ranking(ShippedConfig.get().scoring(), ShippedConfig.get().room());
        Assessment one = random(new Random(seed), 0);

        Score score = shipped.score(one);

        assertThat(shipped.points(shipped.quantities(one))).isEqualTo(score.totalPoints());
        assertThat(score.totalPoints()).isBetween(0.0, 100 + 1e-9);
        assertThat(score.parts().stream().mapToDouble(Score.Part::points).sum())
                .isCloseTo(score.totalPoints(), within(1e-9));
    }

    /** Also where the third is an empty duct, which may exclude spans of its bank but reorders none. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void orderOfTwoDoesNotDependOnTheOthersNorOnTheOrderOfReading(long seed) {
        var shipped =
                new Ranking(ShippedConfig.get().scoring(), ShippedConfig.get().room());
        var random = new Random(seed);
        var all = new ArrayList<Assessment>();
        for (int i = 0; i < 60; i++) {
            all.add(random(random, i));
        }
        List<RankedSpan> before = shipped.rank(all);

        Collections.shuffle(all, random);
        var fewer = shipped.rank(all.subList(0, 30));

        assertThat(ids(shipped.rank(all))).isEqualTo(ids(before));
        List<String> rankedInBoth = rankedIds(before);
        rankedInBoth.retainAll(rankedIds(fewer));
        List<String> orderOfFewer = rankedIds(fewer);
        orderOfFewer.retainAll(rankedInBoth);
        assertThat(orderOfFewer).isEqualTo(rankedInBoth).hasSizeGreaterThan(1);
    }

    static LongStream seeds() {
        return LongStream.range(0, 50);
    }

    private static Assessment random(Random random, int number) {
        var one = HandMade.named("s" + number);
        one.newCables = random.nextInt(10);
        one.positionsNow = random.nextInt(3);
        one.lengthM = 1 + random.nextInt(3) * 50;
        one.turnDeg = random.nextInt(4) * 45;
        one.percentAtA = random.nextInt(3) * 60;
        one.percentAtB = random.nextInt(3) * 60;
        one.flooded = random.nextInt(4) == 0;
        one.fromSite = HandMade.hold(random.nextBoolean() ? Answer.NO : Answer.YES);
        one.toSite = HandMade.hold(random.nextBoolean() ? Answer.NO : Answer.YES);
        one.consent = random.nextInt(8) == 0 ? Answer.NO : Answer.UNKNOWN;
        one.positionQuality = "QL-" + (char) ('A' + random.nextInt(5));
        one.in("B" + random.nextInt(20), "V" + random.nextInt(2), "W" + random.nextInt(2));
        return (random.nextInt(8) == 0 ? one.empty() : one).assessed();
    }

    private static ScoringSettings.Criterion criterion(double weightRatio, Map<Double, Double> curve) {
        return new ScoringSettings.Criterion(weightRatio, new TreeMap<>(curve));
    }

    private static List<String> ids(List<RankedSpan> ranked) {
        return ranked.stream().map(one -> one.span().id()).toList();
    }

    private static List<String> rankedIds(List<RankedSpan> ranked) {
        return new ArrayList<>(
                ids(ranked.stream().filter(one -> one.rank().isPresent()).toList()));
    }

    private static Assessment assessment(String id, int newCables, double lengthM, double turnDeg) {
        var one = HandMade.named(id);
        one.newCables = newCables;
        one.lengthM = lengthM;
        one.turnDeg = turnDeg;
        return one.assessed();
    }
}
