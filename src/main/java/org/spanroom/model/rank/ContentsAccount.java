package org.spanroom.model.rank;

import java.util.List;
import java.util.Locale;
import org.spanroom.model.Counted;
import org.spanroom.model.network.ContentsScenario;

/**
 * What the results of a run rest on, so far as it concerns what is in the ducts.
 *
 * @param counts of spans, by where their contents are known from
 * @param typical the counts that are used where none is recorded
 * @param missing the terms without field or value; empty where the contents of all spans are known or assumed
 * @param toAssume lines of YAML that let a config assume what is missing; empty where nothing more can be assumed
 * @param deciders what decides most of the ranked spans, one sentence each without a full stop
 * @param scenarios results by scenario; empty where no span has assumed contents
 */
public record ContentsAccount(
        ContentsCounts counts,
        ContentsScenario typical,
        List<MissingTerm> missing,
        List<String> toAssume,
        List<String> deciders,
        List<ScenarioResult> scenarios) {
    public ContentsAccount {
        missing = List.copyOf(missing);
        toAssume = List.copyOf(toAssume);
        deciders = List.copyOf(deciders);
        scenarios = List.copyOf(scenarios);
    }

    /** Returns an account of what is known of a run that was read back. */
    public static ContentsAccount of(ContentsCounts counts, ContentsScenario typical, List<String> deciders) {
        return new ContentsAccount(counts, typical, List.of(), List.of(), deciders, List.of());
    }

    /** Returns the word for what the ranking rests on: recorded, partly_assumed, assumed, or unknown where most contents are. */
    public String basis() {
        if (counts.isMostlyUnknown()) {
            return "unknown";
        } else if (counts.isAssumption()) {
            return "assumed";
        }
        return counts.rankedAssumed() > 0 ? "partly_assumed" : "recorded";
    }

    /** Returns the sentence that heads the results: what was found or, where contents were assumed, on what condition. */
    public String statement() {
        if (counts.isAssumption()) {
            return String.format(
                    Locale.ROOT,
                    "%,d of %s %s IF the contents are as assumed (%s, or as many as fit in the bore, where no count is"
                            + " recorded): no %s count is recorded for %,d of them; this is an assumption, not a result",
                    counts.ranked(),
                    Counted.of(counts.spans(), "span"),
                    candidates(),
                    typical.inWords(),
                    counts.rankedInnerductsAssumed() > 0 ? "innerduct" : "cable",
                    counts.rankedInnerductsAssumed() > 0 ? counts.rankedInnerductsAssumed() : counts.rankedAssumed());
        }
        return String.format(
                Locale.ROOT, "%,d of %s %s", counts.ranked(), Counted.of(counts.spans(), "span"), candidates());
    }

    private String candidates() {
        return Counted.form(counts.ranked(), "is a candidate", "are candidates");
    }
}
