package org.spanroom.pipeline;

import java.util.List;
import java.util.stream.IntStream;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.Finding;
import org.spanroom.input.InputRecord;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.network.VaultUse;
import org.spanroom.model.rank.ContentsAccount;
import org.spanroom.model.rank.ContentsCounts;
import org.spanroom.model.rank.SpanFigures;
import org.spanroom.model.survey.SurveyStop;
import org.spanroom.rank.CrewCautions;
import org.spanroom.rank.RunRanking;
import org.spanroom.survey.SurveyPlanner;
import org.spanroom.survey.SurveySpan;

/** What the results of a run rest on, where little is recorded of what is in the ducts, and where to look first. */
final class ContentsStage {
    private final RunConfig config;
    private final Network network;
    private final AssessedSpans ranked;

    ContentsStage(RunConfig config, Network network, AssessedSpans ranked) {
        this.config = config;
        this.network = network;
        this.ranked = ranked;
    }

    /**
     * Returns what the results rest on.
     *
     * @param routes the record of the layer of routes
     * @param findings all findings of the run
     */
    ContentsAccount account(InputRecord routes, List<Finding> findings) {
        SpanFigures figures = ranked.figures();
        long serviceUnknown = IntStream.range(0, network.spans().size())
                .filter(number -> figures.exclusion(number)
                        .filter(why -> why.key().equals(RunRanking.SERVICE_UNKNOWN))
                        .isPresent())
                .count();
        return new ContentsAdvice(config, findings)
                .account(
                        ranked.scenarios(),
                        serviceUnknown,
                        new ContentsAdvice.Routes(routes.source(), routes.featuresRead()),
                        ranked.deciders());
    }

    /** Returns the vaults to open first; none where the contents of all spans are recorded. */
    List<SurveyStop> survey() {
        ContentsCounts counts = ranked.scenarios().counts();
        if (counts.assumed() + counts.unknown() == 0) {
            return List.of();
        }
        var access = ConfiguredParts.access(config);
        SpanList spans = network.spans();
        return new SurveyPlanner(config.survey(), access, (vault, ducts) -> CrewCautions.of(ducts, vault, access))
                .plan(
                        IntStream.range(0, spans.size()).mapToObj(this::span).toList(),
                        network.vaults().stream().map(VaultUse::vault).toList());
    }

    private SurveySpan span(int number) {
        SpanList spans = network.spans();
        SpanFigures figures = ranked.figures();
        int gained = Math.max(0, figures.positionsAfter(number) - figures.positionsNow(number));
        return new SurveySpan(
                spans.duct(number),
                spans.fromVault(number),
                spans.toVault(number),
                spans.lengthM(number) * Math.max(1, gained),
                gained > 0);
    }
}
