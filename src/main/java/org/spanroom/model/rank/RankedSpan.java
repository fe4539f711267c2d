package org.spanroom.model.rank;

import java.util.Optional;
import java.util.OptionalInt;
import org.spanroom.model.effort.MoneyRanges;
import org.spanroom.model.network.Span;

/**
 * A span with its place in the ranking.
 *
 * @param rank 1 for the best; empty for an excluded span
 * @param verdict why it is excluded, and its cautions
 * @param sureness the confidence in its rank; empty for an excluded span, or where nothing was simulated
 * @param money low and high figures of what it costs and saves; empty for an excluded span, or where nothing was simulated
 * @param scenarios what recovery adds if the contents are few or many; empty where they are unknown, or that was not requested
 * @param offer what a program of work needs of it; empty where that was not calculated
 * @param bankPlace place beside the other ducts of its section, 0 in the middle and positive to the right of its line; empty where the
 *     sections were not formed
 */
public record RankedSpan(
        OptionalInt rank,
        Assessment assessment,
        Score score,
        Verdict verdict,
        Optional<RankConfidence> sureness,
        Optional<MoneyRanges> money,
        Optional<ScenarioGains> scenarios,
        Optional<SpanOffer> offer,
        OptionalInt bankPlace)
        implements Ranked {
    /** A span whose rank was not simulated. */
    public RankedSpan(OptionalInt rank, Assessment assessment, Score score, Verdict verdict) {
        this(
                rank,
                assessment,
                score,
                verdict,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty());
    }

    /** A span that nothing speaks against. */
    public RankedSpan(OptionalInt rank, Assessment assessment, Score score) {
        this(rank, assessment, score, Verdict.CLEAR);
    }

    /** Returns the same span with what a simulation says of its rank. */
    public RankedSpan withSureness(Optional<RankConfidence> simulated) {
        return new RankedSpan(rank, assessment, score, verdict, simulated, money, scenarios, offer, bankPlace);
    }

    /** Returns the same span with low and high figures of its money. */
    public RankedSpan withMoney(Optional<MoneyRanges> ranges) {
        return new RankedSpan(rank, assessment, score, verdict, sureness, ranges, scenarios, offer, bankPlace);
    }

    /** Returns the same span with what recovery adds under other scenarios of its contents. */
    public RankedSpan withScenarios(Optional<ScenarioGains> gains) {
        return new RankedSpan(rank, assessment, score, verdict, sureness, money, gains, offer, bankPlace);
    }

    /** Returns the same span with what a program of work needs of it. */
    public RankedSpan withOffer(SpanOffer calculated) {
        return new RankedSpan(
                rank, assessment, score, verdict, sureness, money, scenarios, Optional.of(calculated), bankPlace);
    }

    /** Returns the same span with its place beside the other ducts of its section. */
    public RankedSpan withBankPlace(int place) {
        return new RankedSpan(
                rank, assessment, score, verdict, sureness, money, scenarios, offer, OptionalInt.of(place));
    }

    public Span span() {
        return assessment.span();
    }

    @Override
    public String spanId() {
        return span().id();
    }
}
