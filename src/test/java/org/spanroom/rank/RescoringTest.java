package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.rank.CriterionInfo;
import org.spanroom.model.rank.RescoredSpan;
import org.spanroom.model.rank.ScoringSettings;
import org.spanroom.model.rank.Verdict;

/** Another scoring of what an earlier run found; points worked by hand. */
class RescoringTest {
    private final Rescoring rescoring =
            new Rescoring(settings(), ShippedConfig.get().room());

    @Test
    void quantitiesAreScoredInTheOrderOfTheCriteria() {
        assertThat(rescoring.criteria()).extracting(CriterionInfo::key).containsExactly("room_gained", "length");
        // Three quarters of the weight on 4 of 10 places, one quarter on 50 of 200 m.
        assertThat(rescoring.score(new double[] {4, 50}).totalPoints()).isCloseTo(30 + 6.25, within(1e-9));
    }

    @Test
    void anOpenGateWaivesItsReasonAndAShutOneExcludes() {
        Verdict verdict = rescoring.verdict(Set.of("duct_blocked", "duct_collapsed", "water"));

        assertThat(verdict.waived()).containsExactly(Gate.DUCT_BLOCKED.exclusion());
        assertThat(verdict.exclusions()).containsExactly(Gate.DUCT_COLLAPSED.exclusion());
        assertThat(verdict.cautions()).containsExactly(CautionKind.WATER.caution());
    }

    @Test
    void theBestScoreIsFirstThenTheIdAndTheExcludedAreLastWithoutAPlace() {
        Verdict excluded = rescoring.verdict(Set.of("duct_collapsed"));

        List<RescoredSpan> ranked = Rescoring.ranked(List.of(
                span("barred b", 9, excluded),
                span("a low one", 1, Verdict.CLEAR),
                span("high b", 8, Verdict.CLEAR),
                span("barred a", 2, excluded),
                span("high a", 8, Verdict.CLEAR)));

        assertThat(ranked)
                .extracting(RescoredSpan::spanId)
                .containsExactly("high a", "high b", "a low one", "barred a", "barred b");
        assertThat(ranked)
                .extracting(RescoredSpan::rank)
                .containsExactly(
                        OptionalInt.of(1),
                        OptionalInt.of(2),
                        OptionalInt.of(3),
                        OptionalInt.empty(),
                        OptionalInt.empty());
    }

    /** Two criteria, and one gate open; all else as shipped, all other gates shut. */
    private static ScoringSettings settings() {
        ScoringSettings shipped = ShippedConfig.get().scoring();
        return new ScoringSettings(
                Map.of(
                        "room_gained", new ScoringSettings.Criterion(3, new TreeMap<>(Map.of(0.0, 0.0, 10.0, 1.0))),
                        "length", new ScoringSettings.Criterion(1, new TreeMap<>(Map.of(0.0, 0.0, 200.0, 1.0)))),
                Map.of("duct_blocked", false),
                shipped.unknownConsentExcludes(),
                shipped.hardVaultKinds(),
                shipped.hardVaultSurfaces(),
                shipped.knowledge());
    }

    private RescoredSpan span(String id, double cables, Verdict verdict) {
        return new RescoredSpan(
                id,
                List.of(),
                Optional.empty(),
                OptionalInt.empty(),
                rescoring.score(new double[] {cables, 100}),
                verdict);
    }
}
