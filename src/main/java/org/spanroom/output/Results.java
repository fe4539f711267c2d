package org.spanroom.output;

import java.util.List;
import org.spanroom.finding.Finding;
import org.spanroom.model.Network;
import org.spanroom.model.RankedSpan;

/**
 * All that a run hands over for writing.
 *
 * @param network the vaults, and the account of all drawn length
 * @param spans in any order
 * @param findings in the order in which they are to be listed
 */
public record Results(Network network, List<RankedSpan> spans, List<Finding> findings, RunRecord run) {
    public Results {
        spans = List.copyOf(spans);
        findings = List.copyOf(findings);
    }
}
