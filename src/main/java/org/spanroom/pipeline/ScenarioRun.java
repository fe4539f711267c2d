package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.spanroom.config.RunConfig;
import org.spanroom.model.Term;
import org.spanroom.model.effort.Cents;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.network.ContentsScenario;
import org.spanroom.model.network.ContentsSource;
import org.spanroom.model.network.Duct;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.ContentsCounts;
import org.spanroom.model.rank.ScenarioGains;
import org.spanroom.model.rank.ScenarioResult;
import org.spanroom.rank.RunRanking;

/**
 * What a run would find under each scenario of the contents that are not recorded. A span with recorded contents counts the same in all of
 * them; one with assumed contents is assessed again for each other scenario. First every span is given, in any order and by any thread;
 * then what came of it is requested. All sums are of whole numbers, so that no thread shows in them.
 */
final class ScenarioRun {
    private static final String MAIN = "typical";

    private final RunConfig config;
    private final SpanAssessor assessor;
    private final AssumedCounts counts;
    private final List<String> names;
    private final List<ContentsScenario> scenarios;
    private final ConcurrentLinkedQueue<Sums> collected = new ConcurrentLinkedQueue<>();

    ScenarioRun(RunConfig config, SpanAssessor assessor) {
        this.config = config;
        this.assessor = assessor;
        counts = new AssumedCounts(config.assumed());
        names = List.copyOf(config.scenarios().byName().keySet());
        scenarios = List.copyOf(config.scenarios().byName().values());
    }

    /** What one thread has added up. */
    static final class Sums {
        private final Totals[] byScenario;
        private ContentsCounts contents = ContentsCounts.NONE;

        private Sums(int scenarios) {
            byScenario = new Totals[scenarios];
            for (int i = 0; i < scenarios; i++) {
                byScenario[i] = new Totals();
            }
        }

        private void addAll(Sums other) {
            contents = contents.plus(other.contents);
            for (int i = 0; i < byScenario.length; i++) {
                byScenario[i].addAll(other.byScenario[i]);
            }
        }
    }

    /** Sums over the ranked spans of one scenario. */
    private static final class Totals {
        private long ranked;
        private long assumed;
        private long gained;
        private long lengthMm;
        private double recoveryCents;
        private double newBuildCents;

        void add(Assessment assessed, boolean isAssumed) {
            ranked++;
            assumed += isAssumed ? 1 : 0;
            gained += Math.max(0, assessed.room().positionsGained().orElse(0));
            lengthMm += Math.round(1000 * assessed.span().lengthM());
            recoveryCents +=
                    Cents.of(assessed.effort().map(Effort::recoveryMoney).orElse(0.0));
            newBuildCents +=
                    Cents.of(assessed.effort().map(Effort::newBuildMoney).orElse(0.0));
        }

        void addAll(Totals other) {
            ranked += other.ranked;
            assumed += other.assumed;
            gained += other.gained;
            lengthMm += other.lengthMm;
            recoveryCents += other.recoveryCents;
            newBuildCents += other.newBuildCents;
        }
    }

    /** Returns what a thread adds up in. */
    Sums begin() {
        var sums = new Sums(scenarios.size());
        collected.add(sums);
        return sums;
    }

    /**
     * Takes a span.
     *
     * @param isRanked whether it is ranked as it was assessed, which is by the typical scenario
     */
    void add(int number, Assessment assessed, boolean isRanked, RunRanking ranking, Sums into) {
        Duct duct = assessed.span().duct();
        ContentsSource source = duct.contentsSource();
        into.contents = into.contents.plus(source, isRanked, duct.assumed().contains(Term.INNERDUCT_COUNT));
        boolean isAssumed = source == ContentsSource.ASSUMED;
        for (int i = 0; i < scenarios.size(); i++) {
            Duct other = isAssumed && !names.get(i).equals(MAIN) ? counts.in(scenarios.get(i), duct) : duct;
            if (other.contents().equals(duct.contents())) {
                if (isRanked) {
                    into.byScenario[i].add(assessed, isAssumed);
                }
                continue;
            }
            Assessment as = assessor.assess(number, assessed.span().withDuct(other));
            if (!ranking.verdict(as).isExcluded()) {
                into.byScenario[i].add(as, true);
            }
        }
    }

    /**
     * Returns what recovery adds on a span if its contents are few or many; empty where that cannot be counted. Gates have no part in that, as in
     * the positions gained of the span itself.
     */
    Optional<ScenarioGains> gains(Assessment assessed) {
        return assessed.room().positionsGained().isEmpty()
                ? Optional.empty()
                : Optional.of(new ScenarioGains(
                        gained(assessed, config.scenarios().few()),
                        gained(assessed, config.scenarios().many())));
    }

    private int gained(Assessment assessed, ContentsScenario scenario) {
        Duct duct = assessed.span().duct();
        Duct other = counts.in(scenario, duct);
        Assessment as = other.contents().equals(duct.contents()) ? assessed : assessor.withDuct(assessed, other);
        return as.room().positionsGained().orElse(0);
    }

    /** Returns how many spans rest on what. */
    ContentsCounts counts() {
        return all().contents;
    }

    /** Returns the results by scenario; none where no span has assumed contents. */
    List<ScenarioResult> results() {
        Sums all = all();
        if (all.contents.assumed() == 0) {
            return List.of();
        }
        var results = new ArrayList<ScenarioResult>();
        for (int i = 0; i < scenarios.size(); i++) {
            Totals totals = all.byScenario[i];
            results.add(new ScenarioResult(
                    names.get(i),
                    names.get(i).equals(MAIN),
                    scenarios.get(i),
                    totals.ranked,
                    totals.assumed,
                    totals.lengthMm / 1000.0,
                    totals.gained,
                    Cents.money(totals.recoveryCents),
                    Cents.money(totals.newBuildCents),
                    config.rates().currency()));
        }
        return results;
    }

    private Sums all() {
        var all = new Sums(scenarios.size());
        collected.forEach(all::addAll);
        return all;
    }
}
