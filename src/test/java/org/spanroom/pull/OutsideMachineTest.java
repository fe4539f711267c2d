package org.spanroom.pull;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Answer;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.EndFacts;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultSite;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.pull.LimitUse;
import org.spanroom.model.pull.PullAssessment;
import org.spanroom.model.pull.PullOutcome;
import org.spanroom.model.pull.PullTrace;

/**
 * What limits the way out of a vault: nothing where the machine is in it, for the innerduct leaves in strips; where the machine must
 * stand outside, the innerduct's own radius, and with a live cable in it that cable's radius and the slack that is stored there.
 */
class OutsideMachineTest {
    private static final Set<LimitKind> EXIT =
            EnumSet.of(LimitKind.VAULT_EXIT_RADIUS, LimitKind.CABLE_EXIT_RADIUS, LimitKind.CABLE_SLACK);

    private static final double SLACK_M = ShippedConfig.get().pull().limits().outsideSlackM();

    private final PullAssessor assessor = new PullAssessor(
            ShippedConfig.get().pull(), new PullSites(ShippedConfig.get().vaultKinds(), vault -> true));

    @ParameterizedTest(name = "kind {0}")
    @CsvSource({"maintenance hole", "vault", "''", "crypt"})
    void noRadiusLimitsStripsOutOfAVaultThatTakesTheMachine(String kind) {
        // Far thicker than any radius out of a vault would let pass.
        Innerduct thick = PullCase.innerduct("thick", 2.375, 0.2, PullCase.exampleCable("c"));
        PullTrace trace = trace(thick, kind, OptionalDouble.empty());

        assertThat(trace.fromB().limits()).extracting(LimitUse::kind).doesNotContainAnyElementsOf(EXIT);
        assertThat(trace.fromA().limits()).extracting(LimitUse::kind).doesNotContainAnyElementsOf(EXIT);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({"handhole", "pull box", "HandHole"})
    void innerductAndLiveCableRiseTogetherOutOfAHandhole(String kind) {
        PullTrace trace = trace(PullCase.exampleInnerduct("i"), kind, OptionalDouble.of(SLACK_M));

        // B is the handhole. The cable's radius: 20 times 0.5 in; the innerduct's: 18 in (sources in the shipped
        // config).
        assertThat(use(trace.fromB(), LimitKind.VAULT_EXIT_RADIUS).foundSi()).isEqualTo(0.48);
        assertThat(use(trace.fromB(), LimitKind.VAULT_EXIT_RADIUS).allowedSi()).isCloseTo(0.4572, within(1e-12));
        assertThat(use(trace.fromB(), LimitKind.CABLE_EXIT_RADIUS).foundSi()).isEqualTo(0.48);
        assertThat(use(trace.fromB(), LimitKind.CABLE_EXIT_RADIUS).allowedSi()).isCloseTo(0.254, within(1e-12));
        assertThat(use(trace.fromB(), LimitKind.CABLE_EXIT_RADIUS).atM()).isEqualTo(100);
        assertThat(use(trace.fromB(), LimitKind.CABLE_SLACK))
                .isEqualTo(new LimitUse(LimitKind.CABLE_SLACK, SLACK_M, SLACK_M, 100));
        // At A, a vault that takes the machine, none of it applies.
        assertThat(trace.fromA().limits()).extracting(LimitUse::kind).doesNotContainAnyElementsOf(EXIT);
    }

    @ParameterizedTest(name = "{0} m of slack: {1}")
    @CsvSource({", a", "0, a", "2.99, a", "3, both", "3.01, both", "50, both"})
    void withoutEnoughRecordedSlackAnEndIsImpossible(Double slackM, String outcome) {
        OptionalDouble recorded = slackM == null ? OptionalDouble.empty() : OptionalDouble.of(slackM);

        PullAssessment assessment =
                assessor.assess(span(PullCase.exampleInnerduct("i"), "handhole", recorded), Bends.NONE);

        assertThat(assessment.outcome().key()).isEqualTo(outcome);
        if (outcome.equals("a")) {
            assertThat(assessment.outcome().findFailing().map(LimitUse::kind)).contains(LimitKind.CABLE_SLACK);
            assertThat(assessment.pulls().get(0).fromB().failing()).containsExactly(LimitKind.CABLE_SLACK);
        }
    }

    /** The slack of the duct itself takes precedence over the vault's, whether it is more or less. */
    @ParameterizedTest(name = "vault {0} m, duct {1} m: {2}")
    @CsvSource({"0, 3, both", "50, 2.99, a", "50, 0, a", ", 50, both", "50, , both", "2.99, , a", ", , a"})
    void theSlackOfTheDuctComesBeforeThatOfTheVault(Double vaultM, Double ductM, String outcome) {
        OptionalDouble ofVaultM = vaultM == null ? OptionalDouble.empty() : OptionalDouble.of(vaultM);
        OptionalDouble ofDuctM = ductM == null ? OptionalDouble.empty() : OptionalDouble.of(ductM);
        Span plain = span(PullCase.exampleInnerduct("i"), "handhole", ofVaultM);
        Span span = plain.withDuct(plain.duct(), EndFacts.UNKNOWN, new EndFacts("", ofDuctM));

        assertThat(assessor.assess(span, Bends.NONE).outcome().key()).isEqualTo(outcome);
        assertThat(span.slackM(SpanEnd.B)).isEqualTo(ofDuctM.isPresent() ? ofDuctM : ofVaultM);
    }

    /** What is missing altogether still is a number, and a sentence. */
    @Test
    void missingSlackIsSaidSo() {
        PullAssessment assessment =
                assessor.assess(span(PullCase.exampleInnerduct("i"), "handhole", OptionalDouble.empty()), Bends.NONE);
        LimitUse failing = assessment.outcome().findFailing().orElseThrow();

        assertThat(failing.utilizationPercent()).isEqualTo(1000);
        assertThat(assessment.outcome().summary())
                .isEqualTo("possible from A only: from B no cable slack recorded at the vault at 100.0 m;"
                        + " 3.00 m needed");
        assertThat(new LimitUse(LimitKind.CABLE_SLACK, 1.5, 3, 7).summary())
                .isEqualTo("cable slack recorded at the vault 1.50 m < limit 3.00 m (200 %) at 7.0 m");
    }

    @Test
    void anEmptyInnerductNeedsItsOwnRadiusOnlyAndADeadCableToo() {
        Cable dead = new Cable("dead", 40, 0.5, Service.DEAD);
        for (Innerduct innerduct :
                List.of(PullCase.innerduct("empty", 1.660, 0.123), PullCase.innerduct("i", 1.660, 0.123, dead))) {
            PullTrace trace = trace(innerduct, "handhole", OptionalDouble.empty());

            assertThat(trace.fromB().limits())
                    .extracting(LimitUse::kind)
                    .contains(LimitKind.VAULT_EXIT_RADIUS)
                    .doesNotContain(LimitKind.CABLE_EXIT_RADIUS, LimitKind.CABLE_SLACK);
            assertThat(trace.pull().fromB().isPossible()).isTrue();
        }
    }

    /** The radius out of a handhole is 0.48 m: an innerduct of 1-1/2 in, 0.508 m, does not pass; a cable of 24 mm just so. */
    @ParameterizedTest(name = "innerduct {0} in, cable {1} in: {2}")
    @CsvSource({
        "1.660, 0.5, ",
        "1.900, 0.5, VAULT_EXIT_RADIUS",
        "1.660, 0.9448818, ",
        "1.660, 0.9448819, CABLE_EXIT_RADIUS"
    })
    void eachRadiusIsHeldToItsOwnLimit(double innerductIn, double cableIn, LimitKind failing) {
        Innerduct innerduct = PullCase.innerduct("i", innerductIn, 0.14, PullCase.cable("c", cableIn, 0.05));

        Set<LimitKind> fails = assessor.assess(span(innerduct, "handhole", OptionalDouble.of(5)), Bends.NONE)
                .pulls()
                .get(0)
                .fromB()
                .failing();

        assertThat(fails).isEqualTo(failing == null ? Set.of() : Set.of(failing));
    }

    @Test
    void eachPullOutOfAHandholeIsHeldToItsOwnInnerduct() {
        Innerduct empty = PullCase.innerduct("empty", 1.660, 0.123);
        Innerduct full = PullCase.exampleInnerduct("full");
        Span span = PullCase.between(
                PullCase.span(PullCase.ductWith(full, empty), 100),
                vault("a", "vault", OptionalDouble.empty()),
                vault("b", "handhole", OptionalDouble.empty()));

        PullAssessment assessment = assessor.assess(span, Bends.NONE);

        assertThat(assessment.pulls().get(0).fromB().isPossible()).isTrue();
        assertThat(assessment.pulls().get(1).fromB().isPossible()).isFalse();
        assertThat(assessment.outcome()).isInstanceOf(PullOutcome.FromOne.class);
        // Slack depends on no friction: it fails in every state.
        assertThat(assessment.useByFriction(SpanEnd.B).ratio(LimitKind.CABLE_SLACK, Friction.LUBRICATED))
                .isEqualTo(10);
    }

    private PullTrace trace(Innerduct innerduct, String kind, OptionalDouble slackM) {
        return assessor.trace(span(innerduct, kind, slackM), Bends.NONE, 1, Friction.DRY);
    }

    /** From a vault that takes the machine to one of a kind. */
    private static Span span(Innerduct innerduct, String kind, OptionalDouble slackM) {
        return PullCase.between(
                PullCase.span(PullCase.ductWith(innerduct), 100),
                vault("a", "vault", OptionalDouble.empty()),
                vault("b", kind, slackM));
    }

    private static Vault vault(String id, String kind, OptionalDouble slackM) {
        var site = new VaultSite(OptionalDouble.empty(), Answer.UNKNOWN, "", Answer.UNKNOWN, slackM);
        return new Vault(0, id, 0, 0, List.of(), OptionalDouble.empty(), kind, site);
    }

    private static LimitUse use(PullTrace.Way way, LimitKind kind) {
        return way.limits().stream()
                .filter(use -> use.kind() == kind)
                .findFirst()
                .orElseThrow();
    }
}
