package org.spanroom.model;

import java.util.List;

/**
 * The whole reckoning of one span, for whoever wants to see why.
 *
 * @param spansInRun how many spans have a rank in the same run
 * @param pulling the settings that the forces were reckoned with
 * @param traces the forces of each innerduct's pull, in the order of pulling
 * @param effortLines the account of hours, money and emissions, line by line; empty where nothing comes out
 * @param currency of all money
 * @param gates what every gate says
 */
public record Reckoning(
        RankedSpan ranked,
        int spansInRun,
        PullSettings pulling,
        List<PullTrace> traces,
        List<EffortLine> effortLines,
        String currency,
        List<GateAnswer> gates) {
    public Reckoning {
        traces = List.copyOf(traces);
        effortLines = List.copyOf(effortLines);
        gates = List.copyOf(gates);
    }

    /** A reckoning without an account of effort and without the gates. */
    public Reckoning(RankedSpan ranked, int spansInRun, PullSettings pulling, List<PullTrace> traces) {
        this(ranked, spansInRun, pulling, traces, List.of(), "", List.of());
    }
}
