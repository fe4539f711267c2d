package org.spanroom.model.survey;

import java.util.List;
import org.spanroom.model.network.Vault;

/**
 * One vault to open.
 *
 * @param order 1 for the first
 * @param inRoadway whether its cover is in the roadway, or may be for all that is recorded
 * @param ducts the ducts of unrecorded contents that enter it
 * @param spansShown spans of unrecorded contents that it shows and no earlier stop has shown
 * @param spansSeen spans of unrecorded contents that have been seen after it
 * @param spansUnrecorded all of them
 * @param estimates the strata that it represents, the one of which it shows most spans first
 * @param cautions what the crew must watch for at this vault
 */
public record SurveyStop(
        int order,
        Vault vault,
        boolean inRoadway,
        List<String> ducts,
        int spansShown,
        int spansSeen,
        int spansUnrecorded,
        List<StratumEstimate> estimates,
        List<String> cautions) {
    public SurveyStop {
        ducts = List.copyOf(ducts);
        estimates = List.copyOf(estimates);
        cautions = List.copyOf(cautions);
    }

    /** Returns the share of all spans of unrecorded contents that have been seen after this stop. */
    public double coverRatio() {
        return spansUnrecorded == 0 ? 0 : spansSeen / (double) spansUnrecorded;
    }
}
