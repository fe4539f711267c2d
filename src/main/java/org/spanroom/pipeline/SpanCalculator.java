package org.spanroom.pipeline;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.spanroom.config.RunConfig;
import org.spanroom.effort.EffortAssessor;
import org.spanroom.effort.VaultAssessor;
import org.spanroom.model.effort.EffortLine;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultNeeds;
import org.spanroom.model.permit.Zone;
import org.spanroom.model.pull.PullTrace;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.LearnedChances;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.RecordedStanding;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.permit.PermitAssessor;
import org.spanroom.pull.PullAssessor;
import org.spanroom.rank.Ranking;
import org.spanroom.rank.RunRanking;

/**
 * Calculates some spans of a network once more, with everything that led to the figures of the run. Safe for use by several threads, each
 * with places of its own.
 */
final class SpanCalculator {
    private final RunConfig config;
    private final SpanList spans;
    private final PermitAssessor permits;
    private final SpanAssessor assessor;
    private final VaultAssessor vaults;
    private final RunRanking ranking;
    private final MoneyRun money;
    private final ScenarioRun scenarios;
    private final Optional<Scenarios> outlooks;
    private final PullAssessor pulls;
    private final EffortAssessor efforts;

    /**
     * Prepares for some spans.
     *
     * @param zones all permit zones
     * @param spans at least those that matter to the ones asked for
     * @param count how many are asked for
     * @param learned what opened ducts of the run say of the others
     */
    SpanCalculator(RunConfig config, List<Zone> zones, SpanList spans, int count, LearnedChances learned) {
        this.config = config;
        this.spans = spans;
        permits = new PermitAssessor(zones, config.permit(), ConfiguredParts.access(config));
        assessor = new SpanAssessor(config, permits, count);
        vaults = new VaultAssessor(config.rates(), config.vaultKinds());
        Ranking rules = ConfiguredParts.ranking(config, learned);
        ranking = rules.among(spans);
        money = new MoneyRun(config, assessor.rates(), count);
        scenarios = new ScenarioRun(config, assessor);
        outlooks = Scenarios.of(config, assessor, rules, learned);
        pulls = SpanAssessor.pulls(config);
        efforts = SpanAssessor.effortAssessor(config);
    }

    /**
     * A span with what led to its figures.
     *
     * @param scoresBySample its scores in the simulation of the run; empty if the span is not ranked, or nothing was simulated
     */
    @SuppressWarnings("ArrayRecordComponent") // Samples of many spans; never changed or compared.
    record Calculated(SpanExplanation explanation, double[] scoresBySample) {}

    /** Returns everything about a span, its simulated scores left out. */
    SpanExplanation explain(int place, int number, RecordedStanding recorded) {
        return calculate(place, number, recorded, false).explanation();
    }

    /**
     * Returns everything about a span.
     *
     * @param place of the span among those asked for, from 0; each place is one span
     * @param number of the span in the network
     */
    Calculated calculate(int place, int number, RecordedStanding recorded) {
        return calculate(place, number, recorded, true);
    }

    private Calculated calculate(int place, int number, RecordedStanding recorded, boolean withScores) {
        Assessment assessed = assessor.assess(place, spans.get(number));
        RankedSpan ranked = ranking.ranked(recorded.rank(), assessed);
        double[] scores = {};
        if (!ranked.verdict().isExcluded()) {
            MoneyDraws drawn = money.add(place, assessed, money.begin());
            ranked = ranked.withMoney(money.of(place));
            scores = withScores ? scores(assessed, drawn) : scores;
        }
        var explanation = new SpanExplanation(
                ranked.withScenarios(scenarios.gains(assessed)),
                recorded,
                config.pull().forDuct(assessed.span().duct()),
                traces(assessed),
                effortLines(assessed),
                config.rates().currency(),
                ranking.gates(assessed),
                needs(assessed.span().from()),
                needs(assessed.span().to()));
        return new Calculated(explanation, scores);
    }

    private VaultNeeds needs(Vault vault) {
        return vaults.assess(vault, permits.zonesAt(vault));
    }

    private double[] scores(Assessment assessed, MoneyDraws drawn) {
        return outlooks.map(all -> all.simulation()
                        .scores(all.of(assessed, drawn, all.of(assessed.span().duct())))
                        .bySample())
                .orElse(new double[0]);
    }

    List<EffortLine> effortLines(Assessment assessed) {
        return assessed.effort()
                .map(effort -> efforts.lines(effort.quantities()))
                .orElse(List.of());
    }

    List<PullTrace> traces(Assessment assessed) {
        int out = assessed.pull().pulls().size();
        return IntStream.rangeClosed(1, out)
                .mapToObj(turn -> pulls.trace(
                        assessed.span(),
                        assessed.bends(),
                        out,
                        turn,
                        config.pull().judgedBy()))
                .toList();
    }
}
