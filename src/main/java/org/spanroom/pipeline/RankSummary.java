package org.spanroom.pipeline;

import java.util.List;
import java.util.Map;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.network.Network;
import org.spanroom.model.rank.ContentsAccount;
import org.spanroom.model.rank.RankTotals;
import org.spanroom.model.rank.RankedSection;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.survey.SurveyStop;
import org.spanroom.output.WrittenResults;

/**
 * What a run found and where it lies.
 *
 * @param best a few sections, the best first
 * @param sectionsRanked how many sections have a ranked span
 * @param totals counts and sums over all spans
 * @param findings how many of each kind
 * @param findingsToFix how many are more than a note
 * @param unitDoubts a sentence for each field whose unit is doubtful
 * @param contents what the results rest on, so far as it concerns what is in the ducts
 * @param survey the vaults to open first
 */
public record RankSummary(
        Network network,
        List<Best> best,
        int sectionsRanked,
        RankTotals totals,
        Map<FindingCode, Long> findings,
        long findingsToFix,
        List<String> unitDoubts,
        ContentsAccount contents,
        List<SurveyStop> survey,
        WrittenResults written) {
    /**
     * One section.
     *
     * @param span its best span
     */
    public record Best(RankedSpan span, RankedSection section) {}
}
