package org.spanroom.model.rank;

import java.util.List;
import org.spanroom.model.effort.EffortLine;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.VaultNeeds;
import org.spanroom.model.pull.PullSettings;
import org.spanroom.model.pull.PullTrace;

/**
 * Everything that a run found out about one span, with what it rests on.
 *
 * @param ranked without what a simulation says of its rank, which is in {@code recorded}
 * @param recorded what the results of the run say of the span among all others
 * @param pulling the settings that the forces were calculated with
 * @param traces the forces of each innerduct's pull, in the order of pulling
 * @param effortLines the account of hours, money and emissions, line by line; empty if no innerduct comes out
 * @param currency of all money
 * @param gates what every gate says
 * @param needsAtA what a crew prepares for at the vault where the span's line begins
 * @param needsAtB the same where it ends
 */
public record SpanExplanation(
        RankedSpan ranked,
        RecordedStanding recorded,
        PullSettings pulling,
        List<PullTrace> traces,
        List<EffortLine> effortLines,
        String currency,
        List<GateAnswer> gates,
        VaultNeeds needsAtA,
        VaultNeeds needsAtB) {
    public SpanExplanation {
        traces = List.copyOf(traces);
        effortLines = List.copyOf(effortLines);
        gates = List.copyOf(gates);
    }

    /** An explanation without what a crew prepares for at the vaults. */
    public SpanExplanation(
            RankedSpan ranked,
            RecordedStanding recorded,
            PullSettings pulling,
            List<PullTrace> traces,
            List<EffortLine> effortLines,
            String currency,
            List<GateAnswer> gates) {
        this(ranked, recorded, pulling, traces, effortLines, currency, gates, VaultNeeds.UNKNOWN, VaultNeeds.UNKNOWN);
    }

    public Assessment assessment() {
        return ranked.assessment();
    }

    public Span span() {
        return ranked.span();
    }
}
