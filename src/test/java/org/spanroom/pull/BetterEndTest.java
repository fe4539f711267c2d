package org.spanroom.pull;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.model.Answer;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultKind;
import org.spanroom.model.network.VaultSite;
import org.spanroom.model.pull.EndReason;

/** Which end is proposed, and why. */
class BetterEndTest {
    private static final double POINTS = 10;

    private static final PullSites SITES = new PullSites(
            Map.of("handhole", new VaultKind(false, false)),
            vault -> !vault.site().surface().equals("verge"));

    /** The smaller use counts, not the smaller force; of two uses that differ by rounding only, the smaller force. */
    @ParameterizedTest(name = "{0} % and {1} %, forces {2} and {3}: {4} {5}")
    @CsvSource({
        "40, 50, 0.9, 0.1, A, LEAST_USED",
        "50, 40, 0.1, 0.9, B, LEAST_USED",
        "100, 100.001, 0.9, 0.1, A, LEAST_USED",
        "50, 50.00000000001, 0.9, 0.1, B, LESS_FORCE",
        "50, 50, 0.1, 0.9, A, LESS_FORCE",
        "50, 50, 0.5, 0.5, A, BOTH_EQUAL",
        "0, 0, 0, 0, A, BOTH_EQUAL",
        "1000, 1000, 0.4, 0.3, B, LESS_FORCE",
        "100, 100.1, 0.9, 0.1, A, ONLY_END",
        "120, 90, 0.1, 0.9, B, ONLY_END"
    })
    void theSmallerUseIsBetter(
            double percentA, double percentB, double forceA, double forceB, SpanEnd end, EndReason reason) {
        boolean demandsOnlyEnd = reason == EndReason.ONLY_END;
        var a = new BetterEnd.Demand(percentA <= 100 || !demandsOnlyEnd, percentA, forceA);
        var b = new BetterEnd.Demand(percentB <= 100 || !demandsOnlyEnd, percentB, forceB);

        assertThat(BetterEnd.of(span("a", "b"), a, b, PullSites.ALIKE, POINTS)).isEqualTo(new BetterEnd(end, reason));
        // The same span drawn from its other end.
        assertThat(BetterEnd.of(span("b", "a"), b, a, PullSites.ALIKE, POINTS))
                .isEqualTo(new BetterEnd(end.opposite(), reason));
    }

    /** Kind and surface of the vaults at A and at B; A is used 40 %. */
    @ParameterizedTest(name = "{0} {1} at 40 %, {2} {3} at {4} %: {5} {6}")
    @CsvSource({
        // Up to 10 points more for a better place.
        "vault, roadway, vault, verge, 49.9, B, BETTER_SITE",
        "vault, roadway, vault, verge, 50, B, BETTER_SITE",
        "vault, roadway, vault, verge, 50.1, A, LEAST_USED",
        "handhole, verge, vault, verge, 50, B, BETTER_SITE",
        "handhole, roadway, vault, verge, 50, B, BETTER_SITE",
        "handhole, roadway, vault, roadway, 45, B, BETTER_SITE",
        // Better in one respect and worse in the other is no better place.
        "handhole, verge, vault, roadway, 45, A, LEAST_USED",
        "handhole, verge, vault, roadway, 35, B, LEAST_USED",
        // The better place may be used less, too: then that is the reason.
        "vault, roadway, vault, verge, 39, B, LEAST_USED",
        "vault, roadway, vault, verge, 40, B, BETTER_SITE",
        "vault, verge, vault, verge, 45, A, LEAST_USED",
        // A surface that is not recorded is treated as the roadway, a kind that is not listed takes the machine.
        "vault, '', vault, roadway, 45, A, LEAST_USED",
        "vault, '', '', verge, 45, B, BETTER_SITE"
    })
    void aBetterPlaceForTheMachineMayBeUsedAFewPointsMore(
            String kindA,
            String surfaceA,
            String kindB,
            String surfaceB,
            double percentB,
            SpanEnd end,
            EndReason reason) {
        Span there = span(vault("a", kindA, surfaceA), vault("b", kindB, surfaceB));
        Span back = span(vault("b", kindB, surfaceB), vault("a", kindA, surfaceA));
        var a = new BetterEnd.Demand(true, 40, 0.3);
        var b = new BetterEnd.Demand(true, percentB, 0.5);

        assertThat(BetterEnd.of(there, a, b, SITES, POINTS)).isEqualTo(new BetterEnd(end, reason));
        assertThat(BetterEnd.of(back, b, a, SITES, POINTS)).isEqualTo(new BetterEnd(end.opposite(), reason));
    }

    @Test
    void noPlaceMakesUpForAPullThatFails() {
        Span span = span(vault("a", "handhole", "roadway"), vault("b", "vault", "verge"));
        var easy = new BetterEnd.Demand(true, 95, 0.9);
        var hard = new BetterEnd.Demand(false, 101, 0.9);
        var harder = new BetterEnd.Demand(false, 102, 0.9);

        assertThat(BetterEnd.of(span, easy, hard, SITES, POINTS))
                .isEqualTo(new BetterEnd(SpanEnd.A, EndReason.ONLY_END));
        // Where both fail the smaller use counts.
        assertThat(BetterEnd.of(span, hard, harder, SITES, POINTS))
                .isEqualTo(new BetterEnd(SpanEnd.A, EndReason.LEAST_USED));
    }

    @Test
    void withoutPointsThePlaceDecidesBetweenEqualsOnly() {
        Span span = span(vault("a", "vault", "roadway"), vault("b", "vault", "verge"));
        var a = new BetterEnd.Demand(true, 40, 0.3);

        assertThat(BetterEnd.of(span, a, new BetterEnd.Demand(true, 40, 0.5), SITES, 0))
                .isEqualTo(new BetterEnd(SpanEnd.B, EndReason.BETTER_SITE));
        assertThat(BetterEnd.of(span, a, new BetterEnd.Demand(true, 40.1, 0.5), SITES, 0))
                .isEqualTo(new BetterEnd(SpanEnd.A, EndReason.LEAST_USED));
    }

    @Test
    void everyReasonHasItsWords() {
        for (EndReason reason : EndReason.values()) {
            assertThat(reason.key()).isEqualTo(reason.name().toLowerCase(Locale.ROOT));
            assertThat(reason.explanation()).isNotBlank();
        }
    }

    private static Span span(String from, String to) {
        return span(vault(from, "", ""), vault(to, "", ""));
    }

    private static Span span(Vault from, Vault to) {
        return PullCase.between(PullCase.span(PullCase.ductWith(PullCase.exampleInnerduct("i")), 100), from, to);
    }

    private static Vault vault(String id, String kind, String surface) {
        var site = new VaultSite(OptionalDouble.empty(), Answer.UNKNOWN, surface, Answer.UNKNOWN);
        return new Vault(0, id, 0, 0, List.of(), OptionalDouble.empty(), kind, site);
    }
}
