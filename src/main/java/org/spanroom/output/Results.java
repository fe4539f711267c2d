package org.spanroom.output;

import java.util.List;
import org.spanroom.finding.Finding;
import org.spanroom.model.effort.MoneyTotals;
import org.spanroom.model.network.Network;
import org.spanroom.model.rank.FieldCheck;
import org.spanroom.model.rank.RankedSection;
import org.spanroom.model.rank.RankedSpans;

/**
 * All that a run hands over for writing.
 *
 * @param network the vaults, and the account of all drawn length
 * @param spans asked for one by one, each once, by several threads
 * @param money what all spans that have a rank cost and save together
 * @param sections the best first; a list that may make each when it is asked for, and bears that from several threads
 * @param findings in the order in which they are to be listed
 * @param fieldChecks what to go and measure first, in the order in which they are to be listed
 * @param kept the owner's own fields of the routes that are written with the spans
 * @param selection the spans whose rows are written, with the sections and the field checks of them
 */
public record Results(
        Network network,
        RankedSpans spans,
        MoneyTotals money,
        List<RankedSection> sections,
        List<Finding> findings,
        List<FieldCheck> fieldChecks,
        RunRecord run,
        List<String> kept,
        Selection selection) {
    public Results {
        findings = List.copyOf(findings);
        fieldChecks = List.copyOf(fieldChecks);
        kept = List.copyOf(kept);
    }

    /** Results of which all rows are written. */
    public Results(
            Network network,
            RankedSpans spans,
            MoneyTotals money,
            List<RankedSection> sections,
            List<Finding> findings,
            List<FieldCheck> fieldChecks,
            RunRecord run) {
        this(network, spans, money, sections, findings, fieldChecks, run, List.of(), Selection.ALL);
    }

    /** Returns the same run with some of its sections and field checks. */
    Results withOnly(List<RankedSection> otherSections, List<FieldCheck> otherChecks) {
        return new Results(network, spans, money, otherSections, findings, otherChecks, run, kept, selection);
    }
}
