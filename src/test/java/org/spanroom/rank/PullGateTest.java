package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Answer;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.rank.Caution;
import org.spanroom.model.rank.Verdict;

/** Which pulls that fail on paper keep a span out of the ranking, and which are a caution only. */
class PullGateTest {
    private static final String GATE = Gate.PULL_FAILS.key();

    /** Out at A and at B when dry; when lubricated a share of that. */
    @ParameterizedTest(name = "dry {0} % and {1} %, lubricated {2} of it: {3}")
    @CsvSource({
        "100, 100, 0.5, ''",
        "101, 100, 0.5, ''",
        "101, 101, 0.5, pull_doubtful",
        "230, 200, 0.5, pull_doubtful",
        "200, 230, 0.5, pull_doubtful",
        "230, 200.2, 0.5, pull_fails",
        "101, 101, 1, pull_fails"
    })
    void onlyAPullThatFailsWhenLubricatedTooExcludes(
            double percentAtA, double percentAtB, double lubricatedRatio, String key) {
        var one = HandMade.sound();
        one.percentAtA = percentAtA;
        one.percentAtB = percentAtB;
        one.lubricatedRatio = lubricatedRatio;

        Verdict verdict = verdict(one);

        assertThat(verdict.isExcluded()).isEqualTo(key.equals(GATE));
        assertThat(keys(verdict)).containsExactlyElementsOf(key.isEmpty() ? List.of() : List.of(key));
        assertThat(verdict.isPullDoubtful()).isEqualTo(key.equals("pull_doubtful"));
    }

    /** A limit that friction leaves as it is fails in every state. Two radii of the innerduct are no reason to exclude. */
    @ParameterizedTest
    @EnumSource
    void whatFrictionLeavesAsItIsExcludesUnlessItIsARadiusOfTheInnerduct(LimitKind limit) {
        boolean isRadius = limit == LimitKind.INNERDUCT_BEND_RADIUS || limit == LimitKind.VAULT_EXIT_RADIUS;
        var one = HandMade.sound();
        one.limit = limit;
        one.percentAtA = 102;
        one.percentAtB = 101;
        one.lubricatedRatio = 1;

        Verdict verdict = verdict(one);

        assertThat(keys(verdict)).containsExactly(isRadius ? "innerduct_radius" : GATE);
        assertThat(verdict.isExcluded()).isNotEqualTo(isRadius);
        assertThat(verdict.isPullDoubtful()).isFalse();
        assertThat(limit.excludes()).isNotEqualTo(isRadius);
    }

    /** Out at B it would pass when lubricated, but the cable cannot be held for it at A: then only A counts, where it fails. */
    @ParameterizedTest(name = "hold at A {0}, at B {1}: {2}")
    @CsvSource({
        "YES, YES, pull_doubtful",
        "UNKNOWN, NO, pull_doubtful",
        "NO, YES, pull_fails",
        "NO, UNKNOWN, pull_fails",
        // Held nowhere: that is the reason, not the pull.
        "NO, NO, no_cable_hold"
    })
    void anEndWithoutHoldDoesNotCount(Answer atA, Answer atB, String key) {
        var one = HandMade.sound();
        one.percentAtA = 230;
        one.percentAtB = 150;
        one.fromSite = HandMade.hold(atA);
        one.toSite = HandMade.hold(atB);

        Verdict verdict = verdict(one);

        assertThat(keys(verdict)).contains(key);
        assertThat(keys(verdict).contains(GATE)).isEqualTo(key.equals(GATE));
    }

    @Test
    void theCautionThatIsCountedApartIsThis() {
        assertThat(CautionKind.PULL_DOUBTFUL.key()).isEqualTo(Caution.PULL_DOUBTFUL);
    }

    /** Two vaults may share a place, but not a name. */
    @ParameterizedTest(name = "{0} to {1}: {2}")
    @CsvSource({"V1, V1, true", "V1, V2, false", "V1, v1, false"})
    void aLoopIsASpanFromAVaultToItself(String from, String to, boolean loop) {
        var one = HandMade.sound();
        one.from = from;
        one.to = to;

        assertThat(keys(verdict(one)).contains("loop")).isEqualTo(loop);
        assertThat(verdict(one).isExcluded()).isEqualTo(loop);
    }

    private static List<String> keys(Verdict verdict) {
        return Stream.concat(verdict.exclusions().stream().map(reason -> reason.key()), verdict.cautionKeys().stream())
                .filter(key -> !key.equals("bad_friction") && !key.equals("pull_from_other_end"))
                .toList();
    }

    private static Verdict verdict(HandMade one) {
        var ranking =
                new Ranking(ShippedConfig.get().scoring(), ShippedConfig.get().room());
        return ranking.rank(List.of(one.assessed())).get(0).verdict();
    }
}
