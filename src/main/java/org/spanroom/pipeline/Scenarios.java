package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.config.RunConfig;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.ContentsScenario;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.ScenarioSettings;
import org.spanroom.model.rank.Assessment;
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
    private final RateDrawings drawings;

    Scenarios(RunConfig config, SpanAssessor assessor, Ranking ranking) {
        this.settings = config.uncertainty();
        this.assessor = assessor;
        this.ranking = ranking;
        variants = new DuctVariants(settings.diameterRatio(), config.assumed());
        counts = new AssumedCounts(config.assumed());
        scenarios = config.scenarios();
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
        double[] savings = money.savingRatios();
        var situations = new ArrayList<Situation>();
        double otherRatio = DuctVariants.hasAssumedSizes(duct) ? settings.otherSizeRatio() : 0;
        bySizes(situations, assessed, duct, 0, 1 - otherRatio, savings);
        if (otherRatio > 0) {
            bySizes(situations, assessed, variants.tighter(duct), 1, otherRatio / 2, savings);
            bySizes(situations, assessed, variants.roomier(duct), 2, otherRatio / 2, savings);
        }
        return new SpanOutlook(
                assessed.span().id(), situations, ranking.useByFriction(assessed), blockedRatio(duct.condition()));
    }

    /** Adds the situations of one set of sizes: contents as taken, one additional cable and, where they are assumed, few and many. */
    private void bySizes(
            List<Situation> situations,
            Assessment assessed,
            Duct duct,
            int sizes,
            double chanceRatio,
            double[] savings) {
        boolean assumed = DuctVariants.hasAssumedCounts(duct);
        double moreRatio = assumed ? settings.moreCableAssumedRatio() : settings.moreCableRatio();
        double takenRatio = chanceRatio * (assumed ? scenarios.typical().chanceRatio() : 1);
        Assessment asTaken = sizes == 0 ? assessed : assessor.withDuct(assessed, duct);
        situations.add(situation(asTaken, assessed, new int[] {sizes, 0}, takenRatio * (1 - moreRatio), savings));
        if (moreRatio > 0) {
            Assessment withMore = assessor.withDuct(assessed, variants.withOneCableMore(duct));
            situations.add(situation(withMore, assessed, new int[] {sizes, 1}, takenRatio * moreRatio, savings));
        }
        if (assumed) {
            byScenario(situations, assessed, duct, sizes, chanceRatio, savings);
        }
    }

    private void byScenario(
            List<Situation> situations,
            Assessment assessed,
            Duct duct,
            int sizes,
            double chanceRatio,
            double[] savings) {
        List<ContentsScenario> others = List.of(scenarios.few(), scenarios.many());
        for (int i = 0; i < others.size(); i++) {
            double otherRatio = chanceRatio * others.get(i).chanceRatio();
            if (otherRatio > 0) {
                Assessment other = assessor.withDuct(assessed, counts.in(others.get(i), duct));
                situations.add(situation(other, assessed, new int[] {sizes, FIRST_OTHER + i}, otherRatio, savings));
            }
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

    private double blockedRatio(Condition condition) {
        return condition == Condition.UNKNOWN ? settings.blockedUnknownRatio() : settings.blockedRatio();
    }
}
