package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.spanroom.config.RunConfig;
import org.spanroom.model.bore.Room;
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
        MoneyDraws money = ranking.weighsSaving() ? drawings.of(assessed) : MoneyDraws.NONE;
        return of(assessed, money, of(assessed.span().duct()));
    }

    /**
     * Returns what a ranked span may be like.
     *
     * @param money what it costs in each draw of the rates
     * @param states what its duct may be like
     */
    SpanOutlook of(Assessment assessed, MoneyDraws money, DuctStates states) {
        double[] savings = money.savingRatios();
        double[] taken = ranking.quantities(assessed);
        var situations = new ArrayList<Situation>(states.all().size());
        for (State state : states.all()) {
            situations.add(state.room()
                    .map(room -> situation(assessed, taken, state, assessor.propose(assessed.span(), room), savings))
                    .orElseGet(() -> situation(state, taken, assessed.room(), savings)));
        }
        return new SpanOutlook(
                assessed.span().id(), situations, ranking.useByFriction(assessed), states.blockedRatio());
    }

    /**
     * What a duct may be like, whatever the span: spans of one duct follow one another, so that this is found once for all of them.
     *
     * @param all the ways in which sizes and contents may be, what is taken to be true first
     * @param blockedRatio chance that the duct turns out blocked
     */
    record DuctStates(Duct duct, List<State> all, double blockedRatio) {}

    /**
     * One way in which sizes and contents of a duct may be.
     *
     * @param sizes 0 as taken, 1 tighter, 2 roomier
     * @param contents 0 as taken, 1 one additional cable, 2 few and 3 many items
     * @param room what there would be, before a choice of pulls; empty for the duct as it is taken to be
     */
    record State(int sizes, int contents, double chanceRatio, Optional<Room> room) {}

    /** Returns what a duct may be like. */
    DuctStates of(Duct duct) {
        SpanChances chances = learned.of(duct, usual);
        var bySizes = new BySizes(chances, new ArrayList<>());
        double otherRatio = DuctVariants.hasAssumedSizes(duct) ? chances.otherSizeRatio() : 0;
        bySizes.add(duct, 0, 1 - otherRatio);
        if (otherRatio > 0) {
            bySizes.add(variants.tighter(duct), 1, otherRatio / 2);
            bySizes.add(variants.roomier(duct), 2, otherRatio / 2);
        }
        double blockedRatio =
                duct.condition() == Condition.UNKNOWN ? chances.blockedUnknownRatio() : chances.blockedRatio();
        return new DuctStates(duct, bySizes.states, blockedRatio);
    }

    /** Collects the states of one duct. */
    private final class BySizes {
        private final SpanChances chances;
        private final List<State> states;

        BySizes(SpanChances chances, List<State> states) {
            this.chances = chances;
            this.states = states;
        }

        /** Adds those of one set of sizes: contents as taken, one additional cable and, where they are assumed, few and many. */
        void add(Duct duct, int sizes, double chanceRatio) {
            boolean assumed = DuctVariants.hasAssumedCounts(duct);
            double moreRatio = assumed ? chances.moreCableAssumedRatio() : chances.moreCableRatio();
            double takenRatio = chanceRatio * (assumed ? chances.typicalRatio() : 1);
            Optional<Room> asTaken = sizes == 0 ? Optional.empty() : room(duct);
            states.add(new State(sizes, 0, takenRatio * (1 - moreRatio), asTaken));
            if (moreRatio > 0) {
                states.add(new State(sizes, 1, takenRatio * moreRatio, room(variants.withOneCableMore(duct))));
            }
            if (assumed) {
                other(scenarios.few(), duct, sizes, FIRST_OTHER, chanceRatio * chances.fewRatio());
                other(scenarios.many(), duct, sizes, FIRST_OTHER + 1, chanceRatio * chances.manyRatio());
            }
        }

        private void other(ContentsScenario scenario, Duct duct, int sizes, int contents, double chanceRatio) {
            if (chanceRatio > 0) {
                states.add(new State(sizes, contents, chanceRatio, room(counts.in(scenario, duct))));
            }
        }

        private Optional<Room> room(Duct duct) {
            return Optional.of(assessor.rooms().assess(duct));
        }
    }

    /** With other room than assessed. */
    private Situation situation(Assessment assessed, double[] taken, State state, Room room, double[] savings) {
        double savingRatio = assessor.savingRatio(assessed, room);
        double byRatio = savingRatio - savingRatio(assessed);
        return situation(
                state, ranking.quantities(assessed, taken, room, savingRatio), room, shifted(savings, byRatio));
    }

    private static Situation situation(State state, double[] quantities, Room room, double[] savings) {
        return new Situation(state.sizes(), state.contents(), state.chanceRatio(), quantities, room.gains(), savings);
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
