package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.spanroom.config.RunConfig;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.ContentsScenario;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.ScenarioSettings;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.LearnedChances;
import org.spanroom.model.rank.SpanChances;
import org.spanroom.model.rank.UncertaintySettings;
import org.spanroom.rank.Ranking;
import org.spanroom.rank.Simulation;
import org.spanroom.rank.SpanOutlook;
import org.spanroom.rank.SpanOutlook.Situation;

/** What each span may be like: the situations that the simulation draws from. Safe for use by several threads. */
final class Scenarios {
    /** States of the contents: 0 as taken, 1 one additional cable, then the other scenarios. */
    private static final int FIRST_OTHER = 2;

    private final UncertaintySettings settings;
    private final SpanAssessor assessor;
    private final Ranking ranking;
    private final DuctVariants variants;
    private final AssumedCounts counts;
    private final ScenarioSettings scenarios;
    private final SpanChances usual;
    private final LearnedChances learned;
    private final RateDrawings drawings;

    /** Returns what spans may be like, if the config asks for a simulation. */
    static Optional<Scenarios> of(RunConfig config, SpanAssessor assessor, Ranking ranking, LearnedChances learned) {
        return config.uncertainty().simulated()
                ? Optional.of(new Scenarios(config, assessor, ranking, learned))
                : Optional.empty();
    }

    /** @param learned what opened ducts say of the others */
    private Scenarios(RunConfig config, SpanAssessor assessor, Ranking ranking, LearnedChances learned) {
        this.settings = config.uncertainty();
        this.assessor = assessor;
        this.ranking = ranking;
        variants = new DuctVariants(settings.diameterRatio(), config.assumed());
        counts = new AssumedCounts(config.assumed());
        scenarios = config.scenarios();
        usual = SpanChances.of(settings, scenarios);
        this.learned = learned;
        drawings = new RateDrawings(settings, assessor.rates());
    }

    /** Returns the simulation that draws from these. */
    Simulation simulation() {
        return ranking.simulation(settings);
    }

    /** Returns what a ranked span may be like. */
    SpanOutlook of(Assessment assessed) {
        return of(assessed, ranking.weighsSaving() ? drawings.of(assessed) : MoneyDraws.NONE);
    }

    /** Returns what a ranked span may be like, of which it is known what it costs in each draw of the rates. */
    SpanOutlook of(Assessment assessed, MoneyDraws money) {
        Duct duct = assessed.span().duct();
        SpanChances chances = learned.of(duct, usual);
        var bySizes = new BySizes(assessed, chances, money.savingRatios(), new ArrayList<>());
        double otherRatio = DuctVariants.hasAssumedSizes(duct) ? chances.otherSizeRatio() : 0;
        bySizes.add(duct, 0, 1 - otherRatio);
        if (otherRatio > 0) {
            bySizes.add(variants.tighter(duct), 1, otherRatio / 2);
            bySizes.add(variants.roomier(duct), 2, otherRatio / 2);
        }
        double blockedRatio =
                duct.condition() == Condition.UNKNOWN ? chances.blockedUnknownRatio() : chances.blockedRatio();
        return new SpanOutlook(assessed.span().id(), bySizes.situations, ranking.useByFriction(assessed), blockedRatio);
    }

    /** Collects the situations of one span. */
    private final class BySizes {
        private final Assessment assessed;
        private final SpanChances chances;
        private final double[] savings;
        private final List<Situation> situations;

        BySizes(Assessment assessed, SpanChances chances, double[] savings, List<Situation> situations) {
            this.assessed = assessed;
            this.chances = chances;
            this.savings = savings;
            this.situations = situations;
        }

        /** Adds those of one set of sizes: contents as taken, one additional cable and, where they are assumed, few and many. */
        void add(Duct duct, int sizes, double chanceRatio) {
            boolean assumed = DuctVariants.hasAssumedCounts(duct);
            double moreRatio = assumed ? chances.moreCableAssumedRatio() : chances.moreCableRatio();
            double takenRatio = chanceRatio * (assumed ? chances.typicalRatio() : 1);
            Assessment asTaken = sizes == 0 ? assessed : assessor.withDuct(assessed, duct);
            add(asTaken, sizes, 0, takenRatio * (1 - moreRatio));
            if (moreRatio > 0) {
                add(assessor.withDuct(assessed, variants.withOneCableMore(duct)), sizes, 1, takenRatio * moreRatio);
            }
            if (assumed) {
                other(scenarios.few(), duct, sizes, FIRST_OTHER, chanceRatio * chances.fewRatio());
                other(scenarios.many(), duct, sizes, FIRST_OTHER + 1, chanceRatio * chances.manyRatio());
            }
        }

        private void other(ContentsScenario scenario, Duct duct, int sizes, int contents, double chanceRatio) {
            if (chanceRatio > 0) {
                add(assessor.withDuct(assessed, counts.in(scenario, duct)), sizes, contents, chanceRatio);
            }
        }

        private void add(Assessment other, int sizes, int contents, double chanceRatio) {
            situations.add(situation(other, assessed, new int[] {sizes, contents}, chanceRatio, savings));
        }
    }

    private Situation situation(
            Assessment other, Assessment taken, int[] sizesAndContents, double chanceRatio, double[] savings) {
        return new Situation(
                sizesAndContents[0],
                sizesAndContents[1],
                chanceRatio,
                ranking.quantities(other),
                other.room().gains(),
                shifted(savings, savingRatio(other) - savingRatio(taken)));
    }

    /** Other contents change a saving by about as much whatever the rates: enough for a quantity that is read off a curve. */
    private static double[] shifted(double[] savings, double byRatio) {
        if (byRatio == 0) {
            return savings;
        }
        double[] shifted = savings.clone();
        for (int i = 0; i < shifted.length; i++) {
            shifted[i] += byRatio;
        }
        return shifted;
    }

    private static double savingRatio(Assessment assessed) {
        return assessed.effort().map(Effort::savingRatio).orElse(0.0);
    }
}
