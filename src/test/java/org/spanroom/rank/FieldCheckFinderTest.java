package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Answer;
import org.spanroom.model.network.VaultSite;
import org.spanroom.model.pull.FrictionUse;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.rank.FieldCheck;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.Unknown;

/**
 * The value of knowing, worked by hand from the chances that a span is given: by how much less often the decision is wrong.
 * A score is the number of cables plus the percent used where a case says so; the top begins at 5 points.
 */
class FieldCheckFinderTest {
    private static final double[] TOP_FROM_5 = {5};
    private static final FrictionUse EASY = used(1.0, 1.0, 1.0);
    private static final double NOISE = 0.01;

    /** In the top unless it is blocked, with a chance of 0.3: knowing that saves those 0.3; nothing else matters. */
    @Test
    void whereABlockedDuctAloneDecidesOnlyItsConditionIsWorthALook() {
        List<FieldCheck> checks = byCables().find(ranked(HandMade.sound()), outlook(0.3, EASY, cables(0, 0, 1, 9)));

        assertThat(checks).extracting(FieldCheck::unknown).containsExactly(Unknown.CONDITION);
        assertThat(checks.get(0).topRatio()).isEqualTo(0.7, within(NOISE));
        assertThat(checks.get(0).changeRatio()).isEqualTo(0.3, within(NOISE));
    }

    /** Tighter sizes, with a chance of 0.4, or one additional cable, with the same chance, leave three cables: out of the top. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({"SIZES, 1, 0", "CONTENTS, 0, 1"})
    void whereASituationDecidesItIsWorthALook(Unknown unknown, int sizes, int contents) {
        SpanOutlook span = outlook(0, EASY, cables(0, 0, 0.6, 9), cables(sizes, contents, 0.4, 3));

        List<FieldCheck> checks = byCables().find(ranked(HandMade.sound()), span);

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
        var finder = new FieldCheckFinder(simulation((place, quantity) -> place == 1 ? quantity : 0), TOP_FROM_5);

        List<FieldCheck> checks =
                finder.find(ranked(HandMade.sound()), outlook(0, used(2.5, 5.0, 10.0), cables(0, 0, 1, 0)));

        assertThat(checks).extracting(FieldCheck::unknown).containsExactly(Unknown.FRICTION);
        assertThat(checks.get(0).topRatio()).isEqualTo(0.5, within(NOISE));
        assertThat(checks.get(0).changeRatio()).isEqualTo(0.4, within(NOISE));
    }

    /** Thresholds take turns as samples do: in one of four the span is in the top whatever it is like. */
    @Test
    void eachSampleHasItsOwnThreshold() {
        var finder = new FieldCheckFinder(
                simulation((place, quantity) -> place == 0 ? quantity : 0), new double[] {5, 5, 5, 2});
        SpanOutlook span = outlook(0, EASY, cables(0, 0, 0.6, 9), cables(1, 0, 0.4, 3));

        FieldCheck check = finder.find(ranked(HandMade.sound()), span).get(0);

        // 0.6 + 0.4 / 4; knowing the sizes leaves a quarter of the 0.4 wrong.
        assertThat(check.topRatio()).isEqualTo(0.7, within(NOISE));
        assertThat(check.changeRatio()).isEqualTo(0.9 - 0.7, within(NOISE));
    }

    @Test
    void whatIsCertainIsNotWorthALook() {
        assertThat(byCables().find(ranked(HandMade.sound()), outlook(0.015, EASY, cables(0, 0, 1, 9))))
                .isEmpty();
    }

    @Test
    void frictionIsTriedAtTheBetterEnd() {
        HandMade fromA = HandMade.sound();
        fromA.percentAtA = 20;
        var finder = new FieldCheckFinder(simulation((place, quantity) -> place == 1 ? quantity : 0), TOP_FROM_5);
        SpanOutlook span = outlook(0, used(2.5, 5.0, 10.0), cables(0, 0, 1, 0));

        assertThat(finder.find(ranked(HandMade.sound()), span).get(0).vault().id())
                .isEqualTo("V2");
        assertThat(finder.find(ranked(fromA), span).get(0).vault().id()).isEqualTo("V1");
    }

    /** Water is worse than the roadway, and both together are worst; where neither end is easier it is the first. */
    @ParameterizedTest(name = "{0} {1}, {2} {3}: {4}")
    @CsvSource({
        "NO, verge, NO, verge, V1",
        "NO, roadway, NO, verge, V2",
        "NO, verge, NO, roadway, V1",
        "YES, verge, NO, roadway, V2",
        "NO, Roadway, YES, verge, V1",
        "YES, roadway, YES, verge, V2",
        "YES, roadway, YES, roadway, V1"
    })
    void allElseIsLookedAtFromTheEasierVault(
            Answer waterAtA, String surfaceAtA, Answer waterAtB, String surfaceAtB, String vault) {
        HandMade one = HandMade.sound();
        one.fromSite = new VaultSite(OptionalDouble.empty(), waterAtA, surfaceAtA, Answer.UNKNOWN);
        one.toSite = new VaultSite(OptionalDouble.empty(), waterAtB, surfaceAtB, Answer.UNKNOWN);

        FieldCheck check = byCables()
                .find(ranked(one), outlook(0.3, EASY, cables(0, 0, 1, 9)))
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

    private static FieldCheck check(RankedSpan span, Unknown unknown, double changeRatio) {
        return new FieldCheck(span, unknown, 0.5, changeRatio, span.span().from());
    }

    private static FieldCheckFinder byCables() {
        return new FieldCheckFinder(simulation((place, quantity) -> place == 0 ? quantity : 0), TOP_FROM_5);
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
