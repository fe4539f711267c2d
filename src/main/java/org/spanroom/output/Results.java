package org.spanroom.output;

import java.util.List;
import java.util.Optional;
import org.spanroom.finding.Finding;
import org.spanroom.model.effort.MoneyTotals;
import org.spanroom.model.network.Network;
import org.spanroom.model.permit.ZoneUse;
import org.spanroom.model.rank.ContentsAccount;
import org.spanroom.model.rank.FieldCheck;
import org.spanroom.model.rank.RankedSection;
import org.spanroom.model.rank.RankedSpans;
import org.spanroom.model.survey.SurveyStop;

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
 * @param contents what the results rest on, so far as it concerns what lies in the ducts
 * @param survey the vaults to open first, in order
 * @param zones in the order in which they were read
 * @param packed the rows of the spans as they are written, where they were kept; all spans are written then
 */
public record Results(
        Network network,
        RankedSpans spans,
        MoneyTotals money,
        List<RankedSection> sections,
        List<Finding> findings,
        List<FieldCheck> fieldChecks,
        ContentsAccount contents,
        List<SurveyStop> survey,
        List<ZoneUse> zones,
        RunRecord run,
        List<String> kept,
        Selection selection,
        Optional<PackedResult> packed) {
    public Results {
        findings = List.copyOf(findings);
        fieldChecks = List.copyOf(fieldChecks);
        survey = List.copyOf(survey);
        zones = List.copyOf(zones);
        kept = List.copyOf(kept);
    }

    /** Results without zones of which all rows are written. */
    public Results(
            Network network,
            RankedSpans spans,
            MoneyTotals money,
            List<RankedSection> sections,
            List<Finding> findings,
            List<FieldCheck> fieldChecks,
            ContentsAccount contents,
            List<SurveyStop> survey,
            RunRecord run) {
        this(
                network,
                spans,
                money,
                sections,
                findings,
                fieldChecks,
                contents,
                survey,
                List.of(),
                run,
                List.of(),
                Selection.ALL,
                Optional.empty());
    }

    /** Returns the same run with some of its sections and field checks. */
    Results withOnly(List<RankedSection> otherSections, List<FieldCheck> otherChecks) {
        return new Results(
                network,
                spans,
                money,
                otherSections,
                findings,
                otherChecks,
                contents,
                survey,
                zones,
                run,
                kept,
                selection,
                packed);
    }

    /** Returns the same run with its zones as they are known once all spans are. */
    Results withZones(List<ZoneUse> otherZones) {
        return new Results(
                network,
                spans,
                money,
                sections,
                findings,
                fieldChecks,
                contents,
                survey,
                otherZones,
                run,
                kept,
                selection,
                packed);
    }
}
